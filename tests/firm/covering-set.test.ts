import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type CellScores, coveringSet } from '../../src/firm/covering-set.ts';
import { bruteForce } from './brute-force.ts';

const IDS = ['brick', 'clap', 'lath', 'panel', 'stucco', 'veneer'];

/** A few cells with scores for some of six assemblies; now and then none. */
const matrices: fc.Arbitrary<CellScores[]> = fc.array(
  fc
    .dictionary(
      fc.constantFrom(...IDS),
      fc.integer({ min: 1, max: 9 }).map((n) => n / 10),
      { maxKeys: 5 },
    )
    .map((scores) => new Map(Object.entries(scores))),
  { maxLength: 8 },
);

const asProblem = (cells: readonly CellScores[]) => ({
  rows: cells.length,
  columns: IDS.map((id) => cells.flatMap((scores, row) => (scores.has(id) ? [row] : []))),
});

describe('coveringSet', () => {
  // By hand: "wide" serves three cells; the fourth takes "only". Equal in number, "fine" would leave the second out.
  it('serves each cell with the better of a smallest set', () => {
    const found = coveringSet([
      new Map([
        ['wide', 0.7],
        ['fine', 0.9],
      ]),
      new Map([['wide', 0.7]]),
      new Map([
        ['wide', 0.8],
        ['only', 0.9],
      ]),
      new Map([['only', 0.6]]),
      new Map(),
    ]);
    expect(found).toMatchObject({
      assemblies: ['only', 'wide'],
      serves: ['wide', 'wide', 'only', 'only', null],
      cells_covered: 4,
      lower_bound: 2,
      is_proved: true,
    });
    expect(found.curve.map(({ cells_covered }) => cells_covered)).toEqual([3, 4]);
  });

  it('takes the better of two assemblies that cover the same cells', () => {
    const cells = [0.6, 0.7].map(
      (score) =>
        new Map([
          ['cheap', score],
          ['good', score + 0.1],
        ]),
    );
    expect(coveringSet(cells).assemblies).toEqual(['good']);
  });

  it('has the size of the smallest of all sets, covers every cell that can be, and says so', () => {
    fc.assert(
      fc.property(matrices, (cells) => {
        const found = coveringSet(cells);
        expect(found.is_proved).toBe(true);
        expect(found.assemblies).toHaveLength(bruteForce(asProblem(cells)).smallest);
        expect(found.lower_bound).toBe(found.assemblies.length);
        for (const [i, scores] of cells.entries()) {
          const served = found.serves[i] ?? null;
          expect(served === null).toBe(scores.size === 0);
          if (served === null) continue;
          const best = Math.max(...found.assemblies.map((id) => scores.get(id) ?? 0));
          expect(scores.get(served)).toBe(best);
        }
      }),
      { numRuns: 300 },
    );
  });

  it('has a curve that never falls, is the best for each number, and ends with all that can be covered', () => {
    fc.assert(
      fc.property(matrices, (cells) => {
        const { curve, cells_covered, assemblies } = coveringSet(cells);
        const { mostRowsOf } = bruteForce(asProblem(cells));
        expect(curve).toHaveLength(assemblies.length);
        for (const [i, point] of curve.entries()) {
          expect(point.cells_covered).toBe(Math.max(...mostRowsOf.slice(0, i + 2)));
          expect(point).toMatchObject({ is_proved: true, most_possible: point.cells_covered });
        }
        expect(curve.at(-1)?.cells_covered ?? 0).toBe(cells_covered);
      }),
      { numRuns: 300 },
    );
  });

  it('never gets by with fewer when a cell is added, and doesn’t hang on the order of cells', () => {
    fc.assert(
      fc.property(matrices, (cells) => {
        const whole = coveringSet(cells);
        expect(coveringSet(cells.slice(1)).assemblies.length).toBeLessThanOrEqual(whole.assemblies.length);
        const turned = coveringSet([...cells].reverse());
        expect(turned.assemblies).toHaveLength(whole.assemblies.length);
      }),
    );
  });

  it('owns up when the search is cut short', () => {
    fc.assert(
      fc.property(matrices, (cells) => {
        const found = coveringSet(cells, 0);
        const { smallest } = bruteForce(asProblem(cells));
        expect(found.lower_bound).toBeLessThanOrEqual(smallest);
        expect(found.is_proved).toBe(found.assemblies.length === found.lower_bound);
        for (const [i, scores] of cells.entries()) expect(found.serves[i] === null).toBe(scores.size === 0);
      }),
    );
  });
});
