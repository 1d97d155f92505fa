import { z } from 'zod';
import { cornerZoneSchema } from '../corner-zone.ts';

/** What can decide a line's spacing, and what is worked out beside it. */
export const CHECKS = [
  'weight',
  'wind',
  'weight-and-wind',
  'weight-alone-by-the-timber-standard',
  'weight-when-wet-with-boards',
  'steel-shear',
  'code-table',
  'lath-practice',
  'practice',
  'buck',
  'evaluation-report',
] as const;

const checkSchema = z.object({
  check: z.enum(CHECKS),
  what: z.string(),
  /** Both in `unit`; null where no method gives one. */
  demand: z.number().nullable(),
  capacity: z.number().nullable(),
  unit: z.string(),
  /** 1 is the limit; null where no method gives a figure. */
  utilisation: z.number().nullable(),
  /** False: told besides, it doesn't decide the line. */
  decides: z.boolean(),
  source: z.string(),
});
export type ScheduleCheck = z.output<typeof checkSchema>;

const zoneSchema = z.object({
  zone: z.enum(['field', 'corner']),
  /** Allowable-stress level, suction as a positive number. */
  outward_wind_psf: z.number(),
  /** Up the stud, or along a buck; null where nothing is spaced. */
  spacing_along_in: z.number().nullable(),
  /** From stud to stud, or along a course. */
  spacing_across_in: z.number().nullable(),
  /** Wall that one fastener holds; coefficients of wind don't change below 10 ft². */
  tributary_ft2: z.number().nullable(),
  governing: z.enum(CHECKS),
  utilisation: z.number().nullable(),
  count_per_100_ft2: z.number().nullable(),
  checks: z.array(checkSchema),
});
export type ScheduleZone = z.output<typeof zoneSchema>;

const aimSchema = z.object({
  /** From the fastener's head to the face of the stud. */
  head_to_stud_in: z.number(),
  stud_face_in: z.number(),
  edge_distance_in: z.number(),
  /** How far off the stud's middle the point may enter. */
  room_each_side_in: z.number(),
  /** How far from square a fastener started on the line may lean. */
  largest_lean_deg: z.number(),
  /** Hole for the threads; null where none is asked for. */
  pilot_in: z.number().nullable(),
  /** Hole for the smooth shank of a lag screw; null for others. */
  clearance_in: z.number().nullable(),
  how: z.array(z.string()),
});

const corrosionSchema = z.object({
  class: z.string(),
  why: z.string(),
  /** Asked, never decided, where the site may be on a coast. */
  coastal: z.string().nullable(),
});

const spreadSchema = z.object({ low: z.number(), likely: z.number(), high: z.number() });

const stepLabourSchema = z.object({
  /** One person's, for one fastener. */
  minutes_each: spreadSchema,
  hours: spreadSchema,
  /** Which price of the answer pays for it. */
  priced_with: z.enum(['fasteners', 'cladding', 'bucks']),
});
export type StepLabour = z.output<typeof stepLabourSchema>;

const labourSchema = z.object({
  /** One person's, for all lines that have a count. */
  hours: spreadSchema,
  hours_per_100_ft2: spreadSchema,
  /** Of it, what the price of the fasteners through the insulation pays for. */
  hours_priced_with_fasteners: spreadSchema,
  text: z.string(),
  source: z.string(),
});
export type ScheduleLabour = z.output<typeof labourSchema>;

const STEP_VERDICTS = ['code-table', 'checked', 'practice', 'design-required'] as const;

const stepSchema = z.object({
  step: z.number().int().positive(),
  fixes: z.string(),
  to: z.string(),
  does: z.enum(['holds-until-covered', 'carries', 'joins']),
  fastener: z.string().nullable(),
  diameter_in: z.number().nullable(),
  /** What the fastener goes through before it holds. */
  stack: z.array(z.object({ label: z.string(), thickness_in: z.number() })),
  stack_in: z.number(),
  embedment_in: z.number().nullable(),
  min_length_in: z.number().nullable(),
  /** Stock length; null where none reaches or nothing has a length. */
  length_in: z.number().nullable(),
  length: z.enum(['reaches', 'none-on-the-market', 'has-none']),
  washer: z.string(),
  /** Bought apart from its fastener; null for none. */
  washer_to_buy: z.string().nullable(),
  corrosion: corrosionSchema,
  aim: aimSchema.nullable(),
  zones: z.array(zoneSchema),
  /** Mean over the wall: field and corners each by its area. */
  count_per_100_ft2: z.number().nullable(),
  project_count: z.number().nullable(),
  project_count_with_waste: z.number().nullable(),
  /** Null where nothing is counted. */
  labour: stepLabourSchema.nullable(),
  /**
   * `code-table`: the table allows it and the wind check holds; `checked`: published equations hold; `practice`:
   * nothing to size; `design-required`: a design professional must size it.
   */
  verdict: z.enum(STEP_VERDICTS),
  why: z.string(),
  source: z.array(z.string()),
  notes: z.array(z.string()),
});
export type ScheduleStep = z.output<typeof stepSchema>;

export const fasteningScheduleSchema = z.object({
  verdict: z.enum(['permitted', 'design-required']),
  why: z.string(),
  corner_zone: cornerZoneSchema,
  /** In the order of work. */
  steps: z.array(stepSchema),
  take_off: z.array(
    z.object({
      item: z.string(),
      length_in: z.number().nullable(),
      count: z.number(),
      count_with_waste: z.number(),
      for_steps: z.array(z.number()),
    }),
  ),
  labour: labourSchema,
  notes: z.array(z.string()),
});
export type FasteningScheduleAnswer = z.output<typeof fasteningScheduleSchema>;
