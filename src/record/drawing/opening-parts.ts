import type { RankedAssembly } from '../../advice/advice-schema.ts';
import type { Opening } from '../../advice/openings-schema.ts';
import { loadCatalogue } from '../../assembly/catalogue.ts';
import { loadOpeningDetails } from '../../assembly/opening-details.ts';

/** Where the planes of a wall and its window lie, inches from the inside face outward. */
export type OpeningPlanes = {
  readonly strips: readonly { readonly role: string; readonly from: number; readonly to: number }[];
  readonly framing_in: number;
  readonly framing_out: number;
  /** Outer face of the sheathing; of the framing where there is none. */
  readonly barrier: number;
  readonly insulation_out: number;
  readonly finish_in: number;
  readonly face: number;
  readonly flange: number;
  readonly frame_in: number;
  readonly frame_out: number;
};

/** How far things reach across, inches from the edge of the rough opening into it; negative into the wall. */
export type OpeningReach = {
  readonly buck: { readonly from: number; readonly to: number } | null;
  /** Edge of the window frame. */
  readonly frame: number;
  readonly finish: number;
  readonly flange: number;
  readonly joint: number;
  readonly back_dam: number;
};

/** Thickness of a member that stands on edge on the face of the framing. */
const ON_EDGE_IN = 1.5;
/** Width of one that lies flat on it. */
const FLAT_IN = 3.5;
/** What is thinner than this can't be told from a line: a buck of 1-1/2 in. or less lies flat. */
const FLAT_UP_TO_IN = 1.5;

/** @returns null when the layers don't hold a framed wall with something outside it */
export function openingPlanes({ layers }: RankedAssembly, opening: Opening): OpeningPlanes | null {
  let x = 0;
  const strips = layers.map(({ role, thickness_in }) => {
    const strip = { role, from: x, to: x + Math.max(0, thickness_in) };
    x = strip.to;
    return strip;
  });
  const framing = strips.find(({ role }) => role === 'framing');
  const insulation = strips.filter(({ role }) => role === 'insulation').at(-1);
  if (!framing || !insulation) return null;
  const sheathing = strips.find(({ role }) => role === 'sheathing');
  const finish = strips.filter(({ role }) => role === 'finish').at(-1);
  const details = loadOpeningDetails();
  const flange = framing.to + opening.flange_plane.outside_framing_in;
  return {
    strips,
    framing_in: framing.from,
    framing_out: framing.to,
    barrier: sheathing?.to ?? framing.to,
    insulation_out: insulation.to,
    finish_in: finish?.from ?? insulation.to,
    face: x,
    flange,
    frame_in: flange - details.frame_inside_flange_in.value,
    frame_out: flange + details.frame_outside_flange_in.value,
  };
}

/** Measures that the answer doesn't hold come from the shipped details: nominal, as the page says. */
export function openingReach(opening: Opening, { flange, barrier }: OpeningPlanes): OpeningReach {
  const details = loadOpeningDetails();
  const buck = buckReach(opening, flange - barrier);
  const frame = Math.max(0, buck?.to ?? 0) + details.clearance_in.value;
  return {
    buck,
    frame,
    finish: frame - opening.room.joint_width_in,
    flange: frame - details.flange_width_in.value,
    joint: opening.room.joint_width_in,
    back_dam: details.back_dam_in.value,
  };
}

function buckReach({ carried_by }: Opening, projection_in: number): OpeningReach['buck'] {
  if (carried_by.support === 'bears-on-sill') {
    const room = loadCatalogue().bucks.find(({ id }) => id === carried_by.id)?.takes_room_in_opening_in;
    return { from: 0, to: (room ?? 2 * ON_EDGE_IN) / 2 };
  }
  if (carried_by.support !== 'face-fastened') return null;
  return { from: -(projection_in <= FLAT_UP_TO_IN ? FLAT_IN : ON_EDGE_IN), to: 0 };
}
