import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { answerScript, CODE_FILE } from './answer-script.ts';
import { compileLater } from './compile-later.ts';

// Run by the bundler with the folder of the bundle and the words of a command: runs it, and keeps the code it was run by.
const [folder = ''] = process.argv.splice(1, 1);
// The runtime takes code back under the same flags only.
compileLater();
const { script, run } = answerScript(folder);
process.on('exit', (status) => {
  if (status === 0) writeFileSync(join(folder, CODE_FILE), script.createCachedData());
});
run();
