import { z } from 'zod';
import { CLIMATE_ZONES } from '../base/climate-zones.ts';

const EDITION = 'Give a code edition in quotes, for example "2021".';

/** Input of `calc energy-code`. Which editions there are is decided by the table. */
export const energyInputSchema = z.strictObject({
  edition: z.string(EDITION).min(1, EDITION).max(20, EDITION),
  climate_zone: z.enum(CLIMATE_ZONES, { error: `Give a climate zone: ${CLIMATE_ZONES.join(', ')}.` }),
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
