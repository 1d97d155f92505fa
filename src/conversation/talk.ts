import { howToFindOut } from '../advice/find-out.ts';
import { capital, ended } from '../base/first-letter.ts';
import type { Issue } from '../base/refusal.ts';
import { fieldWords } from '../brief/field-words.ts';
import { FIELD_IDS, type FieldId, type Finding } from './answers.ts';
import type { Block } from './blocks.ts';
import { COMMAND_HELP } from './command.ts';
import { describeAll, describeAnswer, FIELD_LABELS } from './describe.ts';
import { nearestThings } from './nearest-things.ts';
import { note, warning } from './notes.ts';
import { contextOf, countyWords, promptOf, whyAsked } from './prompt.ts';
import { questionOf } from './questions.ts';
import type { ConversationState, PlaceMatch } from './state.ts';
import { remark } from './turns.ts';
import type { Unclear } from './understanding/reading.ts';
import type { WidePlace } from './understanding/wide-places.ts';
import { putOff, stillUnsettled } from './unsettled.ts';
import { ZONE_EXAMPLES } from './zone-examples.ts';

/** "Noted [Stud depth: 5.5 in. (2x6)] …": what was understood, to be confirmed by going on or taken back. */
export function notedBlock(findings: readonly Finding[]): Block | null {
  if (findings.length === 0) return null;
  const inOrder = [...findings].sort((a, b) => FIELD_IDS.indexOf(a.field) - FIELD_IDS.indexOf(b.field));
  return {
    kind: 'chips',
    lead: 'Noted',
    items: inOrder.map(
      ({ field, value, title }) => `${FIELD_LABELS[field]}: ${title ?? describeAnswer(field, value)}`,
    ),
  };
}

/** From this many things understood in one line, it is said how to take them back. */
const MANY_CHIPS = 3;

export function takeBackHint(findings: readonly Finding[]): Block | null {
  if (findings.length < MANY_CHIPS) return null;
  return {
    kind: 'paragraph',
    text: 'Is one of them wrong? "not right" takes the line back; "change …" mends one.',
    role: 'quiet',
  };
}

export function leftOpenBlock(fields: readonly FieldId[]): Block | null {
  if (fields.length === 0) return null;
  return note(
    `Left open: ${fields.map((field) => FIELD_LABELS[field].toLowerCase()).join(', ')}. Where the answer needs it I assume something, and list it there.`,
  );
}

/** More of a line than this is known to whoever typed it. */
const LONGEST_QUOTED = 120;

/** What was said, its beginning where it is long. */
export function quoted(words: string): string {
  return words.length > LONGEST_QUOTED ? `${words.slice(0, LONGEST_QUOTED).trimEnd()} …` : words;
}

/** What was not understood, with a hint, a near word, and what the question takes. */
export function unclearBlocks(unclear: readonly Unclear[], state: ConversationState): Block[] {
  const choices = contextOf(state).choices.map((choice) => choice.label);
  return unclear.map(({ words, hint, isOfNoUse }) => {
    const said = quoted(words);
    if (isOfNoUse) return note(`"${said}": ${hint}`);
    const near = hint === '' ? nearestThings(said, choices) : '';
    // What leaves two things possible was understood; only which of them is meant was not.
    if (hint.endsWith('?')) return warning(`"${said}" leaves something open. ${hint}`);
    return warning(`Not understood: "${said}".${hint ? ` ${hint}` : ''}${near}`);
  });
}

/** "I take …, for example …": what the question on the screen would accept. */
export function acceptsBlock(state: ConversationState): Block | null {
  const prompt = promptOf(state);
  if (!prompt) return null;
  const example = prompt.example ? ` For example: ${prompt.example}.` : '';
  // Between two things to choose from, and once the answer is told, that would be no answer.
  const isQuestion = state.asides.length === 0 && contextOf(state).question !== null;
  const isSaid = !isQuestion || prompt.accepts.includes('"don\'t know"');
  return note(`I take ${prompt.accepts}${isSaid ? '' : '; or "don\'t know"'}.${example}`);
}

export function issueBlocks(issues: readonly Issue[]): Block[] {
  return issues.map((issue) =>
    warning(`${capital(fieldWords(issue.field))}: ${issue.value} is not accepted. ${issue.accepted}`),
  );
}

/** A wall was asked about that nothing goes by; what else is refused is a matter of the answers. */
export function noSuchWallBlocks(issues: readonly Issue[]): Block[] {
  return issues.flatMap((issue) =>
    issue.field === 'why-not'
      ? [warning(`I find no wall by the name ${issue.value}. ${issue.accepted}`)]
      : issueBlocks([issue]),
  );
}

/** Why it is asked, how much hangs on it as far as that has been tried, and how to find the answer out. */
export function whyBlocks(state: ConversationState): Block[] {
  const { question } = contextOf(state);
  if (question && state.asides.length === 0) {
    return [note(`Why: ${whyAsked(questionOf(question), state)}`), ...howToTellBlocks(state)];
  }
  const words = promptOf(state)
    ? 'Why: I do not guess between two things you may have meant.'
    : 'Why: the answer rests on the rules and figures that stand beside it.';
  return [note(words)];
}

/** How to find out what is being asked, on site or by asking. */
export function howToTellBlocks(state: ConversationState): Block[] {
  const { open } = contextOf(state);
  const ways = open.filter((field) => field !== 'place').map((field) => howToFindOut(field));
  if (ways.length === 0) return [];
  return [
    { kind: 'heading', text: 'How to find out' },
    { kind: 'list', items: [...new Set(ways)] },
  ];
}

export function helpBlocks(state: ConversationState): Block[] {
  const accepts = acceptsBlock(state);
  return [
    ...COMMAND_HELP.flatMap(({ title, rows }): Block[] => [
      { kind: 'heading', text: title },
      { kind: 'figures', rows: rows.map(({ say, does }) => ({ label: say, value: does })) },
    ]),
    ...(accepts ? [accepts] : []),
  ];
}

export function answersBlocks(state: ConversationState): Block[] {
  const rows = describeAll(state.answers);
  if (rows.length === 0) return [note('Nothing yet.')];
  return [
    { kind: 'heading', text: 'Your answers so far' },
    { kind: 'figures', rows: rows.map(({ label, value }) => ({ label, value })) },
    ...stillUnsettled(state.unsettled, state.answers).map(({ field, value }) =>
      warning(
        `Not settled: you also said ${ended(`${FIELD_LABELS[field].toLowerCase()} ${describeAnswer(field, value)}`)} I go on with the first${state.asksOnce ? '' : ', and ask again before I answer'}.`,
      ),
    ),
  ];
}

/** "Done": what is still open is assumed from here on; only the place can't be. */
export function assumeRest(state: ConversationState): ConversationState {
  const assumed: ConversationState = { ...putOff(state), assumeRest: true, reopened: null, asides: [] };
  if (state.answers.place !== undefined)
    return remark(assumed, note('I assume the rest and list what I assumed.'));
  return remark(assumed, ...placeNeededBlocks());
}

export function placeNeededBlocks(): Block[] {
  return [
    warning(
      'The place is the one thing I cannot assume. A county, a town, or just the climate zone will do:',
    ),
    { kind: 'list', items: zoneExampleLines() },
  ];
}

/** What to give instead of a state, a region or another country. */
export function widePlaceBlocks({ kind, name }: WidePlace): Block[] {
  if (kind === 'abroad') {
    return [
      warning(
        `"${name}": I know places in the United States only, and hold walls against its codes, which are not law elsewhere. The climate alone can be given as a zone; choose one like yours, and ask there what the code wants:`,
      ),
      { kind: 'list', items: zoneExampleLines() },
    ];
  }
  const words = `"${name}" is too wide: it reaches over several counties, and the code and the climate of one may not hold in the next. Which county or town is it? A climate zone such as "5B" will do too.`;
  return [warning(words)];
}

function zoneExampleLines(): string[] {
  return ZONE_EXAMPLES.map(({ zone, like, city }) => `${zone}: ${like}, as in ${city}`);
}

export function zoneBlock(place: PlaceMatch): Block {
  return note(`${countyWords(place)} lies in climate zone ${place.zone} (2021 county table).`);
}

/** A remark that something was not understood, followed by what would be. */
export function withAccepts(state: ConversationState, words: string): ConversationState {
  const accepts = acceptsBlock(state);
  return remark(state, warning(words), ...(accepts ? [accepts] : []));
}
