import { Help } from 'commander';

/** How the program may end. Everything else that reads or prints an exit code takes it from here. */
export const EXIT = {
  done: 0,
  answerIsNo: 1,
  badInput: 2,
  fault: 70,
  interrupted: 130,
} as const;
export type ExitCode = (typeof EXIT)[keyof typeof EXIT];

const MEANINGS: readonly (readonly [ExitCode, string])[] = [
  [EXIT.done, 'done'],
  [
    EXIT.answerIsNo,
    'done, and the answer is no: no wall passes (in one cell of a matrix), a decision changed, a record no longer holds, a line of a batch failed',
  ],
  [EXIT.badInput, 'bad input or usage: the message says what would be accepted'],
  [EXIT.fault, 'a fault inside the program; CLADWRIGHT_DEBUG=1 shows where'],
  [EXIT.interrupted, 'interrupted'],
];

const COLUMNS = 80;
const INDENT = 7;

/** All lines but the first indented: the help wraps its own parts only. */
function hanging(text: string): string {
  return new Help().boxWrap(text, COLUMNS - INDENT).replaceAll('\n', `\n${' '.repeat(INDENT)}`);
}

/** The table of exit codes as the help shows it. */
export const EXIT_HELP = [
  '',
  'Exit codes:',
  ...MEANINGS.map(([code, meaning]) => `  ${String(code).padEnd(INDENT - 2)}${hanging(meaning)}`),
].join('\n');
