import { describe, expect, it } from 'vitest';
import { figureChanges } from '../../../src/record/check/figure-changes.ts';

describe('figureChanges', () => {
  it('names the place of each number that differs, and nothing else', () => {
    const then = {
      a: 1,
      b: { c: 2, word: 'x' },
      list: [
        { id: 'one', n: 1 },
        { id: 'two', n: 2 },
      ],
    };
    const now = {
      a: 1,
      b: { c: 3, word: 'y' },
      list: [
        { id: 'two', n: 5 },
        { id: 'one', n: 1 },
      ],
    };
    expect(figureChanges(then, now)).toEqual([
      { path: 'b.c', then: 2, now: 3 },
      { path: 'list[two].n', then: 2, now: 5 },
    ]);
  });

  it('tells a figure that became unknown, and passes over what one side has not got', () => {
    expect(figureChanges({ a: 1, b: null, gone: 4 }, { a: null, b: 2, later: 3 })).toEqual([
      { path: 'a', then: 1, now: null },
      { path: 'b', then: null, now: 2 },
    ]);
  });

  it('does not take the last binary digit for a change, but one in a million for one', () => {
    expect(figureChanges({ a: 0.1 + 0.2 }, { a: 0.3 })).toEqual([]);
    expect(figureChanges({ a: 1 }, { a: 1.000001 })).toHaveLength(1);
  });
});
