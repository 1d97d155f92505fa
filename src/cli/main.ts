import { Refusal } from '../base/refusal.ts';
import { visibleText } from '../conversation/visible-text.ts';
import { runCommandLine } from './command-line.ts';
import { EXIT } from './exit-codes.ts';
import { interruptStopsWork, interruptsAreTaken, lastWordsOnInterrupt } from './interrupts.ts';
import { flush, isBrokenPipe, outputRefusal } from './output.ts';

const MOST_ISSUES = 20;

/** The only way out, once everything that must be written is written. */
function leave(code: number): never {
  process.exit(code);
}

/** What went wrong, for standard error: bad input says what would be accepted, a fault where to see more. */
function reportOf(error: unknown): { text: string; code: number } {
  if (error instanceof Refusal) return { text: refusalText(error), code: EXIT.badInput };
  const message = error instanceof Error ? error.message : String(error);
  const [line = ''] = message.split('\n');
  const isDebug = (process.env.CLADWRIGHT_DEBUG ?? '') !== '';
  const stack = isDebug && error instanceof Error ? `\n${error.stack ?? ''}` : '';
  return {
    text: `internal fault: ${line || 'no message'} (CLADWRIGHT_DEBUG=1 shows where)${stack}`,
    code: EXIT.fault,
  };
}

function refusalText(refusal: Refusal): string {
  const lines = refusal.message.split('\n');
  const more = lines.length - MOST_ISSUES;
  return [...lines.slice(0, MOST_ISSUES), ...(more > 0 ? [`and ${more} more`] : [])].join('\n  ');
}

function fail(error: unknown): void {
  const { text, code } = reportOf(outputRefusal(error));
  // Keys and file names come from outside and must not steer the terminal.
  process.stderr.write(`cladwright: ${visibleText(text, true)}\n`, () => leave(code));
}

// A closed pipe is reported to each write's own callback; without a listener it would also end the program.
for (const stream of [process.stdout, process.stderr]) {
  stream.on('error', (error) => {
    if (!isBrokenPipe(error)) fail(error);
  });
}
process.on('SIGINT', () => {
  if (interruptsAreTaken() || interruptStopsWork()) return;
  const words = lastWordsOnInterrupt();
  if (words !== '') process.stdout.write(words);
  leave(EXIT.interrupted);
});
process.on('uncaughtException', fail);
process.on('unhandledRejection', fail);

// Reached only where the work neither ends nor fails.
process.on('beforeExit', () => leave(EXIT.fault));
runCommandLine(process.argv.slice(2))
  .then(async (code) => {
    await flush(process.stdout);
    leave(code);
  })
  .catch(fail);
