import type { Buck, SheathingEntry } from './catalogue-schema.ts';
import type { FlangePlace } from './flange-seat.ts';
import type { InsulationBuild } from './insulation-builds.ts';

/**
 * How far a buck holds the window flange out, in.: the insulation, the furring where the flange sits at its face, and
 * the sheathing where the buck bears on the rough sill (it starts at the framing; one fastened on starts at the
 * sheathing). The water-resistive barrier, a few hundredths, is left out.
 */
export function projection_in(
  buck: Buck,
  build: InsulationBuild,
  sheathing: SheathingEntry,
  place: FlangePlace,
): number {
  return (
    build.thickness_in +
    place.beyond_insulation_in +
    (buck.support === 'bears-on-sill' ? sheathing.thickness_in : 0)
  );
}
