import type { Buck, SheathingEntry } from './catalogue-schema.ts';
import type { InsulationBuild } from './insulation-builds.ts';

/**
 * How far a buck holds the window flange out, in., with the flange at the outer face of the insulation: from the
 * framing where the buck bears on the rough sill (so the sheathing counts), from the sheathing where it is fastened on.
 * The water-resistive barrier, a few hundredths, is left out.
 */
export function projection_in(buck: Buck, build: InsulationBuild, sheathing: SheathingEntry): number {
  return build.thickness_in + (buck.support === 'bears-on-sill' ? sheathing.thickness_in : 0);
}
