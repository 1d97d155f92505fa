import { beforeAll, describe, expect, it } from 'vitest';
import { Refusal } from '../../src/base/refusal.ts';
import { workOutMatrix } from '../../src/firm/matrix.ts';
import { cellsOf, planMatrix } from '../../src/firm/matrix-plan.ts';
import { type Matrix, matrixSchema } from '../../src/firm/matrix-schema.ts';
import { answer, SMALL, TYPICAL } from '../advice/pipeline.ts';

const { place: _, framing: __, name: ___, cavity_insulation_r: ____, ...base } = TYPICAL;
const BASE = { ...base, schema: undefined };
const FIRM = {
  schema: 'cladwright-firm/1',
  name: 'Invented builders',
  base: JSON.parse(JSON.stringify(BASE)),
  places: ['2A', { state: 'MN', county: 'Stearns' }],
  framings: [
    { material: 'wood', depth_in: 5.5, spacing_in: 16, cavity_insulation_r: 20 },
    { material: 'steel', depth_in: 6, spacing_in: 16, cavity_insulation_r: 19 },
  ],
  finishes: ['cement-stucco', 'any'],
  budgets_usd_per_ft2: [2, 40],
};
const PLAN = planMatrix(FIRM, 'firm.json');

describe('a matrix', () => {
  let matrix: Matrix;
  const told: [number, number][] = [];
  beforeAll(async () => {
    matrix = await workOutMatrix(PLAN, SMALL, {
      toolVersion: '0.0.0-test',
      onProgress: (done, total) => told.push([done, total]),
    });
  }, 120_000);

  it('is of its own schema and tells of every cell', () => {
    expect(matrixSchema.parse(matrix)).toEqual(matrix);
    expect(matrix.cells).toHaveLength(16);
    expect(told).toEqual(Array.from({ length: 16 }, (_, i) => [i + 1, 16]));
    expect(new Set(matrix.cells.map(({ climate_zone }) => climate_zone))).toEqual(new Set(['2A', '6A']));
  });

  it('has in each cell what advise answers for that cell alone', async () => {
    const idOf = new Map(matrix.assemblies.map(({ letter, id }) => [letter, id]));
    for (const [i, planned] of cellsOf(PLAN).entries()) {
      const cell = matrix.cells[i];
      const { ranked, considered, excluded } = await answer(planned.scenario, SMALL, 1);
      const first = ranked[0];
      const { candidates, admitted } = considered;
      expect(cell?.considered).toEqual({ candidates, admitted });
      if (!first) {
        expect(cell).toMatchObject({ first_choice: null, standard: null, covering: 0 });
        // What admits it is looked for in an answer of its own only; the rules' own remedies stand in both.
        const [nearest] = excluded;
        expect(cell?.closest).toMatchObject({ id: nearest?.id, title: nearest?.title });
        expect(cell?.closest?.because).toEqual(
          nearest?.because.map((one) => ({
            ...one,
            remedy: one.remedy.replace(/^Tested.* In general: /, ''),
          })),
        );
        continue;
      }
      expect(idOf.get(cell?.first_choice?.assembly ?? '')).toBe(first.id);
      expect(cell?.first_choice).toMatchObject({
        score: first.score,
        u_factor: first.u_factor,
        max_u_factor: first.energy.max_u_factor,
        max_u_factor_provenance: first.energy.max_u_factor_provenance,
        u_margin_percent: first.energy.u_margin_percent,
        energy_route: first.energy.route,
        cost_usd_per_ft2: first.installed_cost_usd_per_ft2,
        added_thickness_in: first.added_thickness_in,
        weight_psf: first.weight_psf,
      });
    }
  }, 120_000);

  it('leaves empty exactly the cells whose budget nothing keeps to', () => {
    const isEmpty = matrix.cells.map(({ standard }) => standard === null);
    expect(isEmpty).toEqual(matrix.cells.map(({ budget_usd_per_ft2 }) => budget_usd_per_ft2 === 2));
    expect(matrix.standard).toMatchObject({ cells_covered: 8, cells_where_nothing_passes: 8 });
    for (const cell of matrix.cells.filter(({ budget_usd_per_ft2 }) => budget_usd_per_ft2 === 2))
      expect(cell.closest?.because.map(({ rule }) => rule)).toContain('budget.over-at-the-low-end');
  });

  it('serves a cell by an assembly of the standard that scores little less than the best', () => {
    for (const { standard, first_choice } of matrix.cells) {
      if (!standard || !first_choice) continue;
      expect(matrix.standard.assemblies).toContain(standard.assembly);
      expect(standard.score).toBeGreaterThanOrEqual(first_choice.score - matrix.within_score - 1e-4);
    }
  });

  it('has a standard that is proved smallest, and a curve that ends with it', () => {
    const { standard } = matrix;
    expect(standard.is_proved).toBe(true);
    expect(standard.curve).toHaveLength(standard.assemblies.length);
    expect(standard.curve.at(-1)?.cells_covered).toBe(standard.cells_covered);
  });

  it('needs as many assemblies as there are different first choices when nothing less will do', async () => {
    const strict = await workOutMatrix(
      planMatrix({ ...FIRM, within_score: 0, budgets_usd_per_ft2: [40] }, ''),
      SMALL,
      {
        toolVersion: '0.0.0-test',
      },
    );
    const firsts = new Set(strict.cells.map(({ first_choice }) => first_choice?.assembly));
    expect(strict.standard.assemblies).toHaveLength(firsts.size);
    for (const { first_choice, standard } of strict.cells) expect(standard).toEqual(first_choice);
  }, 60_000);

  it('names the studs and the finish of the base, or those assumed, where no axis names them', async () => {
    const base = { schema: 'cladwright-scenario/1', place: { climate_zone: '4C' }, cavity_insulation_r: 13 };
    const framing = { material: 'wood', depth_in: 3.5 };
    const { cells, axes } = await workOutMatrix(planMatrix({ ...base, framing }, ''), SMALL, {
      toolVersion: '',
    });
    expect(cells).toMatchObject([
      { framing: 'wood 3.5 at 16', finish: 'stucco-look', budget_usd_per_ft2: null },
    ]);
    expect(axes).toEqual({
      places: ['4C'],
      framings: ['wood 3.5 at 16'],
      finishes: ['stucco-look'],
      budgets_usd_per_ft2: [null],
    });
  }, 60_000);

  it('counts for how many cells something was assumed', () => {
    expect(matrix.assumptions.filter(({ field }) => field === 'budget_usd_per_ft2')).toEqual([]);
    const gravity = matrix.assumptions.find(({ field }) => field === 'framing.species_gravity');
    expect(gravity?.cells).toBe(8);
  });

  it('refuses every cell that can’t be worked on by name, before it judges any', async () => {
    const framings = [{ material: 'steel', depth_in: 5, spacing_in: 16 }, FIRM.framings[0]];
    const places = ['2A', { state: 'CO', county: 'Bolder' }];
    const working = workOutMatrix(
      planMatrix({ ...FIRM, framings, places, budgets_usd_per_ft2: [40] }, ''),
      SMALL,
      {
        toolVersion: '',
        onProgress: () => expect.unreachable(),
      },
    );
    await expect(working).rejects.toThrow(Refusal);
    await expect(working).rejects.toThrow(/cell 2A \/ steel 5 at 16 \/ cement-stucco \/ \$40: .*depth/);
    await expect(working).rejects.toThrow(/cell Bolder, CO .*place\.county: "Bolder".*Boulder/);
  });
});
