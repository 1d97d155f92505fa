import { spawn } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { cpus } from 'node:os';
import { join } from 'node:path';
import { count, heading, line, times } from './measure.ts';
import { sampleScenarios, variedScenario } from './varied-scenarios.ts';

const ENTRY = join('dist', 'cladwright.js');
/** Enough that the threads are warm for the better part of it. */
const LINES = 60;
/** Answered lines of the smallest memory run; the others have 10 and 100 times as many. */
const FEW = 4;
/** Lines that can't be answered for each one that can: they show what is held of lines as such. */
const BROKEN = 99;

type Run = { readonly rate: number; readonly peak_mb: number | null; readonly lines: number };

/** What a batch gets out of its threads, and what it holds as it grows. */
export async function batch(): Promise<void> {
  const most = cpus().length;
  const jobs = [1, 2, 4, 8].filter((n) => n === 1 || n <= most);
  heading(
    'Batch',
    `whole answers as lines, ${LINES} jobs of their own at varied places; from the first line that comes out to the last`,
  );
  const input = answerable(0, LINES).join('');
  let single = Number.NaN;
  for (const n of jobs) {
    const { rate } = await run([], n, [input]);
    if (n === 1) single = rate;
    const words = n === 1 ? '' : ` ${times(rate / single)}`;
    line(
      `--jobs ${n}: lines a second`,
      `${rate.toFixed(1)}${words}`,
      n === 1
        ? { words: '20 or more a core', isMet: rate >= 20 }
        : { words: `${(0.8 * n).toFixed(1)}x or more`, isMet: rate / single >= 0.8 * n },
    );
  }
  heading(
    'Memory of a batch',
    `peak of the whole process at --jobs ${Math.min(2, most)}; ${BROKEN} broken lines for each that is answered, short lines`,
  );
  let tenfold: number | null = null;
  for (const factor of [1, 10, 100]) {
    const { peak_mb, lines } = await run(['--short'], Math.min(2, most), mixed(FEW * factor));
    if (peak_mb === null) {
      line('not measured: this system has no /proc', '');
      return;
    }
    if (factor === 10) tenfold = peak_mb;
    const ratio = factor === 100 && tenfold !== null ? peak_mb / tenfold : null;
    line(
      `${count(lines)} lines`,
      `${count(peak_mb)} MB${ratio === null ? '' : ` ${ratio.toFixed(2)}x`}`,
      ratio === null ? undefined : { words: 'flat: within 1.3x of the one before', isMet: ratio <= 1.3 },
    );
  }
}

function answerable(from: number, lines: number): string[] {
  const samples = sampleScenarios();
  return Array.from(
    { length: lines },
    (_, i) => `${JSON.stringify(variedScenario(samples, 20_000 + from + i))}\n`,
  );
}

function* mixed(answered: number): Generator<string> {
  for (let i = 0; i < answered; i++) yield answerable(i, 1).join('') + '{"broken"\n'.repeat(BROKEN);
}

async function run(flags: readonly string[], jobs: number, input: Iterable<string>): Promise<Run> {
  const child = spawn(process.execPath, [ENTRY, 'batch', '-', '--jobs', `${jobs}`, ...flags], {
    stdio: ['pipe', 'pipe', 'ignore'],
  });
  let lines = 0;
  let first_ms = 0;
  let last_ms = 0;
  let peak_mb: number | null = null;
  const look = () => {
    peak_mb = peakOf(child.pid) ?? peak_mb;
  };
  const watch = setInterval(look, 100);
  child.stdout.on('data', (chunk: Buffer) => {
    last_ms = performance.now();
    first_ms ||= last_ms;
    for (const byte of chunk) if (byte === 0x0a) lines++;
  });
  for (const text of input) {
    if (!child.stdin.write(text)) await new Promise((resolve) => child.stdin.once('drain', resolve));
  }
  child.stdin.end();
  await new Promise((resolve) => child.on('close', resolve));
  clearInterval(watch);
  // The first line opens the time that is counted: it is not part of it.
  return { rate: (1000 * (lines - 1)) / (last_ms - first_ms), peak_mb, lines };
}

/** Highest resident memory so far, MB; null where the system does not say. */
function peakOf(pid: number | undefined): number | null {
  try {
    const told = /^VmHWM:\s+(\d+) kB$/m.exec(readFileSync(`/proc/${pid}/status`, 'utf8'));
    return told ? Number(told[1]) / 1000 : null;
  } catch {
    // It has ended, or there is no /proc here.
    return null;
  }
}
