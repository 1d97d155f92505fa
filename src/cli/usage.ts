import type { Command, CommanderError } from 'commander';
import { Refusal, showValue } from '../base/refusal.ts';
import { didYouMean } from '../rulebook/nearest-name.ts';

/** Names of a command's own commands, those that the help shows. */
export function commandNames(parent: Command): string[] {
  const help = parent.createHelp();
  return help
    .visibleCommands(parent)
    .map((command) => command.name())
    .filter((name) => name !== 'help');
}

/** Says that a word is no command, with those that are and the nearest one. */
export function unknownCommand(parent: Command, word: string): Refusal {
  const names = commandNames(parent);
  return new Refusal({
    field: parent.parent ? `${parent.name()} command` : 'command',
    value: showValue(word),
    accepted: `Give one of ${names.join(', ')}.${didYouMean(word, names)}`,
  });
}

/** @throws Refusal that names the first word too many */
export function refuseExtraWords(command: Command, most: number): void {
  const extra = command.args[most];
  if (extra === undefined) return;
  throw new Refusal({
    field: command.name(),
    value: showValue(extra),
    accepted:
      most === 0
        ? 'It takes options only.'
        : `It takes ${most === 1 ? 'one argument' : `${most} arguments`} at most.`,
  });
}

/** What the argument parser found wrong, said as any other bad input is: what, which value, what would be accepted. */
export function usageRefusal(error: CommanderError, command: Command): Refusal {
  const named = /'([^']*)'/.exec(error.message)?.[1] ?? '';
  if (error.code === 'commander.unknownOption') return unknownOption(named, command);
  if (error.code === 'commander.optionMissingArgument') {
    const option = command.options.find((known) => known.flags === named);
    return new Refusal({
      field: option?.long ?? named,
      value: '(nothing)',
      accepted: `Give a value: ${option?.description ?? named}.`,
    });
  }
  // "help" of a command that there is not.
  if (error.code === 'commander.help' && command.args[1] !== undefined) {
    return unknownCommand(command, command.args[1]);
  }
  return new Refusal({
    field: command.name(),
    value: 'this usage',
    accepted: `${error.message.replace(/^error: /, '')}; "--help" shows the usage.`,
  });
}

function unknownOption(flag: string, command: Command): Refusal {
  const [word] = command.args;
  // The command is the likelier slip: its options can't be known.
  if (command.commands.length > 0 && word !== undefined && !word.startsWith('-')) {
    return unknownCommand(command, word);
  }
  const flags = command
    .createHelp()
    .visibleOptions(command)
    .flatMap((option) => option.long ?? []);
  return new Refusal({
    field: 'option',
    value: showValue(flag),
    accepted: `Give one of ${flags.join(', ')}.${didYouMean(flag, flags)}`,
  });
}
