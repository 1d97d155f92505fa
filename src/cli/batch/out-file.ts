import type { Stats } from 'node:fs';
import { type FileHandle, open, stat } from 'node:fs/promises';
import { dirname } from 'node:path';
import { errorCode } from '../../base/error-code.ts';
import { Refusal, showValue } from '../../base/refusal.ts';
import { discRefusal } from '../../record/disc-refusal.ts';
import { type BatchState, freshState, readState, statePath, writeState } from './resume-state.ts';

const FIELD = '--out';

/**
 * What an earlier run left in the output file.
 *
 * @param means  digest of all that decides an answer but the scenario
 * @returns a fresh state where there is no file yet
 * @throws Refusal for a file that is no unfinished batch, or one answered with other rules or options
 */
export async function earlierState(path: string, means: string): Promise<BatchState> {
  const about = await lookAt(path);
  if (about === null) return freshState(means);
  const state = await readState(path);
  if (state === null && about.size === 0) return freshState(means);
  if (state === null || state.bytes > about.size) {
    throw new Refusal({
      field: FIELD,
      value: showValue(path),
      accepted: `There is such a file, and it is no batch that could be gone on with (${statePath(path)} is missing or does not fit it). Give another name, or remove it.`,
    });
  }
  if (state.means !== means) {
    throw new Refusal({
      field: FIELD,
      value: showValue(path),
      accepted:
        'Its lines were answered by other rules, options or another version of the program. Give another name, or remove it to begin again.',
    });
  }
  return state;
}

/** @throws Refusal: what comes in now is not what the lines in the file answer */
export function refuseOtherInput(path: string, { lines }: BatchState): never {
  throw new Refusal({
    field: FIELD,
    value: showValue(path),
    accepted: `Its first ${lines} lines answer other scenarios than those given now, or the same from files of other names. Give the same paths, or another name.`,
  });
}

/** Unlike `--save`, `--out` names a file, and makes no folder for it. */
function noFolder(path: string): Refusal {
  return new Refusal({
    field: FIELD,
    value: showValue(path),
    accepted: 'There is no such folder. Give a file in a folder that is there.',
  });
}

/** @throws Refusal where there is something else of that name, a folder or a device, or no folder for it */
export async function refuseNoFile(path: string): Promise<void> {
  if ((await lookAt(path)) === null && (await stat(dirname(path)).catch(() => null)) === null) {
    throw noFolder(path);
  }
}

async function lookAt(path: string): Promise<Stats | null> {
  const about = await stat(path).catch((error: unknown) => {
    if (errorCode(error) === 'ENOENT') return null;
    throw discRefusal(error, FIELD, path);
  });
  if (about === null || about.isFile()) return about;
  throw new Refusal({ field: FIELD, value: showValue(path), accepted: 'Give the name of a file.' });
}

/** The output file of a batch, written to behind what is known to be whole. */
export class OutFile {
  readonly #path: string;
  readonly #file: FileHandle;
  #at: number;

  private constructor(path: string, file: FileHandle, at: number) {
    this.#path = path;
    this.#file = file;
    this.#at = at;
  }

  /**
   * Cuts off what came after the last saved state (a torn line, or whole ones that will be answered again).
   *
   * @throws Refusal where it can't be written to
   */
  static async open(path: string, state: BatchState): Promise<OutFile> {
    try {
      const file = await open(path, state.lines === 0 ? 'w' : 'r+');
      await file.truncate(state.bytes);
      const out = new OutFile(path, file, state.bytes);
      await out.save(state);
      return out;
    } catch (error) {
      throw errorCode(error) === 'ENOENT' ? noFolder(path) : discRefusal(error, FIELD, path);
    }
  }

  /** @throws Refusal where the disc takes no more; what is saved stays good to go on from */
  async write(text: string): Promise<void> {
    const bytes = Buffer.from(text, 'utf8');
    try {
      for (let done = 0; done < bytes.length; ) {
        const { bytesWritten } = await this.#file.write(bytes, done, bytes.length - done, this.#at + done);
        done += bytesWritten;
      }
    } catch (error) {
      throw discRefusal(error, FIELD, this.#path);
    }
    this.#at += bytes.length;
  }

  /** The lines first, through to the disc, then the state that tells of them. */
  async save(state: Omit<BatchState, 'bytes'>): Promise<void> {
    try {
      await this.#file.datasync();
      await writeState(this.#path, { ...state, bytes: this.#at });
    } catch (error) {
      throw discRefusal(error, FIELD, this.#path);
    }
  }

  async close(): Promise<void> {
    await this.#file.close();
  }
}
