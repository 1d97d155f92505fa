import type { FlangePlaneName } from '../brief/brief.ts';
import type { Buck, Cladding, SheathingEntry } from './catalogue-schema.ts';
import { projection_in } from './flange-projection.ts';
import {
  type FlangePlace,
  type FlangeSeat,
  finishTakesJoint,
  flangeSeat,
  furringDepth_in,
} from './flange-seat.ts';
import type { InsulationBuild } from './insulation-builds.ts';

/** A buck, and the plane in which it holds the flange. */
export type SeatedBuck = { readonly buck: Buck; readonly seat: FlangeSeat };

/**
 * Bucks made for a flange in that plane. Where none reaches so far out, the one that reaches furthest stands in, so
 * that the rule on projection can say what is wrong instead of the wall vanishing unseen.
 */
export function bucksFor(
  build: InsulationBuild,
  sheathing: SheathingEntry,
  bucks: readonly Buck[],
  place: FlangePlace,
): readonly Buck[] {
  const made = bucks.filter(
    (buck) => canSit(buck, place) && reaches(buck, projection_in(buck, build, sheathing, place)),
  );
  if (made.length > 0) return made;
  const [furthest] = [...bucks].sort(
    (a, b) => b.max_projection_in - a.max_projection_in || (a.id < b.id ? -1 : 1),
  );
  return furthest ? [furthest] : [];
}

/**
 * The bucks for a cladding over that insulation, each with the plane that it holds the flange in.
 *
 * Without furring that is the outer face of the insulation. On furring the flange goes out to the furring's face where
 * the finish is thick enough for a sealant joint beside the frame there and the buck reaches; a thin finish gains no
 * joint by it and keeps the glass in line with the insulation, its trim bridging the furring. Who asks for a plane gets
 * it.
 *
 * @param wanted  the plane asked for; null leaves the choice
 */
export function seatedBucks(
  cladding: Cladding,
  build: InsulationBuild,
  sheathing: SheathingEntry,
  bucks: readonly Buck[],
  wanted: FlangePlaneName | null,
): readonly SeatedBuck[] {
  const furring_in = furringDepth_in(cladding);
  const all = (seat: FlangeSeat) =>
    bucksFor(build, sheathing, bucks, seat.place).map((buck) => ({ buck, seat }));
  if (furring_in === 0) return all(flangeSeat('insulation-face', 0, 'nothing-else'));
  if (wanted !== null) return all(flangeSeat(wanted, furring_in, 'asked'));
  if (!finishTakesJoint(cladding)) return all(flangeSeat('insulation-face', furring_in, 'thin-finish'));
  const out = flangeSeat('furring-face', furring_in, 'joint-beside-frame');
  const holds = (buck: Buck, { place }: FlangeSeat) =>
    canSit(buck, place) && reaches(buck, projection_in(buck, build, sheathing, place));
  const made = bucks.flatMap((buck): SeatedBuck[] => {
    if (holds(buck, out)) return [{ buck, seat: out }];
    const reason = canSit(buck, out.place) ? 'buck-too-short' : 'flange-on-board';
    const back = flangeSeat('insulation-face', furring_in, reason);
    return holds(buck, back) ? [{ buck, seat: back }] : [];
  });
  return made.length > 0 ? made : all(flangeSeat('insulation-face', furring_in, 'buck-too-short'));
}

/** A flange without a buck lies on the board itself: there is nothing to hold it at the face of the furring. */
function canSit({ support }: Buck, { at }: FlangePlace): boolean {
  return support !== 'flange-over-insulation' || at === 'insulation-face';
}

/** Is the buck made to hold a flange that far out? */
export function reaches(buck: Buck, out_in: number): boolean {
  return out_in >= buck.min_projection_in && out_in <= buck.max_projection_in;
}
