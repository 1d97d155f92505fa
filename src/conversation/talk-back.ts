import type { Advice } from '../advice/advice-schema.ts';
import { dollarsAFoot } from '../brief/field-words.ts';
import { toScenario } from './answers-schema.ts';
import { type Block, blocksToText } from './blocks.ts';
import { type Command, rankNamed } from './command.ts';
import { compareBlocks } from './compare.ts';
import { explainBlocks, glossaryBlocks, termsIn } from './glossary.ts';
import { note, titledList, warning } from './notes.ts';
import { numbersBlocks } from './numbers-of.ts';
import { outlookBlocks } from './outlook.ts';
import { pictureBlocks, wallOfRank } from './pictures.ts';
import { promptOf } from './prompt.ts';
import { READER_WORDS, type Reader } from './reader.ts';
import { SHORT_QUESTION_KINDS } from './short-questions.ts';
import type { ConversationState, Extent, Step } from './state.ts';
import { howToTellBlocks, whyBlocks } from './talk.ts';
import { changeBlocks } from './tell-advice.ts';
import { allCautionBlocks } from './tell-briefly.ts';
import { affordBlocks, cheaperBlocks, contractorBlocks, soundBlocks } from './tell-owner-questions.ts';
import { findOutBlocks, PLAIN_TIE, robustnessBlocks } from './tell-ranking.ts';
import { nextStepBlocks, nonePassBlocks, shortAnswerBlocks } from './tell-short-answers.ts';
import { withAdviceTold } from './told.ts';
import { readTrial } from './trial.ts';
import { turnBlocks } from './turn-blocks.ts';
import { remark } from './turns.ts';

const ASKING = [
  'answer',
  'whole-answer',
  'cautions',
  'firmness',
  'find-out',
  'sound',
  'affordable',
  'too-dear',
  'contractor',
  ...SHORT_QUESTION_KINDS,
  'how-to-tell',
  'impression',
  'words',
  'explain',
  'reader',
  'picture',
  'numbers',
  'compare',
  'what-if',
  'why-not',
] as const satisfies readonly Command['kind'][];

type Asking = Extract<Command, { kind: (typeof ASKING)[number] }>;

/** Whether a command only asks something back and changes no answer. */
export function isAskingBack(command: Command): command is Asking {
  return ASKING.some((kind) => kind === command.kind);
}

/** Says or shows what the user asks for. */
export function talkBack(state: ConversationState, command: Asking): Step {
  const say = (...blocks: readonly Block[]): Step => ({ state: remark(state, ...blocks), effects: [] });
  switch (command.kind) {
    case 'words':
      return say(...glossaryBlocks());
    case 'explain':
      return say(...explainBlocks(command.word));
    case 'impression':
      if (state.outlook?.answers === state.answers || state.answers.place === undefined) {
        return say(...outlookBlocks(state));
      }
      return {
        state: { ...state, stage: 'trying', returnTo: returning(state) },
        effects: [{ kind: 'look', answers: state.answers, scenario: toScenario(state.answers) }],
      };
    case 'reader':
      return {
        state: remark({ ...state, reader: command.reader }, note(READER_WORDS[command.reader])),
        effects: [],
      };
    case 'what-if':
      return tryOut(state, command.words);
    case 'why-not':
      return whyNot(state, command.words);
    case 'answer':
      return tellAgain(state, state.extent);
    case 'whole-answer':
      return tellAgain(state, 'whole');
    case 'cautions':
      return withAnswer(state, (advice) => say(...allCautionBlocks(advice, state.reader)));
    case 'firmness':
      return withAnswer(state, (advice) => say(...firmnessBlocks(advice, state.reader)));
    case 'how-to-tell':
      return state.stage === 'told' && state.advice
        ? say(...whatToFindOut(state.advice))
        : say(...orNothingToLookUp(howToTellBlocks(state)));
    case 'find-out':
      return withAnswer(state, (advice) => say(...whatToFindOut(advice)));
    case 'sound':
      return withAnswer(state, (advice) => say(...soundBlocks(advice)));
    case 'affordable':
      return withAnswer(state, (advice) => say(...affordBlocks(advice, budgetOf(state))));
    case 'too-dear':
      return withAnswer(state, (advice) => say(...cheaperBlocks(advice, budgetOf(state))));
    case 'contractor':
      return withAnswer(state, (advice) => say(...contractorBlocks(advice)));
    case 'screws':
    case 'rot':
    case 'cracks':
    case 'lasting':
    case 'safe':
    case 'own-hands':
      return withAnswer(state, (advice) => say(...shortAnswerBlocks(command.kind, advice)));
    case 'next-step':
      return state.advice
        ? say(...nextStepBlocks(state.advice, state.savedPaths.length > 0))
        : say(note(NEXT_WHILE_ASKED));
    case 'none-pass':
      return withAnswer(state, (advice) => say(...nonePassBlocks(advice)));
    case 'meaning':
      return say(...meaningBlocks(state));
    case 'compare':
      return withAnswer(state, (advice) => say(...compareBlocks(advice, command.ranks)));
    case 'numbers':
      return withAnswer(state, (advice) => {
        const wall = wallOfRank(advice, command.rank);
        return say(...('kind' in wall ? [wall] : numbersBlocks(wall)));
      });
    case 'picture':
      return withAnswer(state, (advice) => {
        const wall = wallOfRank(advice, command.rank);
        return say(...('kind' in wall ? [wall] : pictureBlocks(command.picture, wall)));
      });
  }
}

const NEXT_WHILE_ASKED =
  'Answer what is asked, or say "don\'t know"; "why" says why it is asked, "how can I tell" how to find out. "done" assumes what is still open and answers.';

/** More words than this at once explain nothing. */
const MOST_WORDS = 6;

/** The words of the trade in what was said last, or in what is asked. */
function meaningBlocks(state: ConversationState): readonly Block[] {
  const prompt = promptOf(state);
  const asked = prompt ? [prompt.title, ...prompt.choices].join(' ') : '';
  const told = state.turns.findLast(({ kind }) => kind === 'remark' || kind === 'advice');
  const last = told ? blocksToText(turnBlocks(told), 200) : '';
  const texts = state.stage === 'told' ? [last, asked] : [asked, last];
  const terms = texts.map(termsIn).find((found) => found.length > 0) ?? [];
  const more = terms.slice(MOST_WORDS).map(({ term }) => term);
  if (terms.length === 0) return [...whyBlocks(state), note('"what is …" explains a word of the trade.')];
  return [
    { kind: 'heading', text: 'Words in it' },
    {
      kind: 'figures',
      rows: terms.slice(0, MOST_WORDS).map(({ term, plain }) => ({ label: term, value: plain })),
    },
    note(
      `${more.length > 0 ? `Also: ${more.join(', ')}. ` : ''}"what is …" explains any other; "why" says why something is asked.`,
    ),
  ];
}

/** The budget that the answer was worked out with. */
function budgetOf({ advisedAnswers }: ConversationState): number | null {
  const budget = advisedAnswers?.budget_usd_per_ft2;
  return typeof budget === 'number' ? budget : null;
}

function orNothingToLookUp(blocks: readonly Block[]): readonly Block[] {
  if (blocks.length > 0) return blocks;
  return [note('There is nothing to look up for this one. "don\'t know" leaves an answer open.')];
}

function tellAgain(state: ConversationState, extent: Extent): Step {
  return withAnswer(state, (advice) => ({
    state: withAdviceTold(state, advice, extent),
    effects: [],
  }));
}

/** How firm the first choice is: ties, and how far things must move before another wall wins. */
function firmnessBlocks(advice: Advice, reader: Reader): Block[] {
  const ties = advice.ranked.flatMap((wall) =>
    wall.tie && wall.tie_with_first
      ? [`${wall.rank}. ${wall.title}: ${reader === 'homeowner' ? PLAIN_TIE : wall.tie.words}`]
      : [],
  );
  const blocks = [
    ...titledList('As good as the first choice', ties),
    ...robustnessBlocks(advice, reader),
    ...changeBlocks(advice),
  ];
  return blocks.length > 0 ? blocks : [note('No wall passes, so there is no choice that could be firm.')];
}

function whatToFindOut(advice: Advice): Block[] {
  const blocks = findOutBlocks(advice);
  if (blocks.length > 0) return blocks;
  const words = 'Nothing that I assumed would change the first choice, as far as I could try it.';
  return [note(words)];
}

/** Where the talk stands, for coming back to it. */
export function returning({ stage }: ConversationState): 'asking' | 'told' {
  return stage === 'told' ? 'told' : 'asking';
}

/** Only once there is an answer to speak of. */
function withAnswer(state: ConversationState, then: (advice: Advice) => Step): Step {
  if (state.advice) return then(state.advice);
  const words =
    'There is no answer yet to show that of. "done" assumes what is still open and answers; "impression" is what I think so far.';
  return { state: remark(state, note(words)), effects: [] };
}

/** A wall may be asked about before there is an answer: it is judged by what has been said so far. */
function whyNot(state: ConversationState, words: string): Step {
  if (state.answers.place === undefined) {
    return { state: remark(state, note('I can look into that once I know the place.')), effects: [] };
  }
  const rank = rankNamed(words);
  const ask = (name: string): Step => ({
    state: { ...state, stage: 'trying', returnTo: returning(state) },
    effects: [{ kind: 'why-not', scenario: toScenario(state.answers), words: name }],
  });
  if (rank === null) return ask(words);
  return withAnswer(state, (advice) => {
    const wall = wallOfRank(advice, rank);
    return 'kind' in wall ? { state: remark(state, wall), effects: [] } : ask(wall.id);
  });
}

const MORE_OR_LESS =
  /^(?=.*\b(?:more|less|extra|bigger|smaller|larger|higher|lower|double|twice|half)\b)(?=.*\b(?:money|budget|spend|spent|pay|cash|dollars)\b)/;
/** What is proposed to be tried: a fifth more. */
const A_FIFTH_MORE = 1.2;

/** Money without its figure. */
function moneyWords(budget_usd_per_ft2: number | 'unknown' | undefined): string {
  if (typeof budget_usd_per_ft2 !== 'number') {
    return 'You gave no budget, so money rules no wall out. "what if the budget were $30 a foot" tries one.';
  }
  const more = Math.ceil(budget_usd_per_ft2 * A_FIFTH_MORE);
  return `How much would it be? Your budget is ${dollarsAFoot(budget_usd_per_ft2)} a square foot; "what if the budget were $${more} a foot" tries a fifth more.`;
}

function tryOut(state: ConversationState, words: string): Step {
  const { answers } = state;
  if (answers.place === undefined) {
    return { state: remark(state, note('I can try that once I know the place.')), effects: [] };
  }
  const trial = readTrial(words, answers, state.budgetTotal_usd);
  if (!trial && MORE_OR_LESS.test(words)) {
    return { state: remark(state, note(moneyWords(answers.budget_usd_per_ft2))), effects: [] };
  }
  if (!trial) {
    const hint = warning(
      `Not understood: what should be tried in "${words}"? One thing at a time, such as "what if the budget were $24 a foot".`,
    );
    return { state: remark(state, hint), effects: [] };
  }
  return {
    state: { ...state, stage: 'trying', returnTo: returning(state) },
    effects: [{ kind: 'try', trial, now: toScenario(answers), then: toScenario(trial.answers) }],
  };
}
