import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { smallestCover } from '../../src/firm/set-cover.ts';
import { bruteForce } from './brute-force.ts';
import { problems } from './problems.ts';

describe('smallestCover', () => {
  // By hand: the two outer columns do it; the widest one, which a greedy choice would begin with, is of no use.
  it('does not fall for the widest column', () => {
    const found = smallestCover({
      rows: 6,
      columns: [
        [0, 1, 2],
        [1, 2, 3, 4],
        [3, 4, 5],
      ],
    });
    expect(found).toMatchObject({ chosen: [0, 2], uncoverable: [], lower_bound: 2, is_proved: true });
  });

  it('names rows that nothing covers and covers the rest', () => {
    const found = smallestCover({ rows: 4, columns: [[1], [1, 3]] });
    expect(found).toMatchObject({ chosen: [1], uncoverable: [0, 2], lower_bound: 1, is_proved: true });
  });

  it('needs nothing where there is nothing to cover', () => {
    const nothing = { chosen: [], lower_bound: 0, is_proved: true };
    expect(smallestCover({ rows: 0, columns: [] })).toMatchObject({ ...nothing, uncoverable: [] });
    expect(smallestCover({ rows: 2, columns: [[], []] })).toMatchObject({ ...nothing, uncoverable: [0, 1] });
  });

  it('is as small as the smallest of all choices, and covers', () => {
    fc.assert(
      fc.property(problems, (problem) => {
        const { chosen, uncoverable, is_proved } = smallestCover(problem);
        expect(chosen).toHaveLength(bruteForce(problem).smallest);
        expect(is_proved).toBe(true);
        const covered = new Set(chosen.flatMap((j) => problem.columns[j] ?? []));
        expect([...covered, ...uncoverable].sort((a, b) => a - b)).toEqual(
          Array.from({ length: problem.rows }, (_, row) => row),
        );
      }),
      { numRuns: 300 },
    );
  });

  it('claims no more than is true when the search is cut short', () => {
    fc.assert(
      fc.property(problems, fc.integer({ min: 0, max: 6 }), (problem, mostNodes) => {
        const { chosen, lower_bound, is_proved } = smallestCover(problem, mostNodes);
        const { smallest } = bruteForce(problem);
        expect(lower_bound).toBeLessThanOrEqual(smallest);
        expect(chosen.length).toBeGreaterThanOrEqual(smallest);
        expect(is_proved).toBe(lower_bound === chosen.length);
      }),
      { numRuns: 300 },
    );
  });

  it('never shrinks when a row is added', () => {
    fc.assert(
      fc.property(problems, fc.array(fc.nat({ max: 10 }), { maxLength: 5 }), (problem, takers) => {
        const columns = problem.columns.map((rows, j) =>
          takers.includes(j) ? [...rows, problem.rows] : rows,
        );
        const more = smallestCover({ rows: problem.rows + 1, columns });
        expect(more.chosen.length).toBeGreaterThanOrEqual(smallestCover(problem).chosen.length);
      }),
    );
  });

  it('is not changed in size by the order of columns', () => {
    fc.assert(
      fc.property(problems, (problem) => {
        const turned = { ...problem, columns: [...problem.columns].reverse() };
        expect(smallestCover(turned).chosen).toHaveLength(smallestCover(problem).chosen.length);
      }),
    );
  });
});
