import type { FlangePlaneName } from '../brief/brief.ts';
import type { Cladding } from './catalogue-schema.ts';
import { loadOpeningDetails } from './opening-details.ts';

export type SeatReason =
  | 'nothing-else'
  | 'asked'
  | 'joint-beside-frame'
  | 'buck-too-short'
  | 'flange-on-board'
  | 'thin-finish';

/** The plane itself: the same object for the same plane, so that what follows from it is worked out once. */
export type FlangePlace = {
  readonly at: FlangePlaneName;
  /** Past the outer face of the insulation, in. */
  readonly beyond_insulation_in: number;
};

/** The plane that a wall's window flanges sit in, and why there. */
export type FlangeSeat = {
  readonly place: FlangePlace;
  /** Furring that stands outside the flange, in. */
  readonly behind_furring_in: number;
  readonly reason: SeatReason;
};

/** Depth of the furring that a cladding hangs on, in.; 0 for one without. */
export function furringDepth_in({ layers }: Cladding): number {
  return layers.reduce((sum, layer) => sum + (layer.role === 'furring' ? layer.thickness_in : 0), 0);
}

/**
 * Whether the finish that stands on the furring is thick enough for a sealant joint beside a frame whose flange sits at
 * the face of the furring.
 */
export function finishTakesJoint({ layers }: Cladding): boolean {
  const { frame_outside_flange_in, joint_depth_in } = loadOpeningDetails();
  const finish_in = layers.reduce(
    (sum, layer) => sum + (layer.role === 'finish' ? layer.thickness_in : 0),
    0,
  );
  return Math.min(finish_in, frame_outside_flange_in.value) >= joint_depth_in.value;
}

const places = new Map<number, FlangePlace>();

function placeAt(beyond_insulation_in: number): FlangePlace {
  const found = places.get(beyond_insulation_in);
  if (found) return found;
  const made: FlangePlace = {
    at: beyond_insulation_in > 0 ? 'furring-face' : 'insulation-face',
    beyond_insulation_in,
  };
  places.set(beyond_insulation_in, made);
  return made;
}

/** A seat over furring of that depth, 0 where there is none. */
export function flangeSeat(at: FlangePlaneName, furring_in: number, reason: SeatReason): FlangeSeat {
  const isOut = at === 'furring-face';
  return { place: placeAt(isOut ? furring_in : 0), behind_furring_in: isOut ? 0 : furring_in, reason };
}
