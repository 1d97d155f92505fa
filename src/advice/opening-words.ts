import { inches } from '../base/inches.ts';
import type { Opening } from './openings-schema.ts';

const VERDICTS: Readonly<Record<Opening['verdict'], string>> = {
  fits: 'it carries',
  'does-not-fit': 'it does not carry',
  engineer: 'an engineer decides',
};

/** "9 of 32 x 54 in. casement, triple-glazed, flanged" */
export function openingTitle({ count, window, is_worst }: Opening, of: number): string {
  return `${count} of ${window}${is_worst && of > 1 ? ' (decides about the buck)' : ''}`;
}

/** What carries a window and how, each a short sentence. */
export function openingSentences(opening: Opening): string[] {
  return [
    weightSentence(opening),
    ...(opening.set_apart ? [opening.set_apart] : []),
    supportSentence(opening),
    ...screwSentence(opening),
    ...(opening.set_apart ? [opening.why] : []),
    fitSentence(opening),
    ...(opening.weight_question ? [opening.weight_question] : []),
    ...(opening.opening_question ? [opening.opening_question] : []),
  ];
}

function weightSentence({ weight_lb: { is_given, low, likely, high } }: Opening): string {
  return is_given
    ? `Weighs ${high} lb, as given.`
    : `Weighs about ${likely} lb (${low} to ${high}), worked out from its make-up and judged by the high end.`;
}

function supportSentence({ carried_by, own_buck, verdict, utilisation, uses }: Opening): string {
  const own = own_buck === null ? '' : ' of its own';
  const used = utilisation === null ? '' : `, used to ${percent(utilisation)}${usedBy(uses, utilisation)}`;
  return `Support${own}: ${carried_by.label}; ${VERDICTS[verdict]}${used}.`;
}

const CHECKS = {
  gravity: 'weight',
  wind: 'wind',
  combined: 'weight and wind together',
  bearing: 'bearing on the rough sill',
} as const;

function usedBy(uses: Opening['uses'], highest: number): string {
  const [check] = (['gravity', 'wind', 'combined', 'bearing'] as const).filter(
    (name) => uses[name] === highest,
  );
  return check ? ` by ${CHECKS[check]}` : '';
}

function screwSentence(opening: Opening): string[] {
  const { screw, screws_per_side, screws_in_sill, screw_spacing_in, min_screw_length_in } = opening;
  if (screw === null || screws_per_side === null) return [];
  const sill = screws_in_sill === null ? '' : `, ${screws_in_sill} in sill and head each`;
  const spacing = screw_spacing_in === null ? '' : `, no further than ${inches(screw_spacing_in)} in. apart`;
  const least = min_screw_length_in === null ? '' : `; at least ${inches(min_screw_length_in)} in. long`;
  return [`Screws: ${screw}, ${screws_per_side} in each jamb${sill}${spacing}${least}.`];
}

function fitSentence(opening: Opening): string {
  const { rough_opening_needed_in: needed, rough_opening_in: now, kept_opening: kept } = opening;
  if (!kept) {
    const given = now.is_given ? ` It is given as ${size(now)}` : '';
    return `Rough opening needed: ${size(needed)}${given}`;
  }
  const inside = kept.unit_with_buck_inside_in;
  const left = inside ? `a unit of ${size(inside)}` : 'no window worth the name.';
  const onFace = kept.unit_keeps_its_size_on_face
    ? 'the unit keeps its size'
    : `a unit of ${size(kept.unit_with_buck_on_face_in).replace(/\.$/, '')} has room`;
  const how = now.is_given
    ? `${size(kept.opening_in)} as given`
    : `taken as ${size(kept.opening_in)} for this unit`;
  return `The opening is kept (${how}): on the face of the wall ${onFace}; a buck inside (${kept.buck_inside}) would leave ${left}`;
}

/** Where the flange lies in the wall, and the room outside it, for each way of mounting. */
export function planeSentences(openings: readonly Opening[]): string[] {
  const [first] = openings;
  if (!first) return [];
  const { flange_plane: plane } = first;
  const mountings = (['flanged', 'flangeless'] as const).flatMap((mounting) => {
    const found = openings.find((opening) => opening.mounting === mounting);
    return found ? [found] : [];
  });
  return [
    `The plane of the flange, or of the buck’s outer edge, lies ${inches(plane.outside_framing_in)} in. outside the framing, ${inches(plane.outside_barrier_in)} in. outside the water-resistive barrier, ${pastInsulation(plane)} and ${inches(plane.behind_finished_face_in)} in. behind the finished face.`,
    ...(plane.why === null ? [] : [plane.why]),
    ...mountings.map(({ mounting, room }) => {
      const whose =
        mounting === 'flanged'
          ? 'A frame with a flange'
          : 'A frame without a flange, set flush with the buck,';
      const where = room.recess_in >= 0 ? 'behind' : 'outside';
      return `${whose} ends ${inches(Math.abs(room.recess_in))} in. ${where} the finished face and overlaps the finish by ${inches(room.joint_depth_in)} in.; joint ${inches(room.joint_width_in)} in. wide. ${room.advice}`;
    }),
    `Head flashing: ${inches(first.room.head_flashing_leg_in)} in. from the outer face of the insulation, behind the drained space, to its drip.`,
  ];
}

function pastInsulation(plane: Opening['flange_plane']): string {
  return plane.outside_insulation_in > 0
    ? `at the face of the furring, ${inches(plane.outside_insulation_in)} in. past the outer face of the insulation,`
    : `at the outer face of the insulation${plane.behind_furring_in > 0 ? `, behind ${inches(plane.behind_furring_in)} in. of furring,` : ''}`;
}

/** What the figures rest on, each note once; a note of some windows only is headed by them. */
export function noteSentences(openings: readonly Opening[]): readonly string[] {
  const notes = [...new Set(openings.flatMap((opening) => opening.notes))];
  return notes.map((note) => {
    const whose = openings.filter((opening) => opening.notes.includes(note));
    return whose.length === openings.length
      ? note
      : `${whose.map(({ window }) => window).join('; ')}: ${note}`;
  });
}

/** Openings whose flashing differs from that of the windows on the wall's buck. */
export function otherSequences(openings: readonly Opening[], shared: readonly string[]): readonly Opening[] {
  const seen = new Set([shared.join('\n')]);
  return openings.filter(({ flashing_sequence }) => {
    const key = flashing_sequence.join('\n');
    if (seen.has(key)) return false;
    seen.add(key);
    return true;
  });
}

/** The steps of an opening that the shared sequence doesn't have. */
export function ownSteps({ flashing_sequence }: Opening, shared: readonly string[]): readonly string[] {
  return flashing_sequence.filter((step) => !shared.includes(step));
}

/** Each sentence of a kind once, whatever the windows. */
export function onceEach(
  openings: readonly Opening[],
  kind: 'replace_later' | 'compatibility',
): readonly string[] {
  return [...new Set(openings.flatMap((opening) => opening[kind]))];
}

function size({ width_in, height_in }: { readonly width_in: number; readonly height_in: number }): string {
  return `${inches(width_in)} x ${inches(height_in)} in.`;
}

function percent(use: number): string {
  return `${Math.round(use * 100)} %`;
}
