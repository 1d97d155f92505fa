import type { Block } from './blocks.ts';
import { note } from './notes.ts';

/** A kept talk, as a list of them shows it. */
export type ProjectEntry = {
  /** Null for the talk that was given no name. */
  readonly name: string | null;
  /** Date and time, ISO 8601. */
  readonly saved_at: string;
  /** How many answers it holds. */
  readonly answered: number;
  /** Its record has been saved. */
  readonly finished: boolean;
};

export const UNNAMED = '(no name yet)';

/** The kept talks, the last one first. */
export function projectBlocks(projects: readonly ProjectEntry[]): Block[] {
  if (projects.length === 0) {
    return [note('No other talk is kept. "call it …" names this one and keeps it under that name.')];
  }
  return [
    { kind: 'heading', text: 'Kept talks' },
    {
      kind: 'figures',
      rows: projects.map(({ name, saved_at, answered, finished }) => ({
        label: name ?? UNNAMED,
        value: `${answered} answers, ${saved_at.slice(0, 10)}${finished ? ', record saved' : ''}`,
      })),
    },
    note('"open …" with a name goes to one of them; "new project" begins another.'),
  ];
}
