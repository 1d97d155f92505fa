import type { Writable } from 'node:stream';

/** Shorter work needs no telling. */
const QUIET_MS = 2000;
/** Between two lines where they can't be written over each other. */
const LINE_MS = 10_000;

type Screen = Pick<Writable, 'write'> & { readonly isTTY?: boolean | undefined };

export type Progress = {
  readonly tell: (done: number, total: number) => void;
  /** Takes the line away again, so that what follows begins on a clean one. */
  readonly end: () => void;
};

/**
 * How far long work has come, with the time left, on standard error: one line written over and over on a terminal, a
 * line now and then elsewhere; nothing at all for the first two seconds.
 *
 * @param what  what is counted: "walls"
 */
export function progressOn(
  what: string,
  stream: Screen = process.stderr,
  now: () => number = Date.now,
): Progress {
  const begin_ms = now();
  let told_ms = begin_ms + QUIET_MS - LINE_MS;
  let isShown = false;
  return {
    tell(done, total) {
      const passed_ms = now() - begin_ms;
      if (passed_ms < QUIET_MS || done >= total) return;
      const left_s = Math.ceil((passed_ms / done) * (total - done)) / 1000;
      const text = `${done} of ${total} ${what}, about ${durationText(left_s)} left`;
      if (stream.isTTY) {
        stream.write(`\r${text}\u001b[K`);
        isShown = true;
      } else if (now() - told_ms >= LINE_MS) {
        stream.write(`${text}\n`);
        told_ms = now();
      }
    },
    end() {
      if (isShown) stream.write('\r\u001b[K');
      isShown = false;
    },
  };
}

function durationText(seconds: number): string {
  if (seconds < 90) return `${Math.max(1, Math.round(seconds))} s`;
  return `${Math.round(seconds / 60)} min`;
}
