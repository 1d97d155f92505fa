import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { spawn } from '@lydell/node-pty';
import { heading, line, median, ms, times } from './measure.ts';

const RUNS = 7;
const ENTRY = join('dist', 'cladwright.js');

/** Start-up without a terminal against the bare runtime, and with one against the bare terminal library. */
export async function startUp(): Promise<void> {
  heading('Start-up', `whole processes, ${RUNS} runs each, in turn`);
  const commands = {
    bare: ['-e', '0'],
    version: [ENTRY, '--version'],
    answer: [ENTRY, 'advise', join('scenarios', 'cold-retrofit.json'), '--json'],
  };
  const taken = { bare: [] as number[], version: [] as number[], answer: [] as number[] };
  for (let i = 0; i < RUNS; i++) {
    for (const name of ['bare', 'version', 'answer'] as const) taken[name].push(wholeRun(commands[name]));
  }
  const bare = median(taken.bare);
  line('bare runtime: node -e 0', ms(bare));
  line('--version', `${ms(median(taken.version))} ${times(median(taken.version) / bare)}`);
  const share = median(taken.answer) / bare;
  line('one answer, cold: advise cold-retrofit.json --json', `${ms(median(taken.answer))} ${times(share)}`, {
    words: 'within 4x of the bare runtime',
    isMet: share <= 4,
  });
  const ink: number[] = [];
  const conversation: number[] = [];
  for (let i = 0; i < RUNS; i++) {
    ink.push(await firstFrame([join('dist', 'bench', 'bare-ink.js')]));
    conversation.push(await firstFrame([ENTRY]));
  }
  line('bare terminal library, bundled: first frame', ms(median(ink)));
  line(
    'conversation: first frame',
    `${ms(median(conversation))} ${times(median(conversation) / median(ink))}`,
  );
}

function wholeRun(args: readonly string[]): number {
  const start = performance.now();
  const { status } = spawnSync(process.execPath, args, { stdio: 'ignore' });
  if (status !== 0) throw new Error(`node ${args.join(' ')} ended with ${status}`);
  return performance.now() - start;
}

/** From the start of the process to the first letters on the terminal. */
function firstFrame(args: readonly string[]): Promise<number> {
  const start = performance.now();
  const child = spawn(process.execPath, [...args], {
    cols: 100,
    rows: 30,
    env: { ...process.env, XDG_STATE_HOME: join('dist', 'bench', 'state'), TERM: 'xterm-256color' },
  });
  return new Promise((resolve) => {
    child.onData((data) => {
      if (!/[a-z]{3}/.test(data)) return;
      resolve(performance.now() - start);
      child.kill();
    });
  });
}
