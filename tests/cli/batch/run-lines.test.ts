import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import { describe, expect, it } from 'vitest';
import { failedLine } from '../../../src/cli/batch/answer-line.ts';
import type { BatchAnswer, BatchItem } from '../../../src/cli/batch/batch-item.ts';
import { runLines, StopSign } from '../../../src/cli/batch/run-lines.ts';
import { splitLines } from '../../../src/cli/batch/split-lines.ts';

setFlagsFromString('--expose-gc');
const collect: unknown = runInNewContext('gc');

function heapAfterCollecting(): number {
  if (typeof collect === 'function') collect();
  return process.memoryUsage().heapUsed;
}

const ANSWER = 'x'.repeat(20_000);

/** Stands in for a worker: every hundredth line is broken, and later ones are often answered before earlier ones. */
async function judge(item: BatchItem): Promise<BatchAnswer> {
  for (let turns = (item.line * 7) % 5; turns > 0; turns--)
    await new Promise((resolve) => setImmediate(resolve));
  const text = Buffer.from(item.content as Uint8Array).toString();
  if (!text.startsWith('{')) {
    return failedLine(item, [{ field: 'this line', value: text, accepted: 'Give JSON.' }], 'failed');
  }
  return { outcome: 'answered', text: `${text.slice(0, -1)},"answer":"${ANSWER}"}` };
}

async function* bytesOf(count: number): AsyncGenerator<Uint8Array> {
  let text = '';
  for (let i = 1; i <= count; i++) {
    text += i % 100 === 37 ? `broken ${i}\n` : `{"number":${i}}\n`;
    if (text.length > 60_000) {
      yield Buffer.from(text);
      text = '';
    }
  }
  yield Buffer.from(text);
}

async function* itemsOf(count: number): AsyncGenerator<BatchItem> {
  let line = 1;
  for await (const { bytes, digest, size_bytes } of splitLines(bytesOf(count), 1000)) {
    if (!bytes) throw new Error('no line is that long');
    yield { line, source: 'standard input', source_line: line, content: bytes, digest, size_bytes };
    line++;
  }
}

describe('a batch of 20,000 lines, 1 % of them broken', () => {
  it('loses none, names each broken one by its number, and holds no more at the end than at the beginning', async () => {
    const failed: number[] = [];
    let lines = 0;
    let early = 0;
    let late = 0;
    const end = await runLines({
      items: itemsOf(20_000),
      answer: judge,
      most: 12,
      stop: new StopSign(),
      sink: {
        async write(text, item) {
          lines++;
          const told: unknown = JSON.parse(text);
          if (item.line % 100 === 37) {
            expect(told).toMatchObject({ schema: 'cladwright-batch-error/1', line: lines });
            failed.push(item.line);
          } else expect(told).toMatchObject({ number: lines });
          if (lines === 1000) early = heapAfterCollecting();
          if (lines === 20_000) late = heapAfterCollecting();
          return true;
        },
      },
    });
    expect(end).toBe('all');
    expect(lines).toBe(20_000);
    expect(failed).toEqual(Array.from({ length: 200 }, (_, i) => 100 * i + 37));
    // The answers alone come to 400 MB.
    expect(late - early).toBeLessThan(4_000_000);
  }, 60_000);
});

describe('a batch', () => {
  const run = (stop: StopSign, write: (line: number) => Promise<boolean>, answer = judge) =>
    runLines({
      items: itemsOf(1000),
      answer,
      most: 4,
      stop,
      sink: { write: (_, { line }) => write(line) },
    });

  it('stops between two lines when it is told to', async () => {
    const stop = new StopSign();
    const written: number[] = [];
    const end = await run(stop, async (line) => {
      written.push(line);
      if (line === 5) stop.set();
      return true;
    });
    expect(end).toBe('stopped');
    expect(written).toEqual([1, 2, 3, 4, 5]);
  });

  it('stops though the next answer never comes', async () => {
    const stop = new StopSign();
    setTimeout(() => stop.set(), 20);
    expect(
      await run(
        stop,
        async () => true,
        () => new Promise(() => {}),
      ),
    ).toBe('stopped');
  });

  it('ends when nobody reads any more', async () => {
    const written: number[] = [];
    const end = await run(new StopSign(), async (line) => {
      written.push(line);
      return line < 3;
    });
    expect(end).toBe('nobody-reads');
    expect(written).toEqual([1, 2, 3]);
  });
});
