import type { Block } from './blocks.ts';

/** Something said in passing. */
export function note(text: string): Block {
  return { kind: 'paragraph', text, role: 'note' };
}

/** Something to heed. */
export function warning(text: string): Block {
  return { kind: 'paragraph', text, role: 'warning' };
}

/** Said when the user breaks the talk off. */
export function farewellWords(isKept: boolean): string {
  return isKept ? 'Stopped. Your answers are kept; next time I offer to go on with them.' : 'Stopped.';
}

/** A heading with its list; nothing when the list is empty. */
export function titledList(title: string, items: readonly string[]): Block[] {
  return items.length === 0
    ? []
    : [
        { kind: 'heading', text: title },
        { kind: 'list', items },
      ];
}
