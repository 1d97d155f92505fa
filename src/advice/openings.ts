import type { BuiltBuck } from '../assembly/built-buck.ts';
import type { Candidate } from '../assembly/candidates.ts';
import type { Buck } from '../assembly/catalogue-schema.ts';
import type { SeatReason } from '../assembly/flange-seat.ts';
import type { AnswerContext } from '../assessment/answer-context.ts';
import type { ApartReason } from '../assessment/own-support.ts';
import { type PlannedOpening, windowPlan } from '../assessment/window-plan.ts';
import { NO_UTILISATION } from '../calculators/buck/buck-types.ts';
import type { Caution } from './advice-schema.ts';
import type { Opening } from './openings-schema.ts';

const APART: Readonly<Record<ApartReason, string>> = {
  door: 'A door’s sill is walked on: its support is an engineer’s, whatever carries the windows.',
  'large-fixed-triple':
    'A large fixed triple-glazed unit is not hung on a face-fastened buck without an engineer: it would sag in time, its glass wants firm setting blocks, and it is heavy to handle.',
  heavy:
    'A unit this heavy is not hung on a face-fastened buck without an engineer: it would sag in time, its glass wants firm setting blocks, and it is hard to handle.',
  large: 'The buck of the other windows does not carry a unit this large.',
};

const SEAT_REASONS: Readonly<Record<SeatReason, string | null>> = {
  'nothing-else': null,
  asked: 'That plane was asked for.',
  'joint-beside-frame':
    'The cladding hangs on furring, and only with the flange at the face of the furring does its finish meet the frame, so that a bead can stop there with a sealant joint. The price of it: the buck reaches out further by the depth of the furring, and its outer end stands in the drained space, where it counts as outdoors.',
  'buck-too-short':
    'At the face of the furring the finish could end in a joint beside the frame, but this buck doesn’t reach so far: the flange stays at the insulation, and the depth of the furring becomes a reveal to be lined.',
  'flange-on-board':
    'Without a buck the flange lies on the board: it can’t go out to the face of the furring, whose depth becomes a reveal to be lined.',
  'thin-finish':
    'The finish on the furring is too thin for a joint beside the frame in any plane, so the flange stays at the insulation, the glass in line with it and the buck short; pieces of furring and trim bridge the rest.',
};

/** A support of its own is paid for with the wall; what nobody can price without the engineer is said. */
function apartPrice(
  apart: ApartReason,
  { cost_each: { usd, provenance } }: Buck,
  { label }: BuiltBuck,
): string {
  const price = `about $${usd.likely} each ($${usd.low} to $${usd.high}${provenance === 'memory' ? ', from memory' : ''})`;
  return apart === 'door'
    ? `Counted in the wall’s price as ${label}, ${price}; what the engineer adds under the threshold is not.`
    : `Its own support is in the wall’s price: ${price}, without the engineer’s fee.`;
}

/** Every kind of window of the job in this wall, written out. */
export function openingsOf(candidate: Candidate, context: AnswerContext): Opening[] {
  return windowPlan(candidate, context).map(openingOf);
}

function openingOf(planned: PlannedOpening): Opening {
  const { window, buck, built, judgement, fit, plane, room, flashing, apart } = planned;
  const { strength } = judgement;
  const uses = strength?.utilisation ?? NO_UTILISATION;
  const screws = strength ? buck.screw : null;
  const given = window.weight_lb;
  return {
    window: window.words,
    count: window.count,
    width_in: window.width_in,
    height_in: window.height_in,
    glazing: window.glazing,
    operation: window.operation,
    mounting: window.mounting,
    weight_lb: {
      is_given: given !== null,
      low: to(given ?? window.estimate.low_lb, 0),
      likely: to(given ?? window.estimate.likely_lb, 0),
      high: to(window.judged_weight_lb, 0),
    },
    weight_question: planned.weight_question,
    opening_question: planned.opening_question,
    is_worst: planned.is_worst,
    carried_by: {
      id: buck.id,
      label: built.label,
      support: buck.support,
      ...(built.piece ? { depth_in: to(built.piece.depth_in, 4) } : {}),
    },
    set_apart: apart && APART[apart],
    own_buck: planned.has_own_buck ? buck.id : null,
    support_usd: { ...buck.cost_each.usd },
    verdict: judgement.verdict,
    utilisation: orNull(judgement.utilisation, 3),
    uses: {
      gravity: orNull(uses.gravity, 3),
      wind: orNull(uses.wind, 3),
      combined: orNull(uses.combined, 3),
      bearing: orNull(uses.bearing, 3),
    },
    screw: screws?.label ?? null,
    screws_per_side: strength?.screws_per_side ?? null,
    screws_in_sill: planned.screws_in_sill,
    screw_spacing_in: screws?.spacing_in ?? null,
    screw_length_in: screws?.length_in ?? null,
    min_screw_length_in: orNull(strength?.min_screw_length_in ?? null, 4),
    why: judgement.why,
    notes: [
      ...(given === null ? window.estimate.notes : []),
      ...(strength?.notes ?? []),
      ...(apart ? [apartPrice(apart, buck, built)] : []),
      ...(planned.corner.not_estimated ? [`Inside corner: ${planned.corner.not_estimated}`] : []),
    ],
    rough_opening_needed_in: inSixteenths(fit.rough_opening_needed_in, Math.ceil),
    rough_opening_in: { ...inSixteenths(fit.opening_in, Math.round), is_given: fit.opening_is_given },
    kept_opening: fit.kept_opening && {
      opening_in: inSixteenths(fit.kept_opening.opening_in, Math.round),
      unit_with_buck_inside_in:
        fit.kept_opening.unit_with_buck_inside_in &&
        inSixteenths(fit.kept_opening.unit_with_buck_inside_in, Math.floor),
      buck_inside: fit.kept_opening.buck_inside,
      unit_with_buck_on_face_in: inSixteenths(fit.kept_opening.unit_with_buck_on_face_in, Math.floor),
      unit_keeps_its_size_on_face: fit.kept_opening.unit_keeps_its_size_on_face,
    },
    flange_plane: {
      at: plane.at,
      why: SEAT_REASONS[plane.reason],
      outside_framing_in: to(plane.outside_framing_in, 4),
      outside_barrier_in: to(plane.outside_barrier_in, 4),
      outside_insulation_in: to(plane.outside_insulation_in, 4),
      behind_furring_in: to(plane.behind_furring_in, 4),
      behind_finished_face_in: to(plane.behind_finished_face_in, 4),
    },
    room: {
      recess_in: to(room.recess_in, 4),
      joint_width_in: to(room.joint_width_in, 4),
      joint_depth_in: to(room.joint_depth_in, 4),
      joint_has_room: room.joint_has_room,
      head_flashing_leg_in: to(room.head_flashing_leg_in, 4),
      advice: room.advice,
    },
    corner: {
      temp_factor: orNull(planned.corner.factor, 3),
      not_estimated: planned.corner.not_estimated,
    },
    flashing_sequence: [...flashing.steps],
    replace_later: [...flashing.replace_later],
    compatibility: [...flashing.compatibility],
  };
}

/** The flashing of the windows that the wall's buck carries: of the worst, since they differ in their frames only. */
export function sharedSequence(openings: readonly Opening[]): string[] {
  return [...(openings.find((opening) => opening.is_worst)?.flashing_sequence ?? [])];
}

/** Questions about weights and openings that can't be right for their unit: questions, never errors. */
export function questionCautions(openings: readonly Opening[]): Caution[] {
  const asked = (window: string, question: string | null, remedy: string): Caution[] =>
    question ? [{ text: `${window}: ${question}`, kind: 'data', remedy }] : [];
  return openings.flatMap(({ window, weight_question, opening_question }) => [
    ...asked(window, weight_question, 'Ask the supplier for the weight of the whole unit and give it again.'),
    ...asked(
      window,
      opening_question,
      'Measure between the studs and from sill to header, and give it again.',
    ),
  ]);
}

type Size = { readonly width_in: number; readonly height_in: number };

/** An opening is rounded up and what it leaves of a window down, so that the unit goes in. */
function inSixteenths({ width_in, height_in }: Size, round: (value: number) => number): Size {
  const sixteenths = (value: number) => round(Number((value * 16).toFixed(6))) / 16;
  return { width_in: sixteenths(width_in), height_in: sixteenths(height_in) };
}

function to(value: number, digits: number): number {
  return Number(value.toFixed(digits));
}

function orNull(value: number | null, digits: number): number | null {
  return value === null ? null : to(value, digits);
}
