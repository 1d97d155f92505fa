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
    { kind: 'figures', rows: [...figureRows(a, b), ...scoreRows(a, b)] },
    ...titledList(`What wall ${a.rank} gives up`, a.gives_up),
    ...titledList(`What wall ${b.rank} gives up`, b.gives_up),
    ...cautionsOnlyOf(a, b),
    ...cautionsOnlyOf(b, a),
  ];
}

function figureRows(a: RankedAssembly, b: RankedAssembly): FigureRow[] {
  const row = (label: string, of: (wall: RankedAssembly) => string): FigureRow => ({
    label,
    value: `${of(a)}  |  ${of(b)}`,
  });
  return [
    row('', ({ rank }) => `wall ${rank}`),
    row('Likely cost', ({ installed_cost_usd_per_ft2: cost }) => `$${cost.likely.toFixed(0)} a square foot`),
    row('U-factor', ({ u_factor }) => u_factor.toFixed(3)),
    row('Effective R', ({ r_effective }) => r_effective.toFixed(1)),
    row('Added thickness', ({ added_thickness_in }) => `${added_thickness_in} in.`),
    row('Weight', ({ weight_psf }) => `${weight_psf.toFixed(1)} psf`),
    row('Score', ({ score }) => score.toFixed(2)),
  ];
}

function scoreRows(a: RankedAssembly, b: RankedAssembly): FigureRow[] {
  return Object.entries(a.scores).map(([part, value]) => ({
    label: `  ${criterionWords(part)}`,
    value: `${value.toFixed(2)}  |  ${b.scores[part]?.toFixed(2) ?? 'not scored'}`,
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
