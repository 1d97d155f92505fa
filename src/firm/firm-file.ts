import { z } from 'zod';
import { CLIMATE_ZONES } from '../base/climate-zones.ts';
import {
  FINISHES,
  FRAMING_MATERIALS,
  placeSchema,
  STEEL_THICKNESSES_MIL,
  scenarioSchema,
} from '../brief/scenario.ts';

export const FIRM_SCHEMA = 'cladwright-firm/1';

function number(min: number, max: number, what: string, example: number) {
  const message = `Give ${what} from ${min} to ${max}, for example ${example}.`;
  return z.number(message).min(min, message).max(max, message);
}

const list = (what: string) => `Give a list of ${what}, at least one.`;

/** `"5B"`, or a place as a scenario has it. */
const firmPlaceSchema = z.union(
  [z.enum(CLIMATE_ZONES).transform((climate_zone) => ({ climate_zone })), placeSchema],
  {
    error: `Give a climate zone (${CLIMATE_ZONES.join(', ')}) or {"state","county"}.`,
  },
);

export const firmFramingSchema = z.strictObject({
  name: z.string().min(1).max(40, 'Give at most 40 characters.').optional(),
  material: z.enum(FRAMING_MATERIALS, `Choose one of ${FRAMING_MATERIALS.join(', ')}.`),
  depth_in: number(1.5, 12, 'the actual stud depth in inches', 5.5),
  spacing_in: number(16, 24, 'the stud spacing in inches on center', 16),
  species_gravity: number(0.3, 0.75, 'the specific gravity of the studs', 0.42).optional(),
  /** Left out: the base's, where its studs are steel too. */
  steel_thickness_mil: z
    .literal(STEEL_THICKNESSES_MIL, `Give one of ${STEEL_THICKNESSES_MIL.join(', ')}.`)
    .optional(),
  /** Left out: the usual fill of that depth. */
  cavity_insulation_r: number(0, 60, 'the R-value of the insulation between the studs', 21).optional(),
});
export type FirmFraming = z.output<typeof firmFramingSchema>;

export const budgetSchema = number(1, 1000, 'US dollars per square foot of wall', 32);
export const withinSchema = number(0, 0.5, 'a difference of score', 0.05);

/** What a firm builds and where, `cladwright-firm/1`. */
export const firmSchema = z.strictObject({
  schema: z.literal(FIRM_SCHEMA, `Give "${FIRM_SCHEMA}".`),
  name: z.string('Give the name of the firm.').min(1).max(120, 'Give at most 120 characters.'),
  /** What holds for every wall of the firm: the fields of a scenario but name and place. */
  base: scenarioSchema.omit({ schema: true, name: true, place: true }).optional(),
  places: z.array(firmPlaceSchema, list('climate zones or places')).min(1, list('climate zones or places')),
  framings: z.array(firmFramingSchema, list('framings')).min(1, list('framings')),
  finishes: z
    .array(z.enum(FINISHES, `Choose one of ${FINISHES.join(', ')}.`), list('finishes'))
    .min(1, list('finishes'))
    .optional(),
  /** null: no limit. */
  budgets_usd_per_ft2: z
    .array(budgetSchema.nullable(), list('budgets, null for none'))
    .min(1, list('budgets, null for none'))
    .optional(),
  /** How much lower than a cell's best an assembly may score there and still count as covering it. */
  within_score: withinSchema.optional(),
});
export type Firm = z.output<typeof firmSchema>;
