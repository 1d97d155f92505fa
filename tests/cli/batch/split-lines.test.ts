import { createHash } from 'node:crypto';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type RawLine, splitLines } from '../../../src/cli/batch/split-lines.ts';
import { allOf } from './all-of.ts';

async function* inChunks(bytes: Buffer, cuts: readonly number[]): AsyncGenerator<Uint8Array> {
  const ends = [...cuts.map((cut) => cut % (bytes.length + 1)), bytes.length].sort((a, b) => a - b);
  let start = 0;
  for (const end of ends) {
    yield bytes.subarray(start, end);
    start = end;
  }
}

async function linesOf(bytes: Buffer, cuts: readonly number[], most: number): Promise<RawLine[]> {
  return allOf(splitLines(inChunks(bytes, cuts), most));
}

const sha256 = (text: string) => createHash('sha256').update(text, 'latin1').digest('hex');

describe('lines of a stream', () => {
  it('are those of the text, however it is cut into chunks', async () => {
    const piece = fc.oneof(
      fc.constant('\n'),
      fc.constant('\r\n'),
      fc.string({ unit: 'binary', maxLength: 6 }),
    );
    await fc.assert(
      fc.asyncProperty(fc.array(piece, { maxLength: 30 }), fc.array(fc.nat(200)), async (pieces, cuts) => {
        const bytes = Buffer.from(pieces.join(''), 'utf8');
        const whole = bytes.toString('latin1');
        const expected = whole.split('\n');
        // Nothing behind the last line end is no line.
        if (expected.at(-1) === '') expected.pop();
        const lines = await linesOf(bytes, cuts, 1000);
        expect(lines.map((line) => line.bytes?.toString('latin1'))).toEqual(expected);
        expect(lines.map(({ digest }) => digest)).toEqual(expected.map(sha256));
        expect(lines.reduce((sum, { size_bytes }) => sum + size_bytes, 0)).toBe(bytes.length);
      }),
    );
  });

  it('over the limit are told by size and digest only, and the next one is whole again', async () => {
    const [long, next] = await linesOf(Buffer.from('12345678\nabc\n'), [3, 6], 7);
    expect(long).toEqual({ bytes: null, size_bytes: 9, digest: sha256('12345678') });
    expect(next?.bytes?.toString()).toBe('abc');
    const [just] = await linesOf(Buffer.from('1234567\n'), [], 7);
    expect(just?.bytes?.toString()).toBe('1234567');
  });

  it('of 50 MB are passed over without being held', async () => {
    const chunk = Buffer.alloc(64 * 1024, 'x');
    let most = 0;
    async function* long() {
      for (let i = 0; i < 800; i++) {
        most = Math.max(most, process.memoryUsage().arrayBuffers);
        yield chunk;
      }
      yield Buffer.from('\n{}\n');
    }
    const before = process.memoryUsage().arrayBuffers;
    const lines = await allOf(splitLines(long(), 1_000_000));
    expect(lines.map(({ bytes, size_bytes }) => [bytes?.toString() ?? null, size_bytes])).toEqual([
      [null, 800 * 64 * 1024 + 1],
      ['{}', 3],
    ]);
    // What is kept up to the limit, and what the collector has not come to yet.
    expect(most - before).toBeLessThan(8_000_000);
  });
});
