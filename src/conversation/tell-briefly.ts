import type { Advice, Caution, RankedAssembly } from '../advice/advice-schema.ts';
import { fieldWords, valueWords } from '../brief/field-words.ts';
import type { Block } from './blocks.ts';
import { blocksToText } from './blocks.ts';
import { termsIn } from './glossary.ts';
import { note, titledList } from './notes.ts';
import { sectionBlocks } from './pictures.ts';
import type { Reader } from './reader.ts';
import {
  cautionLine,
  comparisonBlocks,
  considered,
  excludedBlocks,
  fallbackBlocks,
  isSameCaution,
  keyFigures,
  nothingPasses,
  reasonLines,
  recap,
  siteAside,
  wholeFigures,
} from './tell-advice.ts';
import { buildAndWhy, inSentences, plainCaution, shortly } from './tell-homeowner.ts';
import { houseBlocks } from './tell-house.ts';
import { findOutBlocks, kindLines, plainKindLines, robustnessBlocks } from './tell-ranking.ts';

/** Reasons that are told at first. */
const MOST_REASONS = 5;
const MOST_MOVES = 3;

/**
 * The answer as it is told in a talk: the choice, what speaks for it and against it, what may hurt somebody, how firm it
 * is, and what else there is. The rest is there for the asking: figures, drawings, every reason and caution, and the
 * whole answer at once.
 */
export function briefBlocks(advice: Advice, reader: Reader): Block[] {
  const told = reader === 'homeowner' ? inPlainWords(advice) : inFigures(advice);
  return [
    ...told,
    ...(advice.ranked.length > 0 ? [note(reader === 'homeowner' ? `${OWNERS}${MORE}` : MORE)] : []),
  ];
}

const OWNERS =
  '"is it sane", "is it affordable" and "what should I ask a contractor" are answered from these figures. ';

const MORE =
  '"whole answer" tells all of it; or ask for one thing: "cautions", "drawing", "numbers", "compare 1 and 2", "why not mineral wool", "what if the budget were 24", "how firm is that".';

function inFigures(advice: Advice): Block[] {
  const [first, ...others] = advice.ranked;
  return [
    { kind: 'title', text: 'The answer', aside: siteAside(advice) },
    { kind: 'paragraph', text: considered(advice) },
    ...houseBlocks(advice),
    ...(first ? choiceInFigures(first) : [...nothingPasses(advice), ...excludedBlocks(advice)]),
    ...(first && others.length > 0 ? [{ kind: 'title' as const, text: 'Alternatives' }] : []),
    ...others.flatMap(besides),
    ...robustnessBlocks(advice, 'professional', MOST_MOVES),
    ...findOutBlocks(advice),
    ...(first ? leftOut(advice) : []),
    ...comparisonBlocks(advice),
    ...fallbackBlocks(advice),
    ...assumed(advice),
    ...cautionsToHeed('Cautions', cautionsOf(advice, first), cautionWithoutRemedy),
    ...recap(advice),
  ];
}

function choiceInFigures(wall: RankedAssembly): Block[] {
  const reasons = reasonLines(wall);
  const more = reasons.length - MOST_REASONS;
  return [
    { kind: 'title', text: 'First choice' },
    { kind: 'heading', text: wall.title },
    { kind: 'figures', rows: wholeFigures(wall) },
    ...titledList(more > 0 ? `Why (the first ${MOST_REASONS} of ${reasons.length} reasons)` : 'Why', [
      ...reasons.slice(0, MOST_REASONS),
    ]),
    ...sectionBlocks(wall),
    ...titledList('What it gives up', wall.gives_up),
  ];
}

function besides(wall: RankedAssembly): Block[] {
  return [
    { kind: 'heading', text: `${wall.rank}. ${wall.title}` },
    { kind: 'figures', rows: keyFigures(wall) },
    ...titledList('Against the first choice', kindLines(wall)),
    ...titledList('What it gives up', wall.gives_up),
  ];
}

function inPlainWords(advice: Advice): Block[] {
  const [first, ...others] = advice.ranked;
  const plain: Block[] = [
    { kind: 'title', text: 'The answer, in plain words', aside: siteAside(advice) },
    { kind: 'paragraph', text: considered(advice) },
    ...houseBlocks(advice),
    ...cautionsToHeed('Before anything else', cautionsOf(advice, first), plainCaution),
    ...(first ? choiceInPlainWords(first) : [...nothingPasses(advice), ...excludedBlocks(advice)]),
    ...(first && others.length > 0 ? [{ kind: 'title' as const, text: 'If that is not it' }] : []),
    ...others.flatMap((wall): Block[] => [
      { kind: 'heading', text: `${wall.rank}. ${wall.title}` },
      { kind: 'paragraph', text: inSentences(wall) },
      ...titledList('Beside the first', [...plainKindLines(wall).slice(0, 1), ...wall.gives_up]),
    ]),
    ...robustnessBlocks(advice, 'homeowner', MOST_MOVES),
    ...findOutBlocks(advice),
    ...(first ? leftOut(advice) : []),
    ...comparisonBlocks(advice),
    ...fallbackBlocks(advice),
    ...assumed(advice),
  ];
  return [...plain, ...(first ? [...wordsToAskAbout(choiceInPlainWords(first)), ...shortly(first)] : [])];
}

function choiceInPlainWords(wall: RankedAssembly): Block[] {
  return [
    ...buildAndWhy(wall, MOST_REASONS),
    ...sectionBlocks(wall),
    ...titledList('Who builds it', [wall.crew.needed]),
    ...titledList('What you give up', wall.gives_up),
  ];
}

/** The words of the trade that the choice is told with, by name. */
function wordsToAskAbout(blocks: readonly Block[]): Block[] {
  const terms = termsIn(blocksToText(blocks, 200)).map(({ term }) => term);
  if (terms.length === 0) return [];
  return [
    note(`Words of the trade in it: ${terms.join(', ')}. "what is …" explains one, "glossary" lists all.`),
  ];
}

/** Where somebody may be hurt or the wall may fail. Good practice, windows, money and the like can be asked for. */
const TO_HEED: readonly Caution['kind'][] = [
  'health',
  'fire',
  'structural',
  'professional',
  'site-work',
  'moisture',
  'data',
];

function cautionsToHeed(
  title: string,
  all: readonly Caution[],
  lineOf: (caution: Caution) => string,
): Block[] {
  const heeded = all.filter(({ kind }) => TO_HEED.includes(kind));
  if (heeded.length === 0) return [];
  const others = all.length - heeded.length;
  return [
    { kind: 'title', text: title },
    { kind: 'list', items: heeded.map(lineOf), role: 'warning' },
    ...(others > 0
      ? [note(`And ${others} more on windows, good practice and the like: "cautions" tells them all.`)]
      : []),
  ];
}

/** A professional knows what to do; "cautions" says it too. */
function cautionWithoutRemedy({ kind, text }: Caution): string {
  return cautionLine({ kind, text });
}

/** The general cautions and those of the first choice, each once. */
function cautionsOf({ cautions }: Advice, first: RankedAssembly | undefined): Caution[] {
  const own = first?.cautions ?? [];
  return [...cautions, ...own.filter((one) => !cautions.some((other) => isSameCaution(one, other)))];
}

/** Every caution of the first choice and of the answer as a whole. */
export function allCautionBlocks(advice: Advice, reader: Reader): Block[] {
  const [first] = advice.ranked;
  const lineOf = reader === 'homeowner' ? plainCaution : cautionLine;
  return [
    { kind: 'title', text: 'Cautions', aside: first ? 'of the first choice' : 'of what comes closest' },
    { kind: 'list', items: cautionsOf(advice, first).map(lineOf), role: 'warning' },
  ];
}

/** What was left out, those with the same reason together. */
function leftOut({ excluded }: Advice): Block[] {
  const byReason = new Map<string, string[]>();
  for (const { title, because } of excluded) {
    const isBuck = title.startsWith('Window buck');
    // A buck whose closest wall is out for its cladding is not out for anything of its own.
    const reason = because.find(({ rule }) => !isBuck || rule.startsWith('openings.'))?.text;
    if (reason === undefined) continue;
    byReason.set(reason, [...(byReason.get(reason) ?? []), title.replace(/ \(closest: .*\)$/, '')]);
  }
  return section(
    'What was left out, and why',
    [...byReason].map(([reason, titles]) => `${titles.join('; ')}: ${reason}`),
  );
}

/** What was assumed, a line each; the reasons can be asked for. */
function assumed({ assumptions }: Advice): Block[] {
  return section(
    'What I assumed',
    assumptions.map(({ field, value, could_change_answer }) => {
      const weighs = could_change_answer ? ' (another value could change the answer)' : '';
      return `${fieldWords(field)}: ${valueWords(field, value)}${weighs}`;
    }),
  );
}

function section(title: string, items: readonly string[]): Block[] {
  if (items.length === 0) return [];
  return [
    { kind: 'title', text: title },
    { kind: 'list', items },
  ];
}
