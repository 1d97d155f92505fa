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
    'done, and the answer is no: no wall passes, a decision changed, a record no longer holds, a line failed',
  ],
  [EXIT.badInput, 'bad input or usage: the message says what would be accepted'],
  [EXIT.fault, 'a fault inside the program; CLADWRIGHT_DEBUG=1 shows where'],
  [EXIT.interrupted, 'interrupted'],
];

/** The table of exit codes as the help shows it. */
export const EXIT_HELP = [
  '',
  'Exit codes:',
  ...MEANINGS.map(([code, meaning]) => `  ${String(code).padEnd(5)}${meaning}`),
].join('\n');
