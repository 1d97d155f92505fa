import { spawn } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { cpus } from 'node:os';
import { join } from 'node:path';
import { count, heading, line, times } from './measure.ts';
import { sampleScenarios, variedScenario } from './varied-scenarios.ts';

const ENTRY = join('dist', 'cladwright.js');
/** Lines of each thread; time is taken from where a third of all have come out, when every thread is warm. */
const LINES = 60;
/** Answered lines of the smallest memory run; the others have 10 and 100 times as many. */
const FEW = 4;
/** Lines that can't be answered for each one that can: they show what is held of lines as such. */
const BROKEN = 99;

type Run = {
  /** Lines a second. */
  readonly rate: number;
  /** Processor time a line; null where the system does not say. */
  readonly cpu_s: number | null;
  readonly peak_mb: number | null;
  readonly lines: number;
};

/** What a batch gets out of its threads, and what it holds as it grows. */
export async function batch(): Promise<void> {
  const most = cpus().length;
  const jobs = [1, 2, 4, 8].filter((n) => n === 1 || n <= most);
  heading(
    'Batch',
    `whole answers as lines, ${LINES} jobs a thread, each of its own, at varied places; the last two thirds of them. A thread has helpers that collect and compile, so that one alone keeps more than one processor busy`,
  );
  let single = Number.NaN;
  for (const n of jobs) {
    const { rate, cpu_s } = await run([], n, [answerable(0, n * LINES).join('')]);
    if (n === 1) single = rate;
    const words = n === 1 ? '' : ` ${times(rate / single)}`;
    line(
      `--jobs ${n}: lines a second`,
      `${rate.toFixed(1)}${words}`,
      n === 1
        ? { words: '20 or more a core', isMet: rate >= 20 }
        : { words: `${(0.8 * n).toFixed(1)}x or more`, isMet: rate / single >= 0.8 * n },
    );
    if (cpu_s !== null)
      line('  processor time a line', `${cpu_s.toFixed(2)} s, ${(cpu_s * rate).toFixed(1)} of ${most} busy`);
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
  const seen: Sight[] = [];
  let lines = 0;
  let peak_mb: number | null = null;
  const look = () => {
    peak_mb = peakOf(child.pid) ?? peak_mb;
  };
  const watch = setInterval(look, 100);
  child.stdout.on('data', (chunk: Buffer) => {
    const before = lines;
    for (const byte of chunk) if (byte === 0x0a) lines++;
    if (lines > before) seen.push({ lines, at_ms: performance.now(), cpu_s: processorTimeOf(child.pid) });
  });
  for (const text of input) {
    if (!child.stdin.write(text)) await new Promise((resolve) => child.stdin.once('drain', resolve));
  }
  child.stdin.end();
  await new Promise((resolve) => child.on('close', resolve));
  clearInterval(watch);
  return { ...ratesOf(seen), peak_mb, lines };
}

/** What had come out at some time, and what it had cost by then. */
type Sight = { readonly lines: number; readonly at_ms: number; readonly cpu_s: number | null };

/** From where a third of the lines had come out to the last. */
function ratesOf(seen: readonly Sight[]): Pick<Run, 'rate' | 'cpu_s'> {
  const last = seen.at(-1);
  const first = seen.find(({ lines }) => last && lines >= last.lines / 3);
  if (!first || !last) throw new Error('the batch gave no lines');
  const counted = last.lines - first.lines;
  return {
    rate: (1000 * counted) / (last.at_ms - first.at_ms),
    cpu_s: first.cpu_s === null || last.cpu_s === null ? null : (last.cpu_s - first.cpu_s) / counted,
  };
}

/** Linux tells times in hundredths of a second, whatever the kernel counts in. */
const TICKS_PER_S = 100;

/** Processor time of a process and all its threads so far; null where the system does not say. */
function processorTimeOf(pid: number | undefined): number | null {
  try {
    // After the name in brackets, which may hold anything: user and system time are the 12th and 13th.
    const told = readFileSync(`/proc/${pid}/stat`, 'utf8')
      .replace(/^.*\) /s, '')
      .split(' ');
    const ticks = Number(told[11]) + Number(told[12]);
    return Number.isFinite(ticks) ? ticks / TICKS_PER_S : null;
  } catch {
    return null;
  }
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
