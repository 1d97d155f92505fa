import { BUILT_CHECKS } from './built-checks.ts';

/** What a check made of one file. */
export type CheckedFile = {
  /** SHA-256 of the file, and of those that its check rests on. */
  readonly digest: string;
  /** Plain JSON. */
  readonly value: unknown;
};

/** Checks of files of the rules folder: what was checked byte for byte before is not checked again. */
export class CheckedFiles {
  readonly #byName: Map<string, CheckedFile>;

  /** @param known  by the file's path in the rules folder; those of the build unless told otherwise */
  constructor(known: Readonly<Record<string, CheckedFile>> = BUILT_CHECKS) {
    this.#byName = new Map(Object.entries(known));
  }

  /**
   * What the check makes of a file.
   *
   * @param name    its path in the rules folder
   * @param digest  tells its bytes, and those of all files that the check rests on, from any other
   * @param check   the whole check; may throw, and then nothing is kept
   */
  valueOf<T>(name: string, digest: string, check: () => T): T {
    const known = this.#byName.get(name);
    // The same program made it of the same bytes, so that it is what the check would return.
    if (known?.digest === digest) return known.value as T;
    const value = check();
    this.#byName.set(name, { digest, value });
    return value;
  }

  get all(): Record<string, CheckedFile> {
    return Object.fromEntries(this.#byName);
  }
}
