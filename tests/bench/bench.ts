// What an answer costs, against the bare runtime and against the plain way to the same result, all in one run.
import { cpus, loadavg } from 'node:os';
import { answers } from './answers.ts';
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
await startUp();
await answers();
await rules();
