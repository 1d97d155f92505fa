import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { coverageCurve } from '../../src/firm/best-coverage.ts';
import { bruteForce } from './brute-force.ts';
import { problems } from './problems.ts';

describe('coverageCurve', () => {
  // By hand: one column reaches 4 of 6 rows, two reach all; the best pair leaves the best single one out.
  it('finds the best of each number anew', () => {
    const columns = [
      [0, 1, 2],
      [1, 2, 3, 4],
      [3, 4, 5],
    ];
    expect(coverageCurve({ rows: 6, columns }, 2)).toMatchObject([
      { columns: 1, rows_covered: 4, is_proved: true, chosen: [1] },
      { columns: 2, rows_covered: 6, is_proved: true, chosen: [0, 2] },
    ]);
  });

  it('reaches as far as the best of all choices of so many columns', () => {
    fc.assert(
      fc.property(problems, (problem) => {
        const { mostRowsOf } = bruteForce(problem);
        const curve = coverageCurve(problem, problem.columns.length);
        expect(curve.map((point) => point.rows_covered)).toEqual(
          // A choice of fewer counts too: a column that adds nothing need not be taken.
          mostRowsOf.slice(1).map((_, i) => Math.max(...mostRowsOf.slice(0, i + 2))),
        );
        for (const point of curve) {
          expect(point.is_proved).toBe(true);
          expect(new Set(point.chosen.flatMap((j) => problem.columns[j] ?? [])).size).toBe(
            point.rows_covered,
          );
          expect(point.chosen.length).toBeLessThanOrEqual(point.columns);
        }
      }),
      { numRuns: 300 },
    );
  });

  it('never falls, and bounds the truth from both sides when it is cut short', () => {
    fc.assert(
      fc.property(problems, fc.integer({ min: 0, max: 4 }), (problem, mostNodes) => {
        const { mostRowsOf } = bruteForce(problem);
        let before = 0;
        for (const point of coverageCurve(problem, problem.columns.length, mostNodes)) {
          const truth = Math.max(...mostRowsOf.slice(0, point.columns + 1));
          expect(point.rows_covered).toBeGreaterThanOrEqual(before);
          expect(point.rows_covered).toBeLessThanOrEqual(truth);
          expect(point.upper_bound).toBeGreaterThanOrEqual(truth);
          before = point.rows_covered;
        }
      }),
      { numRuns: 300 },
    );
  });
});
