import type { Writable } from 'node:stream';

/** Shorter work needs no telling. */
const QUIET_MS = 2000;
/** Between two lines where they can't be written over each other. */
const LINE_MS = 10_000;
/** Between two writes on a terminal: nobody reads faster. */
const REDRAW_MS = 200;

export type Screen = Pick<Writable, 'write'> & { readonly isTTY?: boolean | undefined };

export type StatusLine = {
  /** @param text  asked for only when it is shown; given the ms since the beginning */
  readonly show: (text: (passed_ms: number) => string) => void;
  /** Takes the line away again, so that what follows begins on a clean one. */
  readonly clear: () => void;
};

/**
 * A line that tells how far work has come: written over and over on a terminal, a line now and then elsewhere; nothing
 * at all for the first two seconds.
 */
export function statusLine(stream: Screen = process.stderr, now: () => number = Date.now): StatusLine {
  const begin_ms = now();
  let told_ms = begin_ms + QUIET_MS - LINE_MS;
  let isShown = false;
  return {
    show(text) {
      const at_ms = now();
      const passed_ms = at_ms - begin_ms;
      if (passed_ms < QUIET_MS || at_ms - told_ms < (stream.isTTY ? REDRAW_MS : LINE_MS)) return;
      told_ms = at_ms;
      stream.write(stream.isTTY ? `\r${text(passed_ms)}\u001b[K` : `${text(passed_ms)}\n`);
      isShown = stream.isTTY === true;
    },
    clear() {
      if (isShown) stream.write('\r\u001b[K');
      isShown = false;
    },
  };
}

/** "41 s", "12 min", "3 h 20 min" */
export function durationText(seconds: number): string {
  if (seconds < 90) return `${Math.max(1, Math.round(seconds))} s`;
  const minutes = Math.round(seconds / 60);
  return minutes < 120 ? `${minutes} min` : `${Math.floor(minutes / 60)} h ${minutes % 60} min`;
}
