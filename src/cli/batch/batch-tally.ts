import { visibleText } from '../../conversation/visible-text.ts';
import { STANDARD_INPUT, sourceName } from '../read-text.ts';
import { durationText } from '../status-line.ts';
import type { BatchAnswer, BatchItem } from './batch-item.ts';

/** Failed lines that are told on standard error; all are told in the output. */
const MOST_TOLD = 10;

/** Counts of a batch, those of an interrupted run before it included. */
export type Tally = {
  lines: number;
  nothing_passes: number;
  failed: number;
  faults: number;
};

export function countIn(tally: Tally, { outcome }: BatchAnswer): void {
  tally.lines++;
  if (outcome === 'nothing-passes') tally.nothing_passes++;
  if (outcome === 'failed') tally.failed++;
  if (outcome === 'fault') tally.faults++;
}

/** What standard error says of a failed line; null for one that is not told any more. */
export function failureText(
  tally: Tally,
  { line, source, source_line }: BatchItem,
  { outcome, message = '' }: BatchAnswer,
): string | null {
  if (outcome !== 'failed' && outcome !== 'fault') return null;
  const nth = tally.failed + tally.faults;
  if (nth > MOST_TOLD + 1) return null;
  if (nth === MOST_TOLD + 1) return 'More lines failed: look for "cladwright-batch-error/1" in the output.\n';
  const where = placeText({ line, source, source_line });
  const [first = '', ...more] = message.split('\n');
  const rest = more.length > 0 ? ` (and ${more.length} more)` : '';
  // Values and file names come from outside and must not steer the terminal.
  const saysWhere = [':', ','].some((mark) => first.startsWith(`${where}${mark}`));
  return `${visibleText(`${saysWhere ? '' : `${where}: `}${first}${rest}`)}\n`;
}

/** Where somebody finds it again: the line of a file is not that of the output when other files come before it. */
function placeText({
  line,
  source,
  source_line,
}: Pick<BatchItem, 'line' | 'source' | 'source_line'>): string {
  if (source_line === null) return source;
  return source === sourceName(STANDARD_INPUT) ? `line ${line}` : `${source}, line ${source_line}`;
}

/**
 * How far a batch has come: "340 lines, 2 failed; 18.4 a second, about 4 min left".
 *
 * @param done_now  lines of this run alone: those of an earlier one took no time now
 * @param share     of the input that is done, of what this run has to do; null where nobody knows how much is to come
 */
export function progressText(
  tally: Tally,
  done_now: number,
  passed_ms: number,
  share: number | null,
): string {
  const left =
    share === null || share <= 0
      ? ''
      : `, about ${durationText(((passed_ms / 1000) * (1 - share)) / share)} left`;
  return `${linesText(tally.lines)}${failedText(tally)}; ${rateText(done_now, passed_ms)}${left}`;
}

/** The last word on standard error. */
export function summaryText(tally: Tally, done_now: number, passed_ms: number): string {
  if (tally.lines === 0) return 'Nothing came in: no lines.\n';
  const answered = tally.lines - tally.failed - tally.faults;
  const parts = [
    `${linesText(tally.lines)}: ${countText(answered)} answered`,
    ...(tally.nothing_passes > 0 ? [`nothing passes in ${countText(tally.nothing_passes)} of them`] : []),
    ...(tally.failed > 0 ? [`${countText(tally.failed)} failed`] : []),
    ...(tally.faults > 0 ? [`${countText(tally.faults)} broke the program (a fault in it)`] : []),
  ];
  const earlier = tally.lines - done_now;
  const before = earlier > 0 ? `; ${countText(earlier)} of the lines stood there already` : '';
  return `${parts.join(', ')}${before}; ${durationText(passed_ms / 1000)}, ${rateText(done_now, passed_ms)}.\n`;
}

function failedText({ failed, faults }: Tally): string {
  return failed + faults > 0 ? `, ${countText(failed + faults)} failed` : '';
}

function linesText(lines: number): string {
  return lines === 1 ? '1 line' : `${countText(lines)} lines`;
}

function countText(count: number): string {
  return count.toLocaleString('en-US');
}

function rateText(done: number, passed_ms: number): string {
  const rate = done / Math.max(passed_ms / 1000, 0.001);
  return `${rate < 100 ? rate.toFixed(1) : countText(Math.round(rate))} a second`;
}
