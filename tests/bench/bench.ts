// What an answer costs, against the bare runtime and against the plain way to the same result, all in one run.
import { cpus, loadavg } from 'node:os';
import { answers } from './answers.ts';
import { batch } from './batch.ts';
import { rules } from './rules.ts';
import { startUp } from './start-up.ts';

console.log(
  `node ${process.version}, ${cpus().length} x ${cpus()[0]?.model ?? 'unknown processor'}, load ${loadavg()
    .map((load) => load.toFixed(1))
    .join(' ')}`,
);
console.log(
  'Medians. Absolute times are those of this machine as busy as it is now; the ratios travel better.',
);
const PARTS = { 'start-up': startUp, answers, rules, batch };
const wanted = process.argv.slice(2);
for (const [name, run] of Object.entries(PARTS)) {
  if (wanted.length === 0 || wanted.includes(name)) await run();
}
