/** The keys that matter of what Ink reports. */
export type PressedKey = {
  readonly upArrow: boolean;
  readonly downArrow: boolean;
  readonly leftArrow: boolean;
  readonly rightArrow: boolean;
  readonly home: boolean;
  readonly end: boolean;
  readonly return: boolean;
  readonly escape: boolean;
  readonly ctrl: boolean;
  readonly tab: boolean;
  readonly backspace: boolean;
  readonly delete: boolean;
  readonly meta: boolean;
};

export type KeyAction =
  | { readonly kind: 'text'; readonly text: string }
  | {
      readonly kind:
        | 'submit'
        | 'erase-back'
        | 'erase-word'
        | 'erase-to-start'
        | 'erase-to-end'
        | 'left'
        | 'right'
        | 'start'
        | 'end'
        | 'up'
        | 'down'
        | 'back'
        | 'interrupt'
        | 'suspend';
    };

export type KeyReading = { readonly actions: readonly KeyAction[]; readonly isPasting: boolean };

const PASTE_BEGINS = '[200~';
const PASTE_ENDS = '[201~';

/**
 * What one chunk from the terminal asks for. A chunk may hold many characters: fast typing, or a paste. Between the
 * marks of a bracketed paste everything is text; outside of them a chunk sends the line only with a single line end
 * that stands last, as when somebody types faster than the program reads. Any other line end is part of a paste.
 */
export function readChunk(input: string, key: PressedKey, isPasting: boolean): KeyReading {
  if (input === PASTE_BEGINS) return { actions: [], isPasting: true };
  if (input === PASTE_ENDS) return { actions: [], isPasting: false };
  if (key.ctrl && input === 'c') return { actions: [{ kind: 'interrupt' }], isPasting: false };
  if (key.ctrl && input === 'z' && !isPasting) return { actions: [{ kind: 'suspend' }], isPasting };
  if (isPasting) return { actions: pasted(key.return ? '\n' : key.tab ? ' ' : input), isPasting };
  const special = specialKey(input, key);
  if (special !== null) return { actions: special, isPasting };
  return { actions: typed(input), isPasting };
}

const CONTROL_KEYS: Readonly<Record<string, KeyAction['kind'] & ('start' | 'end' | `erase-${string}`)>> = {
  a: 'start',
  e: 'end',
  u: 'erase-to-start',
  k: 'erase-to-end',
  w: 'erase-word',
  h: 'erase-back',
};

function specialKey(input: string, key: PressedKey): KeyAction[] | null {
  if (key.return || input === '\n') return [{ kind: 'submit' }];
  if (key.escape) return [{ kind: 'back' }];
  // Terminals send 0x7F for the rub-out key, which arrives as "delete".
  if (key.backspace || key.delete) return [{ kind: 'erase-back' }];
  if (key.upArrow) return [{ kind: 'up' }];
  if (key.downArrow) return [{ kind: 'down' }];
  if (key.leftArrow) return [{ kind: 'left' }];
  if (key.rightArrow) return [{ kind: 'right' }];
  if (key.home) return [{ kind: 'start' }];
  if (key.end) return [{ kind: 'end' }];
  if (key.ctrl) {
    const kind = CONTROL_KEYS[input];
    return kind ? [{ kind }] : [];
  }
  return key.tab || key.meta ? [] : null;
}

/** What a control character inside a chunk asks for: keys pressed faster than the program reads come together. */
const CONTROL_CHARACTERS: ReadonlyMap<string, KeyAction> = new Map<string, KeyAction>([
  ...Object.entries(CONTROL_KEYS).map(([letter, kind]) => [controlCharacter(letter), { kind }] as const),
  [controlCharacter('c'), { kind: 'interrupt' }],
  [controlCharacter('z'), { kind: 'suspend' }],
  ['\u007f', { kind: 'erase-back' }],
]);

function controlCharacter(letter: string): string {
  return String.fromCharCode(letter.charCodeAt(0) & 0x1f);
}

const CONTROLS = new RegExp(`([${[...CONTROL_CHARACTERS.keys()].join('')}])`);

function typed(chunk: string): KeyAction[] {
  const isLine = /^[^\r\n]*[\r\n]$/.test(chunk);
  const text = isLine ? chunk.slice(0, -1) : chunk;
  const actions = text.split(CONTROLS).flatMap((part) => CONTROL_CHARACTERS.get(part) ?? pasted(part));
  return isLine ? [...actions, { kind: 'submit' }] : actions;
}

/** Pasted text in one line: line ends inside become "; ", which separates answers; the last ones are dropped. */
function pasted(text: string): KeyAction[] {
  const line = text.replace(/[\r\n]+$/, ' ').replace(/\s*(?:\r\n|\r|\n)+\s*/g, '; ');
  return line === '' ? [] : [{ kind: 'text', text: line }];
}
