import { spawn } from 'node:child_process';
import { createInterface } from 'node:readline';
import { describe, expect, it } from 'vitest';
import { sampleScenarios, variedScenario } from '../../bench/varied-scenarios.ts';
import { builtEntry } from '../built-program.ts';
import { ROOT } from '../run-program.ts';

/** How many lines; 20000 is the whole thing and takes hours. Too long for every day, so only when asked for. */
const LINES = Number(process.env.CLADWRIGHT_BATCH_LINES ?? 0);
const HOURS_MS = 24 * 60 * 60 * 1000;

const isBroken = (line: number) => line % 100 === 37;

function* input(): Generator<string> {
  const samples = sampleScenarios();
  for (let line = 1; line <= LINES; line++) {
    const whole = JSON.stringify(variedScenario(samples, line));
    const broken = ['', whole.slice(0, whole.length / 2), whole.replace('scenario/1', 'scenario/9'), 'null'];
    yield `${isBroken(line) ? broken[Math.floor(line / 100) % 4] : whole}\n`;
  }
}

describe.skipIf(!LINES)('a batch through the program, as long as asked for', () => {
  it(
    'has a line for each, in order, the broken ones by their number',
    async () => {
      const child = spawn(process.execPath, [await builtEntry(), 'batch', '-', '--short'], {
        cwd: ROOT,
        stdio: ['pipe', 'pipe', 'inherit'],
      });
      const ended = new Promise<number | null>((resolve) => child.on('close', resolve));
      const feeding = (async () => {
        for (const text of input()) {
          if (!child.stdin.write(text)) await new Promise((resolve) => child.stdin.once('drain', resolve));
        }
        child.stdin.end();
      })();
      let line = 0;
      for await (const text of createInterface({ input: child.stdout })) {
        line++;
        const told: unknown = JSON.parse(text);
        if (isBroken(line)) expect(told).toMatchObject({ schema: 'cladwright-batch-error/1', line });
        else expect(told).toMatchObject({ schema: 'cladwright-batch-short/1', name: `Wall ${line}` });
      }
      await feeding;
      expect(await ended).toBe(LINES >= 37 ? 1 : 0);
      expect(line).toBe(LINES);
    },
    HOURS_MS,
  );
});
