import { parse } from 'csv-parse/sync';
import stringWidth from 'string-width';
import { describe, expect, it } from 'vitest';
import { marginText, shareText } from '../../src/firm/cell-words.ts';
import { matrixCsv } from '../../src/firm/matrix-csv.ts';
import { matrixDocument, standardSentences } from '../../src/firm/matrix-document.ts';
import { type Matrix, matrixSchema } from '../../src/firm/matrix-schema.ts';
import { documentHtml } from '../../src/record/document-html.ts';
import { documentMarkdown } from '../../src/record/record-markdown.ts';
import { documentText } from '../../src/record/record-text.ts';
import { HOSTILE_NAMES } from '../record/hostile-names.ts';
import { checkHtml } from '../record/html-check.ts';
import { cell, sampleMatrix, wall } from './sample-matrix.ts';

const html = (matrix: Matrix) => documentHtml(matrixDocument(matrix), 'Wall standard');
const text = (matrix: Matrix, width: number) => documentText(matrixDocument(matrix), width);

describe('the sentences about the standard', () => {
  it('say how much it covers, where nothing passes, and that it is proved smallest', () => {
    expect(standardSentences(sampleMatrix())).toEqual({
      reach: 'One assembly covers 2 of 3 cells (67 %). In 1 cell nothing passes.',
      proof: 'Proved smallest: one is the least there can be.',
    });
  });

  it('say how far from the smallest a set can be that was not proved', () => {
    const standard = {
      ...sampleMatrix().standard,
      assemblies: ['A', 'B', 'C', 'D'],
      cells_covered: 3,
      cells_where_nothing_passes: 0,
      lower_bound: 3,
      is_proved: false,
    };
    const { reach, proof } = standardSentences(sampleMatrix({ standard }));
    expect(reach).toBe('Four assemblies cover 3 of 3 cells (100 %).');
    expect(proof).toContain('No set of fewer than 3 can do it, so this is at most 1 more than the smallest.');
    expect(
      standardSentences(sampleMatrix({ standard: { ...standard, lower_bound: 4, is_proved: true } })).proof,
    ).toBe('Proved smallest: no three cover as much.');
  });

  it('have nothing to choose from where nothing passes anywhere', () => {
    const standard = {
      assemblies: [],
      cells_covered: 0,
      cells_where_nothing_passes: 3,
      lower_bound: 0,
      is_proved: true,
      curve: [],
    };
    expect(standardSentences(sampleMatrix({ standard }))).toEqual({
      reach: 'No assemblies cover 0 of 3 cells (0 %). In 3 cells nothing passes.',
      proof: 'There is nothing to choose from.',
    });
  });
});

describe('an assembly of the standard', () => {
  it('is told with what to know before it is taken', () => {
    const [first, ...others] = sampleMatrix().assemblies;
    const remark = 'only where nothing else passes';
    const assemblies = first ? [{ ...first, remark }, ...others] : [];
    expect(text(sampleMatrix({ assemblies }), 80)).toContain(`A: ${first?.title} (${remark})`);
    expect(text(sampleMatrix(), 80)).not.toContain(remark);
  });
});

describe('shares and margins in words', () => {
  it.each([
    [0, 9, '0 %'],
    [9, 9, '100 %'],
    [999, 1000, '99 %'],
    [1, 1000, '1 %'],
    [13, 14, '93 %'],
    [0, 0, '0 %'],
  ])('%i of %i is %s', (part, whole, words) => expect(shareText(part, whole)).toBe(words));

  it.each([
    [{ u_margin_percent: 12.4 }, '+12 %'],
    [{ u_margin_percent: 0.2 }, '+0 %'],
    [{ u_margin_percent: -3, energy_route: 'r-value' as const }, 'by R-value'],
    [{ u_margin_percent: -3, energy_route: 'unknown' as const }, '-3 %'],
    [{ u_margin_percent: null, energy_route: 'unknown' as const }, 'no limit'],
    [{ u_margin_percent: null, energy_route: 'r-value' as const }, 'by R-value'],
  ])('%j is %s', (change, words) => expect(marginText(wall('A', change))).toBe(words));
});

describe('the report of a matrix', () => {
  it('is drawn from a matrix of its own schema', () => {
    expect(matrixSchema.parse(sampleMatrix())).toEqual(sampleMatrix());
  });

  it('says what every form must say: the standard, each cell, what is empty and why, what is open, what was assumed', () => {
    for (const form of [
      text(sampleMatrix(), 80),
      documentMarkdown(matrixDocument(sampleMatrix())),
      html(sampleMatrix()),
    ]) {
      for (const words of [
        'Invented builders',
        'One assembly covers 2 of 3 cells (67 %)',
        'A: Stucco over board A',
        'B: Stucco over board B',
        'Closest: Stucco over 8 in. board.',
        'Too leaky. A thicker board.',
        'A corner against mould (1 cell)',
        'sheathing',
        'A station stands in.',
        'licensed professional',
      ])
        expect(form.replace(/\s+/g, ' ')).toContain(words);
    }
  });

  it('keeps to 80 columns in tables, and to a narrow terminal cell by cell', () => {
    for (const width of [100, 80, 60, 40]) {
      const lines = text(sampleMatrix(), width).split('\n');
      expect(Math.max(...lines.map((line) => stringWidth(line)))).toBeLessThanOrEqual(width);
    }
    const lines = text(sampleMatrix(), 80);
    expect(lines).toMatch(/^ {2}2A +wood 5\.5 at 16 +B, \+17 %, \$19 +A, \+17 %, \$19 +-0\.04$/m);
    expect(lines).toMatch(/^ {2}7 +wood 5\.5 at 16 +none +none$/m);
  });

  it('is one page that stands alone, whatever the names try', () => {
    const hostile = HOSTILE_NAMES.map((name) =>
      sampleMatrix({
        name,
        cells: [cell('2A', { place: name, framing: name })],
        axes: { places: [name], framings: [name], finishes: ['any'], budgets_usd_per_ft2: [null] },
        assumptions: [{ field: name, value: name, why: name, cells: 1 }],
        notes: [name],
        rules: { packs: [{ name, version: name, sha256: '', house: true }] },
      }),
    );
    const shape = (matrix: Matrix) => checkHtml(html(matrix)).map(({ tag }) => tag);
    const [first, ...others] = hostile.map(shape);
    for (const tags of others) expect(tags).toEqual(first);
    for (const matrix of hostile) {
      expect(html(matrix)).not.toMatch(/<(?:script|img|svg|link|iframe)\b|\b(?:src|href)="(?!#)/);
      expect(text(matrix, 80).replaceAll('\n', '')).not.toMatch(/\p{Cc}/u);
    }
  });
});

describe('the CSV of a matrix', () => {
  it('has a line for each cell, read back by another reader', () => {
    const rows: Record<string, string>[] = parse(matrixCsv(sampleMatrix()), { columns: true });
    expect(rows).toHaveLength(3);
    expect(rows[0]).toMatchObject({
      place: '2A',
      budget_usd_per_ft2: '',
      first_letter: 'B',
      first_id: 'stucco/board/B',
      standard_letter: 'A',
      standard_u_margin_percent: '16.7',
      standard_cost_usd_per_ft2: '19.4',
      closest: '',
    });
    expect(rows[2]).toMatchObject({
      place: '7',
      admitted: '0',
      standard_id: '',
      closest: 'Stucco over 8 in. board',
      closest_rules: 'energy.wall',
    });
  });
});
