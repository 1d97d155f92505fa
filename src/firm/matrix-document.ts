import { sentence } from '../record/figure-text.ts';
import type {
  FactRow,
  RecordBlock,
  RecordDocument,
  RecordSection,
  TableBlock,
} from '../record/record-document.ts';
import { listOf, present, tableOf } from '../record/record-document.ts';
import { assembliesText, cellsText, countWord, shareText } from './cell-words.ts';
import type { Matrix, MatrixAssembly } from './matrix-schema.ts';
import { cellBlocks, emptyBlocks, gridBlocks } from './matrix-sheets.ts';
import { packsText, REPORT_NOTICE } from './report-words.ts';

/** The matrix as a document: standard, reach, grid, cell by cell, what is open, how it was counted. */
export function matrixDocument(matrix: Matrix): RecordDocument {
  const sections: RecordSection[] = [
    { id: 'standard', heading: 'The smallest standard', blocks: standardBlocks(matrix) },
    { id: 'reach', heading: 'How far fewer assemblies reach', blocks: present([reachTable(matrix)]) },
    { id: 'matrix', heading: 'The matrix', blocks: gridBlocks(matrix) },
    { id: 'cells', heading: 'Cell by cell', blocks: cellBlocks(matrix) },
    { id: 'nothing-passes', heading: 'Where nothing passes', blocks: emptyBlocks(matrix) },
    { id: 'others', heading: 'Other assemblies named', blocks: otherBlocks(matrix) },
    { id: 'open', heading: 'What stays open', blocks: openBlocks(matrix) },
    { id: 'assumptions', heading: 'Assumed', blocks: assumptionBlocks(matrix) },
    {
      id: 'sites',
      heading: 'About the places',
      blocks: present([listOf(matrix.notes.map((text) => ({ text })))]),
    },
    { id: 'counting', heading: 'How it was counted', blocks: countingBlocks(matrix) },
  ];
  return {
    title: matrix.name,
    head: headOf(matrix),
    notice: REPORT_NOTICE,
    sections: sections.filter(({ blocks }) => blocks.length > 0),
    appendix: [],
    appendixNote: '',
  };
}

function headOf({ axes, cells, code_edition, rules, standard }: Matrix): FactRow[] {
  const sizes: [number, string][] = [
    [axes.places.length, 'places'],
    [axes.framings.length, 'framings'],
    [axes.finishes.length, 'finishes'],
    [axes.budgets_usd_per_ft2.length, 'budgets'],
  ];
  const varied = sizes.flatMap(([count, name]) => (count > 1 ? [`${count} ${name}`] : []));
  return [
    { label: 'Code edition', value: code_edition },
    {
      label: 'Cells',
      value: varied.length > 0 ? `${cells.length}: ${varied.join(' x ')}` : `${cells.length}`,
    },
    {
      label: 'Covered',
      value: `${standard.cells_covered} of ${cells.length} by ${standard.assemblies.length}`,
    },
    { label: 'Rules', value: packsText(rules.packs) },
  ];
}

/** "Four assemblies cover 22 of 24 cells (92 %)." and how sure it is that three don't. */
export function standardSentences({ cells, standard }: Matrix): { reach: string; proof: string } {
  const { assemblies, cells_covered, cells_where_nothing_passes, lower_bound, is_proved } = standard;
  const count = assemblies.length;
  const verb = count === 1 ? 'covers' : 'cover';
  const empty =
    cells_where_nothing_passes === 0 ? '' : ` In ${cellsText(cells_where_nothing_passes)} nothing passes.`;
  const reach = `${assembliesText(count)} ${verb} ${cells_covered} of ${cellsText(cells.length)} (${shareText(cells_covered, cells.length)}).${empty}`;
  if (count === 0) return { reach, proof: 'There is nothing to choose from.' };
  const proof = is_proved
    ? `Proved smallest: ${count === 1 ? 'one is the least there can be.' : `no ${countWord(count - 1)} cover as much.`}`
    : `Not proved smallest: the search was cut short. No set of fewer than ${lower_bound} can do it, so this is at most ${count - lower_bound} more than the smallest.`;
  return { reach, proof };
}

function standardBlocks(matrix: Matrix): RecordBlock[] {
  const { reach, proof } = standardSentences(matrix);
  return present([
    { kind: 'paragraph', text: reach, isStrong: true },
    { kind: 'paragraph', text: proof },
    assemblyTable(
      'The assemblies of the standard',
      matrix.assemblies.filter(({ is_standard }) => is_standard),
      matrix,
    ),
  ]);
}

function assemblyTable(
  caption: string,
  assemblies: readonly MatrixAssembly[],
  { cells }: Matrix,
): TableBlock | null {
  return tableOf(
    caption,
    [
      { title: 'Assembly' },
      { title: 'Barrier' },
      { title: 'Interior retarder' },
      { title: 'Window buck' },
      { title: 'Cells served', isNumber: true },
      { title: 'First choice in', isNumber: true },
    ],
    assemblies.map((one) => [
      `${one.letter}: ${one.title}${one.remark === null ? '' : ` (${one.remark})`}`,
      one.water_resistive_barrier,
      one.interior_vapour_retarder,
      one.buck,
      `${cells.filter(({ standard }) => standard?.assembly === one.letter).length}`,
      `${cells.filter(({ first_choice }) => first_choice?.assembly === one.letter).length}`,
    ]),
  );
}

function reachTable({ standard, cells }: Matrix): TableBlock | null {
  return tableOf(
    'The most cells that so many assemblies can cover',
    [
      { title: 'Assemblies', isNumber: true },
      { title: 'Cells', isNumber: true },
      { title: 'Share', isNumber: true },
      { title: 'Which' },
      { title: 'Proof' },
    ],
    standard.curve.map((point, i) => [
      `${i + 1}`,
      `${point.cells_covered}`,
      shareText(point.cells_covered, cells.length),
      point.assemblies.join(' '),
      point.is_proved ? 'proved most' : `at most ${point.most_possible}`,
    ]),
  );
}

function otherBlocks(matrix: Matrix): RecordBlock[] {
  const others = matrix.assemblies.filter(({ is_standard }) => !is_standard);
  return present([
    assemblyTable('First choices and steps on the way that are not of the standard', others, matrix),
  ]);
}

function openBlocks({ cells }: Matrix): RecordBlock[] {
  const open = new Map<string, number>();
  for (const { standard } of cells) {
    for (const title of standard?.open_questions ?? []) open.set(title, (open.get(title) ?? 0) + 1);
  }
  if (open.size === 0) return [];
  return present([
    {
      kind: 'paragraph',
      text: 'These rules can’t be decided for the standard assembly, because something they need is not known. It passes, but not for certain.',
    },
    listOf([...open].map(([title, count]) => ({ text: `${title} (${cellsText(count)})` }))),
  ]);
}

function assumptionBlocks({ assumptions, cells }: Matrix): RecordBlock[] {
  return present([
    listOf(
      assumptions.map(({ field, value, why, cells: count }) => ({
        lead: field,
        text: `${sentence(`${value ?? 'left open'}`)} ${why}`,
        ...(count === cells.length ? {} : { aside: cellsText(count) }),
      })),
    ),
  ]);
}

function countingBlocks({ within_score }: Matrix): RecordBlock[] {
  return present([
    listOf([
      {
        lead: 'Assembly',
        text: 'a cladding over a build of boards (material, number and thickness) with its water-resistive barrier, interior retarder and window buck; framing, cavity insulation and sheathing are the cell’s own',
      },
      {
        lead: 'Covers a cell',
        text: `no rule forbids it there, and it scores at most ${within_score} less than the best wall of that cell; the synthetic finish counts only where nothing else passes`,
      },
      {
        lead: 'Smallest set',
        text: 'a set cover, exact by branch and bound unless it says otherwise; of sets equally small one that scores better was sought, which is not said to be the best of them',
      },
      {
        lead: 'First choice',
        text: 'what an answer for that cell alone ranks first; other readings of the assumptions were not tried here',
      },
      {
        lead: 'Margin',
        text: 'how far the wall’s U-factor lies below the highest allowed, fasteners included',
      },
    ]),
  ]);
}
