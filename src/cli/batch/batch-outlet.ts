import { writeOut } from '../output.ts';
import { type StatusLine, statusLine } from '../status-line.ts';
import type { BatchAnswer, BatchItem } from './batch-item.ts';
import { countIn, failureText, progressText, summaryText, type Tally } from './batch-tally.ts';
import type { OutFile } from './out-file.ts';
import { type BatchState, withItem } from './resume-state.ts';
import type { BatchEnd, BatchSink } from './run-lines.ts';

/** Between two saved states: what a kill costs at most, beside the answers under way. */
const SAVE_MS = 1000;

export type OutletOptions = {
  readonly earlier: BatchState;
  /** Null: standard output. */
  readonly file: OutFile | null;
  /** Null where nobody knows how much is to come. */
  readonly input_bytes: number | null;
  readonly skipped_bytes: number;
};

/** Where the lines of a batch go, with what has to be kept and told of them. */
export class BatchOutlet implements BatchSink {
  readonly #earlier: BatchState;
  readonly #file: OutFile | null;
  readonly #status: StatusLine = statusLine();
  readonly #begin_ms = Date.now();
  readonly #to_do_bytes: number | null;
  #done_bytes = 0;
  #input: string;
  #saved_ms = Date.now();
  readonly tally: Tally;

  constructor({ earlier, file, input_bytes, skipped_bytes }: OutletOptions) {
    this.#earlier = earlier;
    this.#file = file;
    this.#input = earlier.input;
    this.#to_do_bytes = input_bytes === null ? null : input_bytes - skipped_bytes;
    const { lines, nothing_passes, failed, faults } = earlier;
    this.tally = { lines, nothing_passes, failed, faults };
  }

  readonly write = async (text: string, item: BatchItem, answer: BatchAnswer): Promise<boolean> => {
    if (this.#file) await this.#file.write(text);
    else if (!(await writeOut(text))) return false;
    countIn(this.tally, answer);
    this.#done_bytes += item.size_bytes;
    const failure = failureText(this.tally, item, answer);
    if (failure !== null) {
      this.#status.clear();
      process.stderr.write(failure);
    }
    this.#status.show((passed_ms) => progressText(this.tally, this.#linesNow, passed_ms, this.#shareDone()));
    if (this.#file) {
      this.#input = withItem(this.#input, item);
      if (Date.now() - this.#saved_ms >= SAVE_MS) await this.#save(this.#file);
    }
    return true;
  };

  get #linesNow(): number {
    return this.tally.lines - this.#earlier.lines;
  }

  #shareDone(): number | null {
    const to_do = this.#to_do_bytes;
    return to_do === null || to_do <= 0 ? null : Math.min(1, this.#done_bytes / to_do);
  }

  async #save(file: OutFile): Promise<void> {
    await file.save({ ...this.#earlier, ...this.tally, input: this.#input });
    this.#saved_ms = Date.now();
  }

  /** Everything that was written is kept. */
  async finish(): Promise<void> {
    this.#status.clear();
    if (this.#file) await this.#save(this.#file);
  }

  lastWords(end: BatchEnd, hasFile: boolean): string {
    const isEmpty = this.tally.lines === 0 && end !== 'all';
    const told = isEmpty
      ? 'Nothing was answered yet.\n'
      : summaryText(this.tally, this.#linesNow, Date.now() - this.#begin_ms);
    if (end === 'all') return told;
    if (end === 'nobody-reads') return `Nobody reads any more: stopped. ${told}`;
    const then = hasFile ? ' The same command goes on from here.' : '';
    return `Interrupted.${then} ${told}`;
  }

  async close(): Promise<void> {
    this.#status.clear();
    await this.#file?.close();
  }
}
