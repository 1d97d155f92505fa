import { setTimeout as wait } from 'node:timers/promises';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { inOrder } from '../../../src/cli/batch/in-order.ts';
import { allOf } from './all-of.ts';

async function* upTo(count: number, onRead: (i: number) => void = () => {}): AsyncGenerator<number> {
  for (let i = 0; i < count; i++) {
    onRead(i);
    yield i;
  }
}

/** A promise with its ends outside. */
function open<T>() {
  let settle: (value: T) => void = () => {};
  const promise = new Promise<T>((resolve) => {
    settle = resolve;
  });
  return { promise, settle };
}

describe('answers side by side', () => {
  it('come in the order of the items, whatever each takes, and never more at a time than allowed', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.array(fc.nat(4), { maxLength: 25 }),
        fc.integer({ min: 1, max: 6 }),
        async (ticks, most) => {
          let underWay = 0;
          let highest = 0;
          const answer = async (i: number) => {
            highest = Math.max(highest, ++underWay);
            for (let t = ticks[i] ?? 0; t > 0; t--) await new Promise((resolve) => setImmediate(resolve));
            underWay--;
            return `answer ${i}`;
          };
          const answers = await allOf(inOrder(upTo(ticks.length), answer, most));
          expect(answers).toEqual(ticks.map((_, i) => [i, `answer ${i}`]));
          expect(highest).toBeLessThanOrEqual(most);
        },
      ),
      { numRuns: 60 },
    );
  });

  it('are worked on side by side', async () => {
    let underWay = 0;
    let highest = 0;
    const answer = async () => {
      highest = Math.max(highest, ++underWay);
      await wait(5);
      underWay--;
    };
    await allOf(inOrder(upTo(12), answer, 4));
    expect(highest).toBe(4);
  });

  it('hold the reading back while nobody takes them', async () => {
    let read = 0;
    const answers = inOrder(
      upTo(1000, () => read++),
      async (i) => i,
      5,
    );
    await answers.next();
    await wait(20);
    // Five that are answered or handed on, and the next one at hand.
    expect(read).toBeLessThanOrEqual(6);
    await answers.next();
    await wait(20);
    expect(read).toBeLessThanOrEqual(7);
    await answers.return();
  });

  it('are handed on while the next item is still awaited', async () => {
    const never = open<void>();
    async function* slow() {
      yield 'first';
      await never.promise;
    }
    const answers = inOrder(slow(), async (item) => item.length, 8);
    expect(await answers.next()).toEqual({ done: false, value: ['first', 5] });
    const awaited = answers.next();
    never.settle();
    expect((await awaited).done).toBe(true);
  });

  it('throw in their turn, after those before them', async () => {
    const answers = inOrder(
      upTo(3),
      async (i) => {
        if (i === 1) throw new Error('as planned');
        await wait(5);
        return i;
      },
      3,
    );
    expect((await answers.next()).value).toEqual([0, 0]);
    await expect(answers.next()).rejects.toThrow('as planned');
  });

  it('can be left while a source waits for input for ever', async () => {
    async function* stuck() {
      yield 1;
      await new Promise<void>(() => {});
    }
    const answers = inOrder(stuck(), async (i) => i, 2);
    await answers.next();
    expect((await answers.return()).done).toBe(true);
  });
});
