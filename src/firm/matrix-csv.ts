import { type CsvValue, csvText } from './csv.ts';
import type { Matrix, MatrixCell } from './matrix-schema.ts';

const HEAD = [
  'place',
  'climate_zone',
  'framing',
  'finish',
  'budget_usd_per_ft2',
  'code_edition',
  'candidates',
  'admitted',
  'covering',
  ...wallHead('first'),
  ...wallHead('standard'),
  'closest',
  'closest_rules',
] as const;

/** One line for each cell. The `…_id` names the assembly; the letters are those of the other forms of the report. */
export function matrixCsv(matrix: Matrix): string {
  const { cells, code_edition, assemblies } = matrix;
  const idOf = new Map(assemblies.map(({ letter, id }) => [letter, id]));
  return csvText(
    HEAD,
    cells.map((cell) => [
      cell.place,
      cell.climate_zone,
      cell.framing,
      cell.finish,
      cell.budget_usd_per_ft2,
      code_edition,
      cell.considered.candidates,
      cell.considered.admitted,
      cell.covering,
      ...wallFields(cell.first_choice, idOf),
      ...wallFields(cell.standard, idOf),
      cell.closest?.title ?? null,
      cell.closest?.because.map(({ rule }) => rule).join(' ') ?? null,
    ]),
  );
}

function wallHead(name: string): string[] {
  return [
    'letter',
    'id',
    'score',
    'u_factor',
    'u_margin_percent',
    'energy_route',
    'cost_usd_per_ft2',
    'added_thickness_in',
    'weight_psf',
  ].map((key) => `${name}_${key}`);
}

function wallFields(wall: MatrixCell['first_choice'], idOf: ReadonlyMap<string, string>): CsvValue[] {
  if (!wall) return Array.from({ length: wallHead('').length }, () => null);
  return [
    wall.assembly,
    idOf.get(wall.assembly) ?? null,
    wall.score,
    wall.u_factor,
    wall.u_margin_percent,
    wall.energy_route,
    wall.cost_usd_per_ft2.likely,
    wall.added_thickness_in,
    wall.weight_psf,
  ];
}
