import { dollars } from '../record/figure-text.ts';
import { listOf, present, type RecordBlock, type TableBlock, tableOf } from '../record/record-document.ts';
import { budgetText, finishText, marginText } from './cell-words.ts';
import type { Matrix, MatrixCell } from './matrix-schema.ts';

type Sheet = { readonly name: string; readonly cells: readonly MatrixCell[] };

/** One sheet for each finish and budget; their name says only what differs between sheets. */
function sheetsOf({ axes, cells }: Matrix): Sheet[] {
  const { finishes, budgets_usd_per_ft2: budgets } = axes;
  return finishes.flatMap((finish) =>
    budgets.map((budget) => ({
      name: `${finishText(finish)}, ${budgetText(budget)}`,
      cells: cells.filter((cell) => cell.finish === finish && cell.budget_usd_per_ft2 === budget),
    })),
  );
}

/** The matrix at a glance: places down, framings across, one sheet for each finish and budget. */
export function gridBlocks(matrix: Matrix): RecordBlock[] {
  const { places, framings } = matrix.axes;
  const grids = sheetsOf(matrix).map(({ name, cells }) =>
    tableOf(
      `Standard assembly and its likely cost: ${name}`,
      [{ title: 'Place' }, ...framings.map((title) => ({ title }))],
      places.map((place) => [
        place,
        ...framings.map((framing) => {
          const wall = cells.find((cell) => cell.place === place && cell.framing === framing)?.standard;
          return wall
            ? `${wall.assembly} ${dollars(Math.round(wall.cost_usd_per_ft2.likely))}`
            : 'nothing passes';
        }),
      ]),
    ),
  );
  return withCaptions(grids);
}

/** First choice and standard of every cell. */
export function cellBlocks(matrix: Matrix): RecordBlock[] {
  return withCaptions(
    sheetsOf(matrix).map(({ name, cells }) =>
      tableOf(
        `First choice and standard, each with its margin below the highest U-factor and its likely cost per square foot, and what the standard scores against the first choice: ${name}`,
        [
          { title: 'Place' },
          { title: 'Framing' },
          { title: 'First choice' },
          { title: 'Standard' },
          { title: 'Score', isNumber: true },
        ],
        cells.map((cell) => [
          cell.place,
          cell.framing,
          wallText(cell.first_choice),
          wallText(cell.standard),
          lostScore(cell),
        ]),
      ),
    ),
  );
}

/** "B, +12 %, $19" */
function wallText(wall: MatrixCell['first_choice']): string {
  if (!wall) return 'none';
  return `${wall.assembly}, ${marginText(wall)}, ${dollars(Math.round(wall.cost_usd_per_ft2.likely))}`;
}

/** What the standard gives up in score against the cell's own first choice. */
function lostScore({ first_choice, standard }: MatrixCell): string {
  if (!first_choice || !standard) return '';
  return (standard.score - first_choice.score).toFixed(2).replace('-0.00', '0.00');
}

/** The text form draws no captions, so each table has its name above it. */
function withCaptions(tables: readonly (TableBlock | null)[]): RecordBlock[] {
  return tables.flatMap((table) =>
    table ? [{ kind: 'subheading' as const, text: table.caption }, table] : [],
  );
}

function cellName({ place, framing, finish, budget_usd_per_ft2 }: MatrixCell): string {
  return `${place}, ${framing}, ${finishText(finish)}, ${budgetText(budget_usd_per_ft2)}`;
}

/** Cells where nothing passes: what comes closest and the rules against it. */
export function emptyBlocks({ cells }: Matrix): RecordBlock[] {
  return cells.flatMap((cell) => {
    const { closest } = cell;
    if (!closest) return [];
    return present([
      { kind: 'subheading', text: cellName(cell) },
      { kind: 'paragraph', text: `Closest: ${closest.title}.` },
      listOf(closest.because.map(({ rule, text, remedy }) => ({ text: `${text} ${remedy}`, aside: rule }))),
    ]);
  });
}
