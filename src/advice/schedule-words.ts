import type { ScheduleCheck, ScheduleStep, ScheduleZone } from '../assessment/schedule/schedule-schema.ts';
import { inches } from '../base/inches.ts';

const CHECK_WORDS: Readonly<Record<ScheduleCheck['check'], string>> = {
  weight: 'weight',
  wind: 'wind',
  'weight-and-wind': 'weight and wind together',
  'weight-alone-by-the-timber-standard': 'weight by the timber standard',
  'weight-when-wet-with-boards': 'wet weight, boards hung on too',
  'steel-shear': 'screw shear in the steel',
  'code-table': 'code table',
  'lath-practice': 'lath practice',
  practice: 'practice',
  buck: 'buck strength',
  'evaluation-report': 'evaluation report',
};

export const STEP_VERDICT_WORDS: Readonly<Record<ScheduleStep['verdict'], string>> = {
  'code-table': 'within the code table',
  checked: 'checked by published equations',
  practice: 'trade practice, nothing to size',
  'design-required': 'a design professional must size it',
};

export function checkWords(check: ScheduleCheck['check']): string {
  return CHECK_WORDS[check];
}

/** "77 %"; "no figure" where no method gives one. */
export function percentWords(utilisation: number | null): string {
  return utilisation === null ? 'no figure' : `${Math.round(utilisation * 100)} %`;
}

/** "wind 13 %"; of wet boards that the fasteners alone don't hold: what must hold them. */
export function checkUseWords({ check, utilisation }: Pick<ScheduleCheck, 'check' | 'utilisation'>): string {
  const use = `${checkWords(check)} ${percentWords(utilisation)}`;
  const isTooMuch = check === 'weight-when-wet-with-boards' && utilisation !== null && utilisation > 1;
  return isTooMuch ? `${use} (so the boards stand on a ledger or track, not on these)` : use;
}

/** "No. 12 wood screw, 6 in."; glue where only an evaluation report says what holds. */
export function fastenerWords({ fastener, length, length_in, min_length_in, zones }: ScheduleStep): string {
  const isGlued = zones.some(({ governing }) => governing === 'evaluation-report');
  if (fastener === null) return isGlued ? 'glue, as the evaluation report says' : 'no fastener named';
  if (length === 'has-none') return fastener;
  if (length_in !== null) return `${fastener}, ${inches(length_in)} in.`;
  return `${fastener}: no length on the market reaches the ${min_length_in === null ? '' : `${inches(min_length_in)} in. `}needed`;
}

/** "6 in. up, 16 in. across" */
export function spacingWords({ spacing_along_in, spacing_across_in }: ScheduleZone): string {
  const along = spacing_along_in === null ? null : `${inches(spacing_along_in)} in.`;
  if (along === null) return 'no spacing';
  return spacing_across_in === null
    ? `${along} along`
    : `${along} up, ${inches(spacing_across_in)} in. across`;
}

/** "weight, used to 77 %" */
export function decidedWords({ governing, utilisation }: ScheduleZone): string {
  return utilisation === null
    ? `${checkWords(governing)}: no figure`
    : `${checkWords(governing)}, used to ${percentWords(utilisation)}`;
}

/** What a line goes through and holds in: "3/8 in. mat + 3 in. board, then 1-1/2 in. in the stud" */
export function stackWords({ stack, embedment_in }: ScheduleStep): string {
  const through = stack.map(({ label, thickness_in }) => `${inches(thickness_in)} in. ${label}`).join(' + ');
  return embedment_in === null ? through : `${through}, then ${inches(embedment_in)} in. to hold`;
}

/** How far off the middle, how far off square. */
export function aimWords(aim: NonNullable<ScheduleStep['aim']>): string {
  return `The stud lies ${aim.head_to_stud_in.toFixed(1)} in. behind the head. With ${aim.edge_distance_in.toFixed(2)} in. kept to its edges the point may be ${aim.room_each_side_in.toFixed(2)} in. off the middle of its ${inches(aim.stud_face_in)} in. face: a lean of ${aim.largest_lean_deg.toFixed(1)}° from square, started on the line.`;
}
