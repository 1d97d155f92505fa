import { nearestNames } from '../rulebook/nearest-name.ts';
import { COMMAND_HELP } from './command.ts';

/** Words of answers that people type in a hurry. */
const WORDS = [
  'retrofit',
  'new',
  'wood studs',
  'steel studs',
  'plywood',
  'osb',
  'gypsum',
  'fibreboard',
  'boards',
  'kraft',
  'poly',
  'latex paint',
  'foil',
  'casement',
  'awning',
  'double-hung',
  'sliding',
  'fixed',
  'flanged',
  'flangeless',
  'triple',
  'double',
  'true stucco',
  'stucco-look',
  'exposure',
  'termites',
  'wildfire',
  'uninsulated',
  'plasterers',
  'carpenters',
  'balanced',
  'done',
  'finish',
];

/** ` Did you mean …?` with what is near to something not understood: a choice, a command or a word; else nothing. */
export function nearestThings(said: string, choices: readonly string[]): string {
  const commands = COMMAND_HELP.flatMap(({ rows }) =>
    rows.flatMap(({ say }) => {
      const [verb = ''] = say.split(' ');
      return [say.replace(/ …$/, ''), ...(verb.length > 4 ? [verb] : [])];
    }),
  );
  const names = [...choices.map((label) => label.toLowerCase()), ...commands, ...WORDS];
  const whole = nearestNames(said, names);
  const byWord = said
    .split(/\s+/)
    .filter((word) => word.length > 3)
    .flatMap((word) => nearestNames(word, WORDS, 1));
  const near = [...new Set(whole.length > 0 ? whole : byWord)].filter((name) => name !== said).slice(0, 3);
  return near.length > 0 ? ` Did you mean ${near.map((name) => `"${name}"`).join(' or ')}?` : '';
}
