import type { Advice, Caution, RankedAssembly } from '../advice/advice-schema.ts';
import { criterionWords } from '../advice/criterion-words.ts';
import type { Block, FigureRow } from './blocks.ts';
import { titledList } from './notes.ts';
import { wallOfRank } from './pictures.ts';

/** Two ranked walls side by side: what each is, their figures, and what only one of them has against it. */
export function compareBlocks(advice: Advice, [first, second]: readonly [number, number]): Block[] {
  const a = wallOfRank(advice, first);
  const b = wallOfRank(advice, second);
  if ('kind' in a) return [a];
  if ('kind' in b) return [b];
  return [
    { kind: 'heading', text: `Wall ${a.rank} beside wall ${b.rank}` },
    {
      kind: 'figures',
      rows: [
        { label: `Wall ${a.rank}`, value: a.title },
        { label: `Wall ${b.rank}`, value: b.title },
      ],
    },
    { kind: 'figures', rows: inColumns([...figurePairs(a, b), ...scorePairs(a, b)]) },
    ...titledList(`What wall ${a.rank} gives up`, a.gives_up),
    ...titledList(`What wall ${b.rank} gives up`, b.gives_up),
    ...cautionsOnlyOf(a, b),
    ...cautionsOnlyOf(b, a),
  ];
}

/** A label with what each of the two has. */
type Pair = readonly [label: string, ofFirst: string, ofSecond: string];

function figurePairs(a: RankedAssembly, b: RankedAssembly): Pair[] {
  const pair = (label: string, of: (wall: RankedAssembly) => string): Pair => [label, of(a), of(b)];
  return [
    pair('', ({ rank }) => `wall ${rank}`),
    pair('Cost, a square foot', ({ installed_cost_usd_per_ft2: cost }) => `$${cost.likely.toFixed(0)}`),
    pair('U-factor', ({ u_factor }) => u_factor.toFixed(3)),
    pair('Effective R', ({ r_effective }) => r_effective.toFixed(1)),
    pair('Added thickness, in.', ({ added_thickness_in }) => String(added_thickness_in)),
    pair('Weight, psf', ({ weight_psf }) => weight_psf.toFixed(1)),
    pair('Score', ({ score }) => score.toFixed(2)),
  ];
}

function scorePairs(a: RankedAssembly, b: RankedAssembly): Pair[] {
  return Object.entries(a.scores).map(([part, value]) => [
    `  ${criterionWords(part)}`,
    value.toFixed(2),
    b.scores[part]?.toFixed(2) ?? 'not scored',
  ]);
}

/** Both columns one below the other; short enough to stay so in a narrow window. */
function inColumns(pairs: readonly Pair[]): FigureRow[] {
  const width = Math.max(...pairs.map(([, ofFirst]) => ofFirst.length));
  return pairs.map(([label, ofFirst, ofSecond]) => ({
    label,
    value: `${ofFirst.padEnd(width)}  |  ${ofSecond}`,
  }));
}

function cautionsOnlyOf(wall: RankedAssembly, other: RankedAssembly): Block[] {
  const isShared = (caution: Caution) =>
    other.cautions.some((its) => (caution.rule ? its.rule === caution.rule : its.text === caution.text));
  const own = wall.cautions.filter((caution) => !isShared(caution));
  if (own.length === 0) return [];
  return [
    { kind: 'heading', text: `Cautions of wall ${wall.rank} alone` },
    { kind: 'list', items: own.map(({ kind, text }) => `Caution (${kind}): ${text}`), role: 'warning' },
  ];
}
