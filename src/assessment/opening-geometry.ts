import type { Candidate } from '../assembly/candidates.ts';
import type { Buck } from '../assembly/catalogue-schema.ts';
import type { SeatReason } from '../assembly/flange-seat.ts';
import { loadOpeningDetails } from '../assembly/opening-details.ts';
import type { BriefWindow, FlangePlaneName } from '../brief/brief.ts';
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
  /** The opening as it is: as given, or taken as made for this very unit. */
  readonly opening_in: RoughOpening;
  readonly opening_is_given: boolean;
  /** Shim and seal space left on each side by this unit with this buck; below 0 where it doesn't go in. */
  readonly clearance_left_in: { readonly width_in: number; readonly height_in: number };
  /** Only where the openings can't change: what unit each way of carrying leaves. */
  readonly kept_opening: {
    readonly opening_in: RoughOpening;
    /** With the buck inside that takes least room; null when less than 6 in. of window would be left. */
    readonly unit_with_buck_inside_in: UnitSize | null;
    readonly buck_inside: string;
    /** On the face of the wall the buck takes nothing: only shim and seal space go off. */
    readonly unit_with_buck_on_face_in: UnitSize;
    readonly unit_keeps_its_size_on_face: boolean;
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
  const rough_opening_needed_in = neededFor(window, buck);
  const opening_in = openingAsItIs(window);
  const opening_is_given = window.rough_opening_width_in !== null || window.rough_opening_height_in !== null;
  const own = roomTaken(buck);
  const common = {
    rough_opening_needed_in,
    opening_in,
    opening_is_given,
    clearance_left_in: {
      width_in: (opening_in.width_in - window.width_in) / 2 - own.buck_takes_in,
      height_in: (opening_in.height_in - window.height_in - own.sill_slope_in) / 2 - own.buck_takes_in,
    },
  };
  const [slimmest] = [...inside].sort((a, b) => a.takes_room_in_opening_in - b.takes_room_in_opening_in);
  if (canChange || !slimmest) return { ...common, kept_opening: null };
  const leftBy = (taken: RoomTaken): UnitSize | null => {
    const room = 2 * (clearance_in + taken.buck_takes_in);
    const isLeft =
      opening_in.width_in - room >= LEAST_UNIT_IN &&
      opening_in.height_in - room - taken.sill_slope_in >= LEAST_UNIT_IN;
    if (!isLeft) return null;
    return windowLeft({
      opening_width_in: opening_in.width_in,
      opening_height_in: opening_in.height_in,
      clearance_in,
      ...taken,
    });
  };
  const unit: UnitSize = { width_in: window.width_in, height_in: window.height_in };
  const onFace = leftBy({ buck_takes_in: 0, sill_slope_in: 0 });
  const keeps =
    onFace !== null && onFace.width_in >= unit.width_in - 1e-9 && onFace.height_in >= unit.height_in - 1e-9;
  return {
    ...common,
    kept_opening: {
      opening_in,
      unit_with_buck_inside_in: leftBy(roomTaken(slimmest)),
      buck_inside: slimmest.label,
      unit_with_buck_on_face_in: keeps || onFace === null ? unit : onFace,
      unit_keeps_its_size_on_face: keeps,
    },
  };
}

/** Rough opening that a unit needs with a buck, in. */
function neededFor(window: UnitOf, buck: Buck): RoughOpening {
  return openingNeeded({
    unit_width_in: window.width_in,
    unit_height_in: window.height_in,
    clearance_in: loadOpeningDetails().clearance_in.value,
    ...roomTaken(buck),
  });
}

/** The opening as given; a side that wasn't is taken as made for the unit with its shim and seal space. */
export function openingAsItIs(window: UnitOf & GivenOpening): RoughOpening {
  const clearance = 2 * loadOpeningDetails().clearance_in.value;
  return {
    width_in: window.rough_opening_width_in ?? window.width_in + clearance,
    height_in: window.rough_opening_height_in ?? window.height_in + clearance,
  };
}

/**
 * Whether the opening, as given on both sides, has the room for this unit with that buck inside it. An opening that
 * wasn't given never counts as having room.
 */
export function roomInside(window: UnitOf & GivenOpening, buck: Buck): boolean {
  const { rough_opening_width_in: width_in, rough_opening_height_in: height_in } = window;
  if (width_in === null || height_in === null) return false;
  const needed = neededFor(window, buck);
  return width_in >= needed.width_in - 1e-9 && height_in >= needed.height_in - SIXTEENTH_IN;
}

type UnitOf = Pick<BriefWindow, 'width_in' | 'height_in'>;
type GivenOpening = Pick<BriefWindow, 'rough_opening_width_in' | 'rough_opening_height_in'>;
type RoomTaken = { readonly buck_takes_in: number; readonly sill_slope_in: number };

/** Openings are measured to a sixteenth; the rise of the slope is no round figure. */
const SIXTEENTH_IN = 1 / 16;
const LEAST_UNIT_IN = 6;

/** On each side, and in height for the slope. */
function roomTaken(buck: Buck): RoomTaken {
  const details = loadOpeningDetails();
  const frame_in = details.frame_inside_flange_in.value;
  return {
    buck_takes_in: buck.takes_room_in_opening_in / 2,
    sill_slope_in:
      buck.takes_room_in_opening_in > 0 ? sillRise_in(frame_in, details.sill_slope_deg.value) : 0,
  };
}

export type FlangePlane = {
  readonly at: FlangePlaneName;
  readonly reason: SeatReason;
  readonly outside_framing_in: number;
  /** The water-resistive barrier lies on the sheathing. */
  readonly outside_barrier_in: number;
  readonly outside_insulation_in: number;
  /** Furring that stands outside the flange. */
  readonly behind_furring_in: number;
  readonly behind_finished_face_in: number;
};

export type OpeningRoomOutside = {
  /** Of the frame's face behind the finished face; negative when it stands proud. */
  readonly recess_in: number;
  /** Overlap of frame and finish, where the sealant joint sits. */
  readonly joint_depth_in: number;
  readonly joint_has_room: boolean;
  readonly joint_width_in: number;
  /** Top leg of the head flashing, from the outer face of the insulation (behind the drained space) to its drip. */
  readonly head_flashing_leg_in: number;
  readonly advice: string;
};

/** Where the plane of the flange (or of the buck's outer edge) lies in the wall. */
export function flangePlane({ build, sheathing, cladding, seat }: Candidate): FlangePlane {
  const outside_in = cladding.layers.reduce((sum, layer) => sum + layer.thickness_in, 0);
  return {
    at: seat.place.at,
    reason: seat.reason,
    outside_framing_in: sheathing.thickness_in + build.thickness_in + seat.place.beyond_insulation_in,
    outside_barrier_in: build.thickness_in + seat.place.beyond_insulation_in,
    outside_insulation_in: seat.place.beyond_insulation_in,
    behind_furring_in: seat.behind_furring_in,
    behind_finished_face_in: outside_in - seat.place.beyond_insulation_in,
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
    head_flashing_leg_in:
      face_in + candidate.seat.place.beyond_insulation_in + details.drip_past_face_in.value,
    advice: joint_has_room
      ? `The ${ends} can stop beside the frame with a backed sealant joint.`
      : `Frame and finish hardly overlap: line the reveal outside the frame with trim or a return of the finish, and put the sealant joint between that and the frame.`,
  };
}
