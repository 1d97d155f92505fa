import { describe, expect, it } from 'vitest';
import { progressOn } from '../../src/cli/progress.ts';

/** Tells of one more of `total` every `step_ms`, and returns what was written. */
function written(total: number, step_ms: number, isTTY: boolean): string[] {
  const lines: string[] = [];
  let now_ms = 0;
  const stream = { isTTY, write: (text: unknown) => lines.push(String(text)) > 0 };
  const progress = progressOn('cells', stream, () => now_ms);
  for (let done = 1; done <= total; done++) {
    now_ms += step_ms;
    progress.tell(done, total);
  }
  progress.end();
  return lines;
}

describe('progress', () => {
  it('says nothing of work that is done within two seconds', () => {
    expect(written(10, 199, true)).toEqual([]);
    expect(written(10, 199, false)).toEqual([]);
  });

  it('writes one line over itself on a terminal and takes it away at the end', () => {
    const lines = written(5, 1000, true);
    expect(lines).toEqual([
      '\r2 of 5 cells, about 3 s left\u001b[K',
      '\r3 of 5 cells, about 2 s left\u001b[K',
      '\r4 of 5 cells, about 1 s left\u001b[K',
      '\r\u001b[K',
    ]);
  });

  it('writes a plain line now and then elsewhere', () => {
    const lines = written(200, 1000, false);
    expect(lines[0]).toBe('2 of 200 cells, about 3 min left\n');
    expect(lines).toHaveLength(20);
    expect(lines.join('')).toMatch(/^(?:\d+ of 200 cells, about \d+ (?:s|min) left\n)+$/);
  });
});
