import { ended } from '../base/first-letter.ts';
import { type Answers, type Finding, sameAnswer } from './answers.ts';
import { describeAnswer, FIELD_LABELS } from './describe.ts';
import { warning } from './notes.ts';
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
