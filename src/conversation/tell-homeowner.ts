import type { Advice, Caution, RankedAssembly } from '../advice/advice-schema.ts';
import { speaksFor } from '../advice/speaks-for.ts';
import { capital } from '../base/first-letter.ts';
import { type Block, blocksToText } from './blocks.ts';
import { termsIn } from './glossary.ts';
import { note, titledList } from './notes.ts';
import { sectionBlocks } from './pictures.ts';
import {
  assumptionBlocks,
  changeBlocks,
  cited,
  comparisonBlocks,
  considered,
  excludedBlocks,
  fallbackBlocks,
  isSameCaution,
  layerLines,
  nothingPasses,
  siteAside,
  wholeFigures,
} from './tell-advice.ts';
import { costBlocks } from './tell-cost.ts';
import { openingBlocks } from './tell-openings.ts';
import { physicsBlocks } from './tell-physics.ts';
import { findOutBlocks, plainKindLines, robustnessBlocks, scoreBlocks } from './tell-ranking.ts';
import { scheduleBlocks } from './tell-schedule.ts';

/**
 * The answer told to somebody who is not in the trade: what to beware of first, then the choice in plain words, the
 * words of the trade explained, and last the figures and sources for whoever builds it. Nothing that a professional is
 * told is left out; it only stands in another place.
 */
export function homeownerBlocks(advice: Advice): Block[] {
  const [first, ...others] = advice.ranked;
  const plain: Block[] = [
    { kind: 'title', text: 'The answer, in plain words', aside: siteAside(advice) },
    { kind: 'paragraph', text: considered(advice) },
    ...cautionsFirst(advice, first),
    ...(first ? choice(first, advice) : nothingPasses(advice)),
    ...(first && others.length > 0 ? alternatives(others, first) : []),
    ...robustnessBlocks(advice, 'homeowner'),
    ...findOutBlocks(advice),
    ...comparisonBlocks(advice),
    ...fallbackBlocks(advice),
    ...excludedBlocks(advice),
    ...assumptionBlocks(advice),
    ...changeBlocks(advice),
  ];
  return [
    ...plain,
    ...wordsUsed(plain),
    ...(first ? forTheBuilder(first, advice) : []),
    ...(first ? shortly(first) : []),
  ];
}

/** Everything to beware of, before the choice is named. */
function cautionsFirst(advice: Advice, first: RankedAssembly | undefined): Block[] {
  const own = first?.cautions.filter(
    (caution) => !advice.cautions.some((one) => isSameCaution(one, caution)),
  );
  const all = [...advice.cautions, ...(own ?? [])];
  if (all.length === 0) return [];
  return [
    { kind: 'title', text: 'Before anything else' },
    { kind: 'list', items: all.map(plainCaution), role: 'warning' },
  ];
}

/** What a caution is about, in everyday words. */
export const KIND_WORDS: Partial<Record<Caution['kind'], string>> = {
  professional: 'ask a professional',
  structural: 'what holds it up',
  fire: 'fire',
  moisture: 'damp',
  health: 'health',
  energy: 'warmth',
  openings: 'windows',
  ground: 'near the ground',
  buildability: 'the work',
  cost: 'money',
  practice: 'good practice',
  'site-work': 'on the site',
  data: 'what is not known',
};

export function plainCaution({ kind, text, remedy }: Caution): string {
  return `Caution (${KIND_WORDS[kind] ?? kind}): ${text}${remedy ? ` What to do: ${remedy}` : ''}`;
}

/** What would be built and why, by the first so many reasons. */
export function buildAndWhy(wall: RankedAssembly, most?: number): Block[] {
  return [
    { kind: 'title', text: 'What I would build' },
    { kind: 'heading', text: wall.title },
    { kind: 'paragraph', text: inSentences(wall) },
    ...aboutTheBudget(wall),
    ...titledList(
      'Why this one',
      speaksFor(wall)
        .slice(0, most)
        .map(({ text }) => text),
    ),
  ];
}

/** Cautions on a wall that the budget may not cover. */
const OVER_BUDGET: readonly string[] = ['budget.likely-over', 'budget.high-over'];

/** What a wall does to the budget, once more where the wall is named: it is what most people ask first. */
function aboutTheBudget({ cautions }: RankedAssembly): Block[] {
  return cautions
    .filter(({ rule }) => rule !== undefined && OVER_BUDGET.includes(rule))
    .map(({ text, remedy }) => ({
      kind: 'paragraph',
      text: `Your budget: ${text}${remedy ? ` ${remedy}` : ''}`,
    }));
}

function choice(wall: RankedAssembly, advice: Advice): Block[] {
  return [
    ...buildAndWhy(wall),
    ...titledList('Other ways to build the same wall', plainKindLines(wall)),
    ...sectionBlocks(wall),
    ...costBlocks(wall, advice),
    ...titledList('Who builds it, and in what order', [wall.crew.needed, ...wall.crew.steps]),
    ...titledList('What you give up', wall.gives_up),
  ];
}

/** The wall in a few sentences, figures in words that mean something without the trade. */
export function inSentences(wall: RankedAssembly): string {
  const { low, likely, high } = wall.installed_cost_usd_per_ft2;
  const grows = `The wall grows ${wall.added_thickness_in.toFixed(1)} in. outward`;
  const weighs = `what hangs on it weighs about ${wall.weight_psf.toFixed(0)} lb for each square foot`;
  return `${capital(wall.insulation.material)}, ${wall.insulation.thickness_in} in. thick, goes over the whole outside of the wall; over that comes the cladding: ${wall.cladding}. Expect about $${likely.toFixed(0)} a square foot built in, between $${low.toFixed(0)} and $${high.toFixed(0)}. The finished wall holds back heat like R-${wall.r_effective.toFixed(0)}. ${grows}; ${weighs}.`;
}

function alternatives(walls: readonly RankedAssembly[], first: RankedAssembly): Block[] {
  return [
    { kind: 'title', text: 'If that is not it' },
    ...walls.flatMap((wall): Block[] => {
      const own = wall.cautions.filter(
        (caution) => !first.cautions.some((one) => isSameCaution(one, caution)),
      );
      return [
        { kind: 'heading', text: `${wall.rank}. ${wall.title}` },
        { kind: 'paragraph', text: inSentences(wall) },
        ...titledList('Beside the first', plainKindLines(wall)),
        ...titledList(
          'Why it is in the running',
          speaksFor(wall)
            .slice(0, 4)
            .map(({ text }) => text),
        ),
        ...titledList('What you give up', wall.gives_up),
        ...(own.length > 0
          ? [
              { kind: 'heading' as const, text: 'Beware of, here more than with the first' },
              { kind: 'list' as const, items: own.map(plainCaution), role: 'warning' as const },
            ]
          : []),
      ];
    }),
  ];
}

/** The words of the trade that were just used, explained. */
function wordsUsed(blocks: readonly Block[]): Block[] {
  const terms = termsIn(blocksToText(blocks, 200));
  if (terms.length === 0) return [];
  return [
    { kind: 'title', text: 'Words used above' },
    { kind: 'figures', rows: terms.map(({ term, plain }) => ({ label: term, value: plain })) },
  ];
}

/** What a builder or a reviewer asks for. */
function forTheBuilder(wall: RankedAssembly, advice: Advice): Block[] {
  return [
    { kind: 'title', text: 'For whoever builds it' },
    ...titledList('About the site', advice.site.notes),
    { kind: 'heading', text: 'The first choice in figures' },
    { kind: 'figures', rows: wholeFigures(wall) },
    ...titledList('Layers, from inside to outside', layerLines(wall)),
    ...scoreBlocks(wall, advice),
    ...physicsBlocks(wall),
    ...scheduleBlocks(wall),
    ...titledList('Windows, in this order', wall.buck.flashing_sequence),
    ...openingBlocks(wall),
    ...titledList('Where the reasons come from', sources(advice)),
  ];
}

/** Each rule that gave a reason or a caution, with its source. */
function sources({ ranked }: Advice): string[] {
  const lines = ranked.flatMap((wall) =>
    [...wall.reasons, ...wall.cautions].flatMap(({ rule }) => (rule ? [cited(wall, rule)] : [])),
  );
  return [...new Set(lines)];
}

/** The end of a long answer, which is what stays on the screen. */
export function shortly(wall: RankedAssembly): Block[] {
  return [
    { kind: 'title', text: 'In one line' },
    note(`${wall.title}, about $${wall.installed_cost_usd_per_ft2.likely.toFixed(0)} a square foot.`),
  ];
}
