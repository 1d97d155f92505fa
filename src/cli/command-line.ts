import { Command, CommanderError, Option } from 'commander';
import { CODE_EDITIONS } from '../base/code-editions.ts';
import { Refusal } from '../base/refusal.ts';
import type { AdviseFlags } from './advise-command.ts';
import { CALCULATOR_NAMES } from './calculator-names.ts';
import type { ConversationFlags } from './conversation-command.ts';
import { EXIT, EXIT_HELP } from './exit-codes.ts';
import { addBatch, addChanges, addMatrix } from './firm-commands.ts';
import { writeResult } from './output.ts';
import type { RecordCheckFlags } from './record-check-command.ts';
import type { AcceptFlags } from './record-status-commands.ts';
import type { RulesFlags } from './rules-command.ts';
import { commandNames, refuseExtraWords, unknownCommand, usageRefusal } from './usage.ts';
import { TOOL_VERSION } from './version.ts';

/** Options that more than one command takes. */
const HOUSE_RULES = [
  '--house-rules <files...>',
  'add rule packs of your own; they may only be stricter',
] as const;
const IN_SCENARIOS = '--in <files...>';
const ASCII = ['--ascii', 'plain ASCII text, no special marks'] as const;

type Run = (command: Command) => Promise<number>;

/**
 * Reads the arguments, runs the command and returns the exit code. Each command's own code is loaded when it runs,
 * so that `--version` and `--help` load neither the terminal UI nor the rule engine.
 *
 * @param words  the arguments after the program's name
 * @throws Refusal for wrong usage and for anything that a command refuses
 */
export async function runCommandLine(words: readonly string[]): Promise<number> {
  let help = '';
  let code: number = EXIT.done;
  const program = buildProgram(
    (run) => async (command) => {
      code = await run(command);
    },
    (text) => {
      help += text;
    },
  );
  try {
    await program.parseAsync([...words], { from: 'user' });
  } catch (error) {
    if (!(error instanceof CommanderError) || error.exitCode !== 0) throw error;
  }
  if (help !== '') await writeResult(help);
  return code;
}

type Act = (command: Command, run: Run) => void;
type Ending = (run: Run) => (command: Command) => Promise<void>;

function buildProgram(ending: Ending, writeHelp: (text: string) => void): Command {
  const act = (command: Command, run: Run) => command.action(() => ending(run)(command));
  const program = new Command('cladwright')
    .description(
      'Which cladding, insulation, fastening and window bucks for a wall with rigid insulation outside its framing. Without a command: a conversation.',
    )
    .version(TOOL_VERSION, '-V, --version', 'show the version')
    .helpOption('-h, --help', 'show help')
    .helpCommand('help [command]', 'show help for a command')
    .argument('[command]')
    .usage('[options] [command]')
    .enablePositionalOptions()
    .option('--plain', 'plain lines instead of the terminal UI: one question, one answer a line')
    .option('--screen-reader', 'plain lines, and every drawing in words')
    .option('--reader <who>', 'whom to speak to: homeowner (plain words, cautions first) or professional')
    .option('--save <dir>', 'save the decision record into this folder without asking')
    .option(...HOUSE_RULES)
    .option(...ASCII)
    .option('--no-colour', 'no colour')
    .addOption(new Option('--no-color', 'no colour').hideHelp())
    .addHelpText('after', EXIT_HELP);
  act(program, async (command) => {
    const [word] = command.args;
    if (word !== undefined) throw unknownCommand(program, word);
    const { runConversation } = await import('./conversation-command.ts');
    return runConversation(command.opts<ConversationFlags>());
  });
  addAdvise(program, act);
  addCalc(program, act);
  addRules(program, act);
  addRecord(program, act);
  addBatch(program, act, HOUSE_RULES);
  addMatrix(program, act, HOUSE_RULES, ASCII);
  addChanges(program, act, HOUSE_RULES, ASCII);
  for (const command of everyCommand(program)) prepare(command, writeHelp);
  return program;
}

function addAdvise(program: Command, act: Act): void {
  const command = program
    .command('advise')
    .description('one answer, no questions')
    .argument('[SCENARIO]', 'a scenario file, or - for standard input')
    .option('--json', 'one JSON document')
    .option('--top <n>', 'how many assemblies to rank, 1 to 20', '3')
    .option('--save <dir>', 'write the decision record into this folder')
    .option(
      '--why-not <words>',
      'instead of an answer: why this wall is not it, such as "stucco over 4 in. polyiso"',
    )
    .option(...HOUSE_RULES)
    .option(...ASCII)
    .option('--edition <year>', `judge by this code edition: ${CODE_EDITIONS.join(', ')}`);
  act(command, async () => {
    const { runAdvise } = await import('./advise-command.ts');
    refuseExtraWords(command, 1);
    return runAdvise(command.args[0], command.optsWithGlobals<AdviseFlags>());
  });
}

function addCalc(program: Command, act: Act): void {
  const command = program
    .command('calc')
    .description('one calculator: JSON in, JSON out')
    .argument('[NAME]', CALCULATOR_NAMES.join(', '))
    .argument('[FILE]', 'a JSON file; standard input when left out, or -');
  act(command, async () => {
    const { runCalculator } = await import('./calc-command.ts');
    refuseExtraWords(command, 2);
    return runCalculator(command.args[0], command.args[1]);
  });
}

function addRules(program: Command, act: Act): void {
  const rules = program
    .command('rules')
    .description('check, list and explain the rules')
    .argument('[command]')
    .usage('[options] [command]');
  act(rules, async () => refuseGroup(rules));
  const check = rules
    .command('check')
    .description('check the rule packs')
    .option(...HOUSE_RULES)
    .option(IN_SCENARIOS, 'also say which rules fire in these scenarios, and which never');
  act(check, async () => {
    const { runRulesCheck } = await import('./rules-command.ts');
    refuseExtraWords(check, 0);
    return runRulesCheck(check.opts<RulesFlags>());
  });
  const list = rules
    .command('list')
    .description('list the rules with citation and edition')
    .option('--json', 'one JSON document')
    .option(...HOUSE_RULES);
  act(list, async () => {
    const { runRulesList } = await import('./rules-command.ts');
    refuseExtraWords(list, 0);
    return runRulesList(list.opts<RulesFlags>());
  });
  const explain = rules
    .command('explain')
    .description('explain one rule, or one named limit')
    .argument('[ID]', 'id of a rule, as "rules list" shows it, or of a limit')
    .option(...HOUSE_RULES)
    .option(IN_SCENARIOS, 'also say what the rule decided in these scenarios');
  act(explain, async () => {
    const { runRulesExplain } = await import('./rules-command.ts');
    refuseExtraWords(explain, 1);
    return runRulesExplain(explain.args[0], explain.opts<RulesFlags>());
  });
}

function addRecord(program: Command, act: Act): void {
  const record = program
    .command('record')
    .description('read, check, compare and sign saved decision records')
    .argument('[command]')
    .usage('[options] [command]');
  act(record, async () => refuseGroup(record));
  const show = record
    .command('show')
    .description('show a saved record')
    .argument('[FILE]', 'a record, the .json file')
    .option(...ASCII);
  act(show, async () => {
    const { runRecordShow } = await import('./record-command.ts');
    refuseExtraWords(show, 1);
    return runRecordShow(show.args[0], show.optsWithGlobals<{ ascii?: true }>());
  });
  const check = record
    .command('check')
    .description('work saved records out again: do they still hold?')
    .argument('[FILE...]', 'records, the .json files, or folders of them')
    .option('--json', 'one JSON document')
    .option(...HOUSE_RULES)
    .option(...ASCII);
  act(check, async () => {
    const { runRecordCheck } = await import('./record-check-command.ts');
    return runRecordCheck(check.args, check.optsWithGlobals<RecordCheckFlags>());
  });
  const compare = record
    .command('compare')
    .description('two records or scenarios side by side; a scenario is answered first')
    .argument('[A]', 'a record or a scenario')
    .argument('[B]', 'another')
    .option('--json', 'one JSON document')
    .option(...HOUSE_RULES)
    .option(...ASCII);
  act(compare, async () => {
    const { runRecordCompare } = await import('./record-compare-command.ts');
    refuseExtraWords(compare, 2);
    return runRecordCompare(compare.args, compare.optsWithGlobals<RecordCheckFlags>());
  });
  addStatusCommands(record, act);
}

/** Commands that write a new revision of a record with another status. */
function addStatusCommands(record: Command, act: Act): void {
  const accept = record
    .command('accept')
    .description('accept a proposed record: a new revision, signed')
    .argument('[FILE]', 'a record, the .json file')
    .option('--owner <name>', 'the owner who signed')
    .option('--builder <name>', 'the builder who signed')
    .option('--designer <name>', 'the licensed designer who signed, where one must')
    .option('--date <day>', 'the day of signing, for example 2026-03-14; today when left out');
  act(accept, async () => {
    const { runRecordAccept } = await import('./record-status-commands.ts');
    refuseExtraWords(accept, 1);
    return runRecordAccept(accept.args[0], accept.opts<AcceptFlags>());
  });
  const supersede = record
    .command('supersede')
    .description('let one record take the place of another: a new revision of each says so')
    .argument('[OLD]', 'the record whose place is taken')
    .argument('[NEW]', 'the record that takes it');
  act(supersede, async () => {
    const { runRecordSupersede } = await import('./record-status-commands.ts');
    refuseExtraWords(supersede, 2);
    return runRecordSupersede(supersede.args);
  });
}

function refuseGroup(group: Command): never {
  const [word] = group.args;
  if (word !== undefined) throw unknownCommand(group, word);
  throw new Refusal({
    field: group.name(),
    value: '(nothing)',
    accepted: `Say what to do: ${commandNames(group).join(', ')}.`,
  });
}

function everyCommand(command: Command): Command[] {
  return [command, ...command.commands.flatMap(everyCommand)];
}

function prepare(command: Command, writeHelp: (text: string) => void): void {
  command
    .allowExcessArguments()
    .configureOutput({ writeOut: writeHelp, writeErr: () => {}, outputError: () => {} })
    .exitOverride((error) => {
      throw error.exitCode === 0 ? error : usageRefusal(error, command);
    });
}
