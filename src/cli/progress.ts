import { durationText, type Screen, statusLine } from './status-line.ts';

export type Progress = {
  readonly tell: (done: number, total: number) => void;
  /** Takes the line away again, so that what follows begins on a clean one. */
  readonly end: () => void;
};

/**
 * How far long work has come, with the time left, on standard error.
 *
 * @param what  what is counted: "walls"
 */
export function progressOn(what: string, stream?: Screen, now?: () => number): Progress {
  const line = statusLine(stream, now);
  return {
    tell(done, total) {
      if (done >= total) return;
      line.show((passed_ms) => {
        const left_s = Math.ceil((passed_ms / done) * (total - done)) / 1000;
        return `${done} of ${total} ${what}, about ${durationText(left_s)} left`;
      });
    },
    end: line.clear,
  };
}
