import { ended } from '../base/first-letter.ts';
import { type Answers, FIELD_IDS, type Finding, sameAnswer } from './answers.ts';
import { describeAnswer, FIELD_LABELS } from './describe.ts';
import type { Draft } from './draft.ts';
import { note, warning } from './notes.ts';
import type { ConversationState } from './state.ts';
import { remark } from './turns.ts';

/** Puts every contradiction that is being asked about off; the earlier answers stand until it is settled. */
export function putOff(state: ConversationState): ConversationState {
  const open = state.asides.flatMap((aside) => (aside.kind === 'contradiction' ? aside.findings : []));
  if (open.length === 0) return state;
  return {
    ...state,
    asides: state.asides.filter(({ kind }) => kind !== 'contradiction'),
    unsettled: [...withoutFields(state.unsettled, open), ...open],
  };
}

export function withoutFields(findings: readonly Finding[], settled: readonly Finding[]): Finding[] {
  return findings.filter(({ field }) => !settled.some((one) => one.field === field));
}

/** What was put off and still contradicts the answers. */
export function stillUnsettled(unsettled: readonly Finding[], answers: Answers): Finding[] {
  return unsettled.filter(({ field, value }) => {
    const now = answers[field];
    return now !== undefined && now !== 'unknown' && !sameAnswer(now, value);
  });
}

/** Every contradiction that is not settled: put off, or being asked about now. */
export function openContradictions(state: ConversationState): Finding[] {
  const off = putOff(state);
  return stillUnsettled(off.unsettled, off.answers);
}

type KeptContradictions = Pick<Draft, 'unsettled' | 'unsettled_total_usd'>;

/** What is kept of the contradictions that are not settled. */
export function keptContradictions(state: ConversationState): KeptContradictions {
  const open = openContradictions(state);
  if (open.length === 0) return {};
  const total_usd = open.find((finding) => finding.total_usd !== undefined)?.total_usd;
  return {
    unsettled: Object.fromEntries(open.map(({ field, value }) => [field, value])),
    ...(total_usd === undefined ? {} : { unsettled_total_usd: total_usd }),
  };
}

/** The contradictions of a kept talk, to be asked about before the answer. */
export function contradictionsKept({ unsettled = {}, unsettled_total_usd }: KeptContradictions): Finding[] {
  return FIELD_IDS.flatMap((field): Finding[] => {
    const value = unsettled[field];
    if (value === undefined) return [];
    const isTotal = field === 'budget_usd_per_ft2' && unsettled_total_usd !== undefined;
    const words = describeAnswer(field, value);
    return [{ field, value, words, ...(isTotal ? { total_usd: unsettled_total_usd } : {}) }];
  });
}

/** Says of what is not settled when a talk is put down that it is kept so. */
export function leftUnsettled(state: ConversationState): ConversationState {
  const words = openContradictions(state).map(({ field, value }) => {
    const now = state.answers[field];
    const first = now === undefined ? '' : `${describeAnswer(field, now)}, or `;
    return note(
      `Not settled, and kept so: ${FIELD_LABELS[field]}, ${first}${ended(describeAnswer(field, value))} I ask again when you go on.`,
    );
  });
  return remark(putOff(state), ...words);
}

/** Asks again about what was put off. */
export function askedAgain(state: ConversationState): ConversationState {
  const findings = stillUnsettled(state.unsettled, state.answers);
  const asked: ConversationState = { ...state, unsettled: [] };
  if (findings.length === 0) return asked;
  return { ...asked, stage: 'asking', asides: [...state.asides, { kind: 'contradiction', findings }] };
}

/** Says of what was never settled that the earlier answer was taken. */
export function assumedEarlier(state: ConversationState): ConversationState {
  const off = putOff(state);
  const open = stillUnsettled(off.unsettled, off.answers);
  return remark({ ...off, unsettled: [] }, ...open.map((finding) => warning(takenWords(finding, off))));
}

function takenWords({ field, value }: Finding, { answers }: ConversationState): string {
  const now = answers[field];
  const taken = now === undefined ? '' : describeAnswer(field, now);
  const other = ended(describeAnswer(field, value));
  return `Caution: two answers stood open. ${FIELD_LABELS[field]}: I assume the first, ${taken}, and not ${other} Find out which holds before ordering.`;
}
