import { z } from 'zod';

const sizeSchema = z.object({ width_in: z.number(), height_in: z.number() });

/** One kind of window of the job in one wall. */
export const openingSchema = z.object({
  /** In words: size, operation, glazing, mounting. */
  window: z.string(),
  count: z.number(),
  width_in: z.number(),
  height_in: z.number(),
  glazing: z.string(),
  operation: z.string(),
  mounting: z.enum(['flanged', 'flangeless']),
  /** As given, or from its make-up; the high end is what it is judged by. */
  weight_lb: z.object({
    is_given: z.boolean(),
    low: z.number(),
    likely: z.number(),
    high: z.number(),
  }),
  /** Asked when the given weight can't be right for its glass. */
  weight_question: z.string().nullable(),
  /** Asked when the opening as given can't be right for the unit. */
  opening_question: z.string().nullable(),
  /** Whether it decides about the wall's buck. */
  is_worst: z.boolean(),
  carried_by: z.object({
    id: z.string(),
    /** Its pieces as they are bought and cut. */
    label: z.string(),
    support: z.string(),
    /** Of its pieces across the wall; left out where it has none. */
    depth_in: z.number().optional(),
  }),
  /** Why it doesn't share the buck of the others; null when it does. */
  set_apart: z.string().nullable(),
  /** The id of a buck other than the wall's, where it needs one. */
  own_buck: z.string().nullable(),
  /** Each, installed, without flashing. */
  support_usd: z.object({ low: z.number(), likely: z.number(), high: z.number() }),
  verdict: z.enum(['fits', 'does-not-fit', 'engineer']),
  utilisation: z.number().nullable(),
  uses: z.object({
    gravity: z.number().nullable(),
    wind: z.number().nullable(),
    combined: z.number().nullable(),
    bearing: z.number().nullable(),
  }),
  screw: z.string().nullable(),
  screws_per_side: z.number().nullable(),
  screws_in_sill: z.number().nullable(),
  screw_spacing_in: z.number().nullable(),
  screw_length_in: z.number().nullable(),
  min_screw_length_in: z.number().nullable(),
  why: z.string(),
  notes: z.array(z.string()),
  rough_opening_needed_in: sizeSchema,
  /** As given, or taken as made for the unit. */
  rough_opening_in: sizeSchema.extend({ is_given: z.boolean() }),
  /** Where the openings can't change: what each way of carrying leaves of the unit. */
  kept_opening: z
    .object({
      opening_in: sizeSchema,
      unit_with_buck_inside_in: sizeSchema.nullable(),
      buck_inside: z.string(),
      unit_with_buck_on_face_in: sizeSchema,
      unit_keeps_its_size_on_face: z.boolean(),
    })
    .nullable(),
  /** Where the flange (or the buck's outer edge) lies. */
  flange_plane: z.object({
    at: z.enum(['insulation-face', 'furring-face']),
    /** Why there; null where there is no other plane to choose. */
    why: z.string().nullable(),
    outside_framing_in: z.number(),
    outside_barrier_in: z.number(),
    outside_insulation_in: z.number(),
    behind_furring_in: z.number(),
    behind_finished_face_in: z.number(),
  }),
  /** Room for casing bead, sealant joint and head flashing. */
  room: z.object({
    recess_in: z.number(),
    joint_width_in: z.number(),
    joint_depth_in: z.number(),
    joint_has_room: z.boolean(),
    head_flashing_leg_in: z.number(),
    advice: z.string(),
  }),
  /** Of the coldest inside corner; null with the reason where none is estimated. */
  corner: z.object({ temp_factor: z.number().nullable(), not_estimated: z.string().nullable() }),
  flashing_sequence: z.array(z.string()),
  replace_later: z.array(z.string()),
  compatibility: z.array(z.string()),
});
export type Opening = z.output<typeof openingSchema>;
