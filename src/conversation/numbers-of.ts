import type { RankedAssembly } from '../advice/advice-schema.ts';
import type { Block } from './blocks.ts';
import { titledList } from './notes.ts';

/** Every figure of a wall with its method and source, and every rule that spoke on it with its citation. */
export function numbersBlocks(wall: RankedAssembly): Block[] {
  const spoken = wall.verdicts.filter(({ verdict }) => verdict !== 'pass');
  return [
    { kind: 'heading', text: `Figures: ${wall.title}` },
    {
      kind: 'list',
      items: wall.figures.map(({ what, value, unit, method, source, note }) => {
        const amount = value === null ? 'not known' : `${Number(value.toPrecision(4))} ${unit}`.trim();
        const from = source.length > 0 ? ` [${source.join('; ')}]` : '';
        return `${what}: ${amount}, by ${method}${from}${note ? ` ${note}` : ''}`;
      }),
    },
    ...titledList(
      'Rules that spoke',
      spoken.map(({ verdict, title, citation, rule }) => `${verdict}: ${title} [${citation}; rule ${rule}]`),
    ),
    {
      kind: 'paragraph',
      text: `${wall.verdicts.length - spoken.length} more rules were kept. "rules explain" with a rule's name shows it whole.`,
      role: 'quiet',
    },
  ];
}
