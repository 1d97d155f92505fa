import { describe, expect, it } from 'vitest';
import { type CoverProblem, smallestCover } from '../../src/firm/set-cover.ts';

type Point = readonly number[];

function points(coordinates: number, base: number): Point[] {
  if (coordinates === 0) return [[]];
  return points(coordinates - 1, base).flatMap((rest) =>
    Array.from({ length: base }, (_, value) => [...rest, value]),
  );
}

/** Every line of three points is a row, every point a column that covers the lines through it. */
function linesByPoints(all: readonly Point[], base: number): CoverProblem {
  const lines: number[][] = [];
  for (const [i, a] of all.entries()) {
    for (const [j, b] of all.entries()) {
      const third = a.map((value, k) => (2 * base - value - (b[k] ?? 0)) % base).join();
      const k = all.findIndex((point) => point.join() === third);
      if (i < j && j < k) lines.push([i, j, k]);
    }
  }
  return {
    rows: lines.length,
    columns: all.map((_, point) => lines.flatMap((line, row) => (line.includes(point) ? [row] : []))),
  };
}

// The triple systems on the lines of the affine planes and spaces of order 3, known as hard for branch and bound.
// Source: Fulkerson, Nemhauser and Trotter, Mathematical Programming Study 2 (1974); the values stand in the README of
// the public instances "stn9" and "stn27" as well.
describe('Steiner triple covering problems', () => {
  it.each([
    ['stn9', 2, 12, 5],
    ['stn27', 3, 117, 18],
  ])('%s', (_, coordinates, triples, fewest) => {
    const problem = linesByPoints(points(coordinates, 3), 3);
    expect(problem.rows).toBe(triples);
    const { chosen, is_proved } = smallestCover(problem);
    expect({ fewest: chosen.length, is_proved }).toEqual({ fewest, is_proved: true });
  });
});

// Bose and Burton, Journal of Combinatorial Theory 1 (1966), from memory: the fewest points that meet every line of a
// projective space are those of a hyperplane; over two elements 3 of the 7 in the plane, 7 of the 15 in space.
describe('points that meet every line of a projective space over two elements, from memory', () => {
  it.each([
    [3, 7, 3],
    [4, 35, 7],
  ])('%i coordinates', (coordinates, lines, fewest) => {
    const all = points(coordinates, 2).filter((point) => point.some((value) => value !== 0));
    const problem = linesByPoints(all, 2);
    expect(problem.rows).toBe(lines);
    expect(smallestCover(problem)).toMatchObject({ is_proved: true, lower_bound: fewest });
  });
});
