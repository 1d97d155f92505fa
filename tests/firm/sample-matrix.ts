import type { Matrix, MatrixCell } from '../../src/firm/matrix-schema.ts';

type Wall = NonNullable<MatrixCell['first_choice']>;

/** Figures of a wall in a cell; invented. */
export function wall(assembly: string, change: Partial<Wall> = {}): Wall {
  return {
    assembly,
    score: 0.8,
    u_factor: 0.05,
    max_u_factor: 0.06,
    max_u_factor_provenance: 'verified',
    u_margin_percent: 16.7,
    energy_route: 'both',
    cost_usd_per_ft2: { low: 15, likely: 19.4, high: 26 },
    added_thickness_in: 3.4,
    weight_psf: 5.6,
    open_questions: [],
    ...change,
  };
}

export function cell(place: string, change: Partial<MatrixCell> = {}): MatrixCell {
  return {
    place,
    climate_zone: place,
    framing: 'wood 5.5 at 16',
    finish: 'any',
    budget_usd_per_ft2: null,
    considered: { candidates: 100, admitted: 10 },
    first_choice: wall('B', { score: 0.84 }),
    standard: wall('A'),
    covering: 4,
    closest: null,
    ...change,
  };
}

/** A matrix of three cells, one of them empty, as the program would write it. */
export function sampleMatrix(change: Partial<Matrix> = {}): Matrix {
  return {
    schema: 'cladwright-matrix/1',
    tool_version: '0.0.0-test',
    name: 'Invented builders',
    code_edition: '2021',
    axes: {
      places: ['2A', '5B', '7'],
      framings: ['wood 5.5 at 16'],
      finishes: ['any'],
      budgets_usd_per_ft2: [null],
    },
    within_score: 0.05,
    cells: [
      cell('2A'),
      cell('5B', { standard: wall('A', { open_questions: ['A corner against mould'] }) }),
      cell('7', {
        first_choice: null,
        standard: null,
        covering: 0,
        considered: { candidates: 100, admitted: 0 },
        closest: {
          id: 'x',
          title: 'Stucco over 8 in. board',
          because: [
            { rule: 'energy.wall', citation: 'a code', text: 'Too leaky.', remedy: 'A thicker board.' },
          ],
        },
      }),
    ],
    assemblies: ['A', 'B'].map((letter) => ({
      letter,
      is_standard: letter === 'A',
      id: `stucco/board/${letter}`,
      title: `Stucco over board ${letter}`,
      water_resistive_barrier: 'wrap',
      interior_vapour_retarder: 'paint',
      remark: null,
      buck: 'plywood box',
    })),
    standard: {
      assemblies: ['A'],
      cells_covered: 2,
      cells_where_nothing_passes: 1,
      lower_bound: 1,
      is_proved: true,
      curve: [{ assemblies: ['A'], cells_covered: 2, most_possible: 2, is_proved: true }],
    },
    assumptions: [{ field: 'sheathing', value: 'osb', why: 'Not said.', cells: 3 }],
    notes: ['A station stands in.'],
    rules: { packs: [{ name: 'own', version: '1.2.0', sha256: 'ab', house: true }] },
    ...change,
  };
}
