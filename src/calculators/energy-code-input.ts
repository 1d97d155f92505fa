import { z } from 'zod';

const ZONES = [
  '0A',
  '0B',
  '1A',
  '1B',
  '2A',
  '2B',
  '3A',
  '3B',
  '3C',
  '4A',
  '4B',
  '4C',
  '5A',
  '5B',
  '5C',
  '6A',
  '6B',
  '7',
  '8',
] as const;

const EDITION = 'Give a code edition in quotes, for example "2021".';

/** Input of `calc energy-code`. Which editions there are is decided by the table. */
export const energyInputSchema = z.strictObject({
  edition: z.string(EDITION).min(1, EDITION).max(20, EDITION),
  climate_zone: z.enum(ZONES, { error: `Give a climate zone: ${ZONES.join(', ')}.` }),
  wall: z.enum(['wood-frame', 'steel-frame', 'mass'], {
    error: 'Give "wood-frame", "steel-frame" or "mass".',
  }),
  /** For steel-frame R-value options; 16 where not given, which asks for more. */
  stud_spacing_in: z.union([z.literal(16), z.literal(24)], { error: 'Give 16 or 24.' }).optional(),
  /** For ASHRAE 90.1 only; nonresidential where not given. */
  space: z
    .enum(['nonresidential', 'residential'], { error: 'Give "nonresidential" or "residential".' })
    .optional(),
});
export type EnergyQuery = z.output<typeof energyInputSchema>;
