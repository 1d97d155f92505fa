import { dirname } from 'node:path';
import { fileURLToPath } from 'node:url';
import { answerScript } from './answer-script.ts';
import { compileLater } from './compile-later.ts';

// Both ways lead to main.ts. Modules are compiled anew each time; for one answer that is a good part of the time.
if (process.argv[2] === 'advise') {
  compileLater();
  answerScript(dirname(fileURLToPath(import.meta.url))).run();
} else {
  await import('./main.ts');
}
