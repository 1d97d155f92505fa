import type { Command } from 'commander';
import { CODE_EDITIONS } from '../base/code-editions.ts';
import type { BatchFlags } from './batch/batch-command.ts';
import type { ChangesFlags } from './changes-command.ts';
import type { MatrixFlags } from './matrix-command.ts';
import { refuseExtraWords } from './usage.ts';

type Act = (command: Command, run: (command: Command) => Promise<number>) => void;

const FORM = ['--as <form>', 'text, markdown, csv, html or json; text when left out'] as const;
const SAVE = ['--save <dir>', 'write the report into this folder as json, md, csv and html'] as const;

/** `batch`: a scenario in, a line out. */
export function addBatch(program: Command, act: Act, houseRules: readonly [string, string]): void {
  const command = program
    .command('batch')
    .description('many scenarios: a line of JSON for each, in their order')
    .argument(
      '[PATH...]',
      'scenario files, folders of them, .ndjson files, or - for NDJSON on standard input',
    )
    .option('--json', 'the lines are JSON with it and without it')
    .option('--jobs <n>', 'worker threads; as many as there are processors when left out')
    .option('--top <n>', 'how many assemblies to rank in each, 1 to 20', '3')
    .option('--edition <year>', `judge all by this code edition: ${CODE_EDITIONS.join(', ')}`)
    .option('--short', 'first choice and main figures only, half a kilobyte a line')
    .option(
      '--out <file>',
      'write the lines into this file; the same command goes on where it was broken off',
    )
    .option(
      '--first-line <n>',
      'number of the first line, where the input is a part of something longer',
      '1',
    )
    .option(...houseRules);
  act(command, async () => {
    const { runBatch } = await import('./batch/batch-command.ts');
    return runBatch(command.args, command.optsWithGlobals<BatchFlags>());
  });
}

/** `matrix`: many walls, one standard. */
export function addMatrix(
  program: Command,
  act: Act,
  houseRules: readonly [string, string],
  ascii: readonly [string, string],
): void {
  const command = program
    .command('matrix')
    .description('one standard for many walls: zones by framings, and the fewest assemblies that cover them')
    .argument('[FILE]', "a firm's file or a scenario to start from, or - for standard input")
    .option('--zones <list>', 'climate zones with commas between them: 2A,4C,5B')
    .option(
      '--framings <list>',
      'material-depth-spacing, then -54mil for steel and -r21 for the filling: wood-5.5-16,steel-6-16-54mil',
    )
    .option('--finishes <list>', 'cement-stucco, stucco-look, any')
    .option('--budgets <list>', 'US dollars per square foot, or none: 24,32,none')
    .option('--within <score>', 'how far below a cell’s best an assembly still covers it; 0.05 when left out')
    .option('--edition <year>', `judge by this code edition: ${CODE_EDITIONS.join(', ')}`)
    .option(...houseRules)
    .option(...FORM)
    .option('--json', 'one JSON document, the same as --as json')
    .option(...SAVE)
    .option(...ascii);
  act(command, async () => {
    const { runMatrix } = await import('./matrix-command.ts');
    refuseExtraWords(command, 1);
    return runMatrix(command.args[0], command.optsWithGlobals<MatrixFlags>());
  });
}

/** `changes`: the same projects by two rule sets. */
export function addChanges(
  program: Command,
  act: Act,
  houseRules: readonly [string, string],
  ascii: readonly [string, string],
): void {
  const editions = CODE_EDITIONS.join(', ');
  const command = program
    .command('changes')
    .description('the same projects by two rule sets: which decisions change, which figures, and why')
    .argument('[PATH...]', 'scenario files, or folders of them')
    .option('--from-edition <year>', `code edition before: ${editions}; each project's own when left out`)
    .option('--to-edition <year>', `code edition after: ${editions}; each project's own when left out`)
    .option('--from-house <files...>', 'house rules before')
    .option('--to-house <files...>', 'house rules after')
    .option(houseRules[0], 'house rules both before and after')
    .option(...FORM)
    .option('--json', 'one JSON document, the same as --as json')
    .option(...SAVE)
    .option(...ascii);
  act(command, async () => {
    const { runChanges } = await import('./changes-command.ts');
    return runChanges(command.args, command.optsWithGlobals<ChangesFlags>());
  });
}
