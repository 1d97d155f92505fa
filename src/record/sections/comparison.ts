import type { Advice, RankedAssembly } from '../../advice/advice-schema.ts';
import { speaksFor } from '../../advice/speaks-for.ts';
import { isWindowless } from '../../advice/windowless.ts';
import { inches } from '../../base/inches.ts';
import { listed } from '../../base/listed.ts';
import { dollars, fixed, keyWords, sentence } from '../figure-text.ts';
import { type ListItem, listOf, present, type RecordBlock, tableOf } from '../record-document.ts';
import { insulationText } from './decision.ts';

/** The other walls that pass, side by side, and in a line each what it gives up. */
export function alternatives({ ranked, comparison }: Advice): RecordBlock[] {
  const [first, ...others] = ranked;
  if (!first || others.length === 0) return [];
  return present([
    tableOf(
      'The walls that pass, side by side',
      [
        { title: 'Rank', isNumber: true },
        { title: 'Wall' },
        { title: 'Score', isNumber: true },
        { title: 'U-factor', isNumber: true },
        { title: 'Added, in.', isNumber: true },
        { title: 'Weight, psf', isNumber: true },
        { title: 'Cost per ft²', isNumber: true },
      ],
      ranked.map((wall) => [
        `${wall.rank}`,
        wall.title,
        fixed(wall.score, 2),
        fixed(wall.u_factor, 3),
        inches(wall.added_thickness_in),
        fixed(wall.weight_psf, 1),
        dollars(wall.installed_cost_usd_per_ft2.likely),
      ]),
    ),
    listOf(
      others.flatMap((wall) => [
        {
          lead: `Choice ${wall.rank} gives up`,
          text: wall.gives_up.length > 0 ? wall.gives_up.join(' ') : 'nothing that was found',
        },
        ...(wall.tie && wall.tie_with_first ? [{ lead: 'A tie', text: wall.tie.words }] : []),
      ]),
    ),
    ...syntheticFinish(comparison),
  ]);
}

/** One by one what sets each alternative apart from the first choice. */
export function alternativesInFull({ ranked }: Advice): RecordBlock[] {
  const [first, ...others] = ranked;
  if (!first || others.length === 0) return [];
  return [
    {
      kind: 'paragraph',
      text: 'Below stands what sets each alternative apart. What was said for and against the first choice and is left out there holds for it too, with its own figures; all of them are in the .json file of this record.',
    },
    ...others.flatMap((wall) => alternative(wall, first)),
  ];
}

/** The synthetic finish that the wall is to do without: shown, not ranked. */
function syntheticFinish(comparison: Advice['comparison']): RecordBlock[] {
  if (!comparison) return [];
  return present([
    { kind: 'subheading', text: `For comparison, not ranked: ${comparison.title}` },
    listOf([
      {
        lead: 'Figures',
        text: `${dollars(comparison.installed_cost_usd_per_ft2.likely)} per ft², U ${fixed(comparison.u_factor, 3)}, ${fixed(comparison.weight_psf, 1)} psf, score ${fixed(comparison.score, 2)}`,
      },
      ...comparison.gains.map((text) => ({ lead: 'For it', text })),
      ...comparison.gives_up.map((text) => ({ lead: 'Gives up', text })),
    ]),
  ]);
}

function alternative(wall: RankedAssembly, first: RankedAssembly): RecordBlock[] {
  const items: ListItem[] = [
    {
      lead: 'Wall',
      text: [insulationText(wall), wall.attachment, ...(isWindowless(wall) ? [] : [wall.buck.label])].join(
        '; ',
      ),
    },
    { lead: 'Why not first', text: whyNotFirst(wall, first) },
    ...(wall.tie ? [{ lead: wall.tie_with_first ? 'A tie' : 'No tie', text: wall.tie.words }] : []),
    ...(wall.folded && wall.folded.count > 1 ? [{ lead: 'Other ways', text: wall.folded.words }] : []),
    ...ofItsOwn(speaksFor(wall), speaksFor(first)).map((reason) => ({ lead: 'For it', ...reason })),
    ...ofItsOwn(wall.cautions, first.cautions).map((caution) => ({ lead: 'Caution', ...caution })),
  ];
  return present([{ kind: 'subheading', text: `Choice ${wall.rank}: ${wall.title}` }, listOf(items)]);
}

type Saying = { readonly text: string; readonly rule?: string | undefined };

/** What is said of this wall and not, by the same rule or in the same words, of the first choice too. */
function ofItsOwn(sayings: readonly Saying[], firsts: readonly Saying[]): ListItem[] {
  const known = new Set(firsts.flatMap(({ text, rule }) => (rule === undefined ? [text] : [text, rule])));
  return sayings
    .filter(({ text, rule }) => !known.has(text) && (rule === undefined || !known.has(rule)))
    .map(({ text, rule }) => (rule === undefined ? { text } : { text, aside: rule }));
}

/** Differences smaller than this would only show as equal figures. */
const NOTICEABLE = 0.01;

function whyNotFirst(wall: RankedAssembly, first: RankedAssembly): string {
  const gaps = Object.entries(wall.scores)
    .flatMap(([key, mine]) => {
      const theirs = first.scores[key];
      return theirs === undefined ? [] : [{ key, mine, theirs, gap: mine - theirs }];
    })
    .filter(({ gap }) => Math.abs(gap) >= NOTICEABLE)
    .sort((a, b) => a.gap - b.gap);
  const words = ({ key, mine, theirs }: (typeof gaps)[number]) =>
    `${keyWords(key)} (${fixed(mine, 2)} against ${fixed(theirs, 2)})`;
  const behind = gaps.filter(({ gap }) => gap < 0).map(words);
  const ahead = gaps
    .filter(({ gap }) => gap > 0)
    .reverse()
    .map(words);
  const parts = [
    `it scores ${fixed(wall.score, 2)}, the first choice ${fixed(first.score, 2)}`,
    behind.length > 0 ? `it is behind in ${listed(behind)}` : null,
    ahead.length > 0 ? `it is ahead in ${listed(ahead)}` : null,
  ].filter((part) => part !== null);
  return sentence(parts.join('; '));
}

type Excluded = Advice['excluded'][number];

/** What was ruled out, by which rule, and what would let it in. Walls out for the same reasons stand together. */
export function excluded({ excluded: walls }: Advice): RecordBlock[] {
  const groups = new Map<string, Excluded[]>();
  for (const wall of walls) {
    const reasons = JSON.stringify(wall.because);
    groups.set(reasons, [...(groups.get(reasons) ?? []), wall]);
  }
  return [...groups.values()].flatMap(excludedGroup);
}

function excludedGroup(walls: readonly Excluded[]): RecordBlock[] {
  const [wall] = walls;
  if (!wall) return [];
  const isAlone = walls.length === 1;
  return present([
    { kind: 'subheading', text: isAlone ? wall.title : `${walls.length} for the same reason` },
    listOf([
      ...(isAlone ? [] : walls.map(({ title }) => ({ lead: 'Left out', text: title }))),
      ...wall.because.flatMap((why) => [
        { lead: 'Because', text: why.text, aside: `${why.rule}; ${why.citation}` },
        ...(why.remedy === '' ? [] : [{ lead: 'What would admit it', text: why.remedy }]),
      ]),
    ]),
  ]);
}

export function changes({ would_change_the_answer }: Advice): RecordBlock[] {
  return present([
    listOf(would_change_the_answer.map((change) => ({ lead: `If ${change.if}`, text: change.then }))),
  ]);
}
