import { distance } from 'fastest-levenshtein';
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

/** Words that people mean as they say them, though they look like a slip of one of those above. */
const MEANT = ['siding', 'boarded', 'doubled', 'finished'];

/** Letters that may be wrong in a word of so many; a shorter one is near to too much. */
const SLIPS: readonly { readonly from: number; readonly letters: number }[] = [
  { from: 8, letters: 3 },
  { from: 6, letters: 2 },
  { from: 4, letters: 1 },
];

/** Names that differ from what was said by a slip of the keyboard, best first; nothing for what only contains it. */
function slipsOf(said: string, names: readonly string[]): string[] {
  const allowed = SLIPS.find(({ from }) => said.length >= from)?.letters ?? 0;
  if (allowed === 0 || MEANT.includes(said)) return [];
  return names
    .map((name) => ({ name, away: distance(said, name) }))
    .filter(({ name, away }) => away > 0 && away <= allowed && name[0] === said[0])
    .sort((a, b) => a.away - b.away || (a.name < b.name ? -1 : 1))
    .map(({ name }) => name);
}

/** ` Did you mean …?` with what is near to something not understood: a choice, a command or a word; else nothing. */
export function nearestThings(said: string, choices: readonly string[]): string {
  const commands = COMMAND_HELP.flatMap(({ rows }) =>
    rows.flatMap(({ say }) => {
      const [verb = ''] = say.split(' ');
      return [say.replace(/ …$/, ''), ...(verb.length > 4 ? [verb] : [])];
    }),
  );
  const names = [...choices.map((label) => label.toLowerCase()), ...commands, ...WORDS];
  const whole = slipsOf(said, names);
  const byWord = said.split(/\s+/).flatMap((word) => slipsOf(word, WORDS).slice(0, 1));
  const near = [...new Set(whole.length > 0 ? whole : byWord)].slice(0, 3);
  return near.length > 0 ? ` Did you mean ${near.map((name) => `"${name}"`).join(' or ')}?` : '';
}
