import { FIELD_IDS, type FieldId, sameAnswer } from './answers.ts';
import { describeAnswer, FIELD_LABELS } from './describe.ts';
import type { Before, ConversationState } from './state.ts';

/** Fields whose answer is another than it was. */
export function changedFields({ answers }: ConversationState, before: Before): FieldId[] {
  return FIELD_IDS.filter((field) => {
    const [now, then] = [answers[field], before.answers[field]];
    return now === undefined || then === undefined ? now !== then : !sameAnswer(now, then);
  });
}

/** What would be taken back: "Finish: true cement stucco", "Budget: $28 … -> $30 …". */
export function takenBackItems(state: ConversationState, before: Before): string[] {
  return changedFields(state, before).map((field) => {
    const [now, then] = [state.answers[field], before.answers[field]];
    const is = now === undefined ? 'nothing said' : describeAnswer(field, now);
    return `${FIELD_LABELS[field]}: ${is}${then === undefined ? '' : ` -> ${describeAnswer(field, then)}`}`;
  });
}
