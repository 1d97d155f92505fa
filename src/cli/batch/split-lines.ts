import { createHash, type Hash } from 'node:crypto';

/** One line of NDJSON as it came in. */
export type RawLine = {
  /** Without the line end; null for a line over the limit, which is passed over without being kept. */
  readonly bytes: Buffer | null;
  /** With the line end. */
  readonly size_bytes: number;
  /** SHA-256 of the whole line without its end, also of one over the limit. */
  readonly digest: string;
};

const LINE_END = 0x0a;

/**
 * Cuts a stream of bytes at its line ends. No more than one line and one chunk are held at a time, whatever comes.
 * What stands behind the last line end is a line too; nothing behind it is none.
 *
 * @param most_bytes  longer lines are told by their size only
 */
export async function* splitLines(
  chunks: AsyncIterable<Uint8Array>,
  most_bytes: number,
): AsyncGenerator<RawLine, void, void> {
  let line = new OpenLine(most_bytes);
  for await (const chunk of chunks) {
    const bytes = Buffer.from(chunk.buffer, chunk.byteOffset, chunk.byteLength);
    let start = 0;
    for (let end = bytes.indexOf(LINE_END); end >= 0; end = bytes.indexOf(LINE_END, start)) {
      line.add(bytes.subarray(start, end));
      yield line.close(1);
      line = new OpenLine(most_bytes);
      start = end + 1;
    }
    line.add(bytes.subarray(start));
  }
  if (line.size_bytes > 0) yield line.close(0);
}

class OpenLine {
  readonly #most_bytes: number;
  readonly #hash: Hash = createHash('sha256');
  #parts: Buffer[] = [];
  size_bytes = 0;

  constructor(most_bytes: number) {
    this.#most_bytes = most_bytes;
  }

  add(part: Buffer): void {
    if (part.length === 0) return;
    this.size_bytes += part.length;
    this.#hash.update(part);
    // A copy: the part would keep its whole chunk in memory.
    if (this.size_bytes <= this.#most_bytes) this.#parts.push(Buffer.from(part));
    else this.#parts = [];
  }

  close(end_bytes: number): RawLine {
    return {
      bytes: this.size_bytes <= this.#most_bytes ? Buffer.concat(this.#parts) : null,
      size_bytes: this.size_bytes + end_bytes,
      digest: this.#hash.digest('hex'),
    };
  }
}
