import { capital } from '../base/first-letter.ts';
import { dollars } from '../record/figure-text.ts';
import { listOf, present, type RecordBlock, type TableBlock, tableOf } from '../record/record-document.ts';
import { budgetText, finishText, marginText } from './cell-words.ts';
import type { Matrix, MatrixCell } from './matrix-schema.ts';

/** The cells of one finish and one budget. */
type Sheet = { readonly name: string; readonly cells: readonly MatrixCell[] };

function sheetsOf({ axes, cells }: Matrix): Sheet[] {
  const { finishes, budgets_usd_per_ft2: budgets } = axes;
  return finishes.flatMap((finish) =>
    budgets.map((budget) => ({
      name: capital(`${finishText(finish)}, ${budgetText(budget)}`),
      cells: cells.filter((cell) => cell.finish === finish && cell.budget_usd_per_ft2 === budget),
    })),
  );
}

/** The matrix at a glance: places down, framings across. */
export function gridBlocks(matrix: Matrix): RecordBlock[] {
  const { places, framings } = matrix.axes;
  return sheetBlocks(
    matrix,
    'The assembly of the standard that serves each cell, and its likely cost per square foot.',
    ({ name, cells }) =>
      tableOf(
        `Standard by place and framing: ${name}`,
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
}

/** First choice and standard of every cell. */
export function cellBlocks(matrix: Matrix): RecordBlock[] {
  return sheetBlocks(
    matrix,
    'First choice and standard, each with its margin below the highest U-factor and its likely cost per square foot; then what the standard scores against the first choice.',
    ({ name, cells }) =>
      tableOf(
        `First choice and standard: ${name}`,
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
  );
}

function sheetBlocks(
  matrix: Matrix,
  what: string,
  tableFor: (sheet: Sheet) => TableBlock | null,
): RecordBlock[] {
  return [
    { kind: 'paragraph', text: what },
    ...sheetsOf(matrix).flatMap((sheet) =>
      present([{ kind: 'subheading', text: sheet.name }, tableFor(sheet)]),
    ),
  ];
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

function cellName({ place, framing, finish, budget_usd_per_ft2 }: MatrixCell): string {
  return `${place}, ${framing}, ${finishText(finish)}, ${budgetText(budget_usd_per_ft2)}`;
}
