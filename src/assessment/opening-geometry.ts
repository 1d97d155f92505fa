import type { Candidate } from '../assembly/candidates.ts';
import type { Buck } from '../assembly/catalogue-schema.ts';
import { loadOpeningDetails } from '../assembly/opening-details.ts';
import type { BriefWindow } from '../brief/brief.ts';
import {
  openingNeeded,
  type RoughOpening,
  sillRise_in,
  type UnitSize,
  windowLeft,
} from '../calculators/buck/opening.ts';
import { isPlastered } from './flashing-sequence.ts';

export type OpeningFit = {
  /** Rough opening that this unit needs with this buck. */
  readonly rough_opening_needed_in: RoughOpening;
  /** Only where the openings can't change: what the opening, taken as made for this very unit, leaves. */
  readonly kept_opening: {
    readonly opening_in: RoughOpening;
    /** With the buck inside that takes least room; null when less than 6 in. of window would be left. */
    readonly unit_with_buck_inside_in: UnitSize | null;
    readonly buck_inside: string;
    /** On the face of the wall the buck takes nothing: the unit keeps its size. */
    readonly unit_with_buck_on_face_in: UnitSize;
  } | null;
};

/**
 * Rough opening that a unit needs, and, where the opening must stay as it is, what unit a buck inside it would leave
 * against one on the face of the wall.
 *
 * The sill slopes outward under the frame; a buck on the face has the slope cut into it and takes no height.
 *
 * @param inside  bucks that line the opening, for the comparison
 */
export function openingFit(
  window: BriefWindow,
  buck: Buck,
  inside: readonly Buck[],
  canChange: boolean,
): OpeningFit {
  const clearance_in = loadOpeningDetails().clearance_in.value;
  const unit = { unit_width_in: window.width_in, unit_height_in: window.height_in };
  const rough_opening_needed_in = openingNeeded({ ...unit, clearance_in, ...roomTaken(buck) });
  const [slimmest] = [...inside].sort((a, b) => a.takes_room_in_opening_in - b.takes_room_in_opening_in);
  if (canChange || !slimmest) return { rough_opening_needed_in, kept_opening: null };
  const opening_in = openingNeeded({ ...unit, clearance_in, buck_takes_in: 0, sill_slope_in: 0 });
  const taken = roomTaken(slimmest);
  const room = 2 * (clearance_in + taken.buck_takes_in);
  const isLeft =
    opening_in.width_in - room >= LEAST_UNIT_IN &&
    opening_in.height_in - room - taken.sill_slope_in >= LEAST_UNIT_IN;
  return {
    rough_opening_needed_in,
    kept_opening: {
      opening_in,
      unit_with_buck_inside_in: isLeft
        ? windowLeft({
            opening_width_in: opening_in.width_in,
            opening_height_in: opening_in.height_in,
            clearance_in,
            ...taken,
          })
        : null,
      buck_inside: slimmest.label,
      unit_with_buck_on_face_in: { width_in: window.width_in, height_in: window.height_in },
    },
  };
}

const LEAST_UNIT_IN = 6;

/** On each side, and in height for the slope. */
function roomTaken(buck: Buck): { readonly buck_takes_in: number; readonly sill_slope_in: number } {
  const details = loadOpeningDetails();
  const frame_in = details.frame_inside_flange_in.value;
  return {
    buck_takes_in: buck.takes_room_in_opening_in / 2,
    sill_slope_in:
      buck.takes_room_in_opening_in > 0 ? sillRise_in(frame_in, details.sill_slope_deg.value) : 0,
  };
}

export type FlangePlane = {
  readonly outside_framing_in: number;
  /** The water-resistive barrier lies on the sheathing. */
  readonly outside_barrier_in: number;
  readonly outside_insulation_in: number;
  readonly behind_finished_face_in: number;
};

export type OpeningRoomOutside = {
  /** Of the frame's face behind the finished face; negative when it stands proud. */
  readonly recess_in: number;
  /** Overlap of frame and finish, where the sealant joint sits. */
  readonly joint_depth_in: number;
  readonly joint_has_room: boolean;
  readonly joint_width_in: number;
  /** Front leg of the head flashing, from the plane of the flange to its drip. */
  readonly head_flashing_leg_in: number;
  readonly advice: string;
};

/** Where the plane of the flange (or of the buck's outer edge) lies in the wall. */
export function flangePlane({ build, sheathing, cladding }: Candidate): FlangePlane {
  const outside_in = cladding.layers.reduce((sum, layer) => sum + layer.thickness_in, 0);
  return {
    outside_framing_in: sheathing.thickness_in + build.thickness_in,
    outside_barrier_in: build.thickness_in,
    outside_insulation_in: 0,
    behind_finished_face_in: outside_in,
  };
}

/**
 * Room between the plane of the flange and the finished face for casing bead, sealant joint and head flashing.
 *
 * Flanged frames stand a fixed part outside their flange; one without a flange is taken as set flush with the buck.
 */
export function roomOutside(window: BriefWindow, candidate: Candidate): OpeningRoomOutside {
  const details = loadOpeningDetails();
  const { cladding } = candidate;
  const face_in = flangePlane(candidate).behind_finished_face_in;
  const frame_in = window.mounting === 'flanged' ? details.frame_outside_flange_in.value : 0;
  const finish_in = cladding.layers
    .filter((layer) => layer.role === 'finish')
    .reduce((sum, layer) => sum + layer.thickness_in, 0);
  const joint_depth_in = Math.max(0, Math.min(frame_in, face_in) - (face_in - finish_in));
  const joint_has_room = joint_depth_in >= details.joint_depth_in.value;
  const ends = isPlastered(cladding) ? 'casing bead' : 'trim';
  return {
    recess_in: face_in - frame_in,
    joint_depth_in,
    joint_has_room,
    joint_width_in: details.joint_width_in.value,
    head_flashing_leg_in: face_in + details.drip_past_face_in.value,
    advice: joint_has_room
      ? `The ${ends} can stop beside the frame with a backed sealant joint.`
      : `Frame and finish hardly overlap: line the reveal outside the frame with trim or a return of the finish, and put the sealant joint between that and the frame.`,
  };
}
