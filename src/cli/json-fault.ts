/** Where JSON text goes wrong, and what would be accepted there. */
export type JsonFault = { readonly at: number; readonly accepted: string };

/** Deeper than any valid input; guards the recursive checks behind it. */
const DEEPEST = 64;

const SPACE = /[ \t\r\n]*/y;
const NUMBER = /-?(?:0|[1-9][0-9]*)(?:\.[0-9]+)?(?:[eE][+-]?[0-9]+)?(?![0-9A-Za-z.+-])/y;
const WORD = /(?:true|false|null)(?![0-9A-Za-z_])/y;
const ESCAPE = /\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4})/y;

const WANTED = {
  value: 'a value: text in double quotes, a number, true, false, null, {…} or […]',
  key: 'a key in double quotes',
  colon: 'a colon after the key',
  end: 'the end of the text: one JSON document is taken at a time',
  control: '\\n, \\t or \\u0000 in place of a line end or control character',
} as const;

type Open = { readonly close: '}' | ']'; readonly keys: Set<unknown> };

/**
 * The first fault of JSON text, with its offset; undefined when there is none. The built-in parser tells an offset
 * for some faults only, and takes the last of two equal keys without a word.
 */
export function findJsonFault(text: string): JsonFault | undefined {
  const open: Open[] = [];
  let at = skip(SPACE, text, 0);
  for (;;) {
    // A value is wanted here.
    const first = text[at];
    if (first === '{' || first === '[') {
      if (open.length === DEEPEST) return { at, accepted: `Nest at most ${DEEPEST} levels.` };
      open.push({ close: first === '{' ? '}' : ']', keys: new Set() });
      at = skip(SPACE, text, at + 1);
      if (text[at] !== open.at(-1)?.close) {
        const member = first === '{' ? readKey(text, at, open) : at;
        if (typeof member !== 'number') return member;
        at = member;
        continue;
      }
    } else {
      const end = endOfScalar(text, at);
      if (typeof end !== 'number') return end;
      at = skip(SPACE, text, end);
    }
    // A value, or an empty group that is about to close, stands behind.
    for (let inner = open.at(-1); inner && text[at] === inner.close; inner = open.at(-1)) {
      open.pop();
      at = skip(SPACE, text, at + 1);
    }
    const inner = open.at(-1);
    if (!inner) return at === text.length ? undefined : wanted(at, WANTED.end);
    if (text[at] !== ',') return wanted(at, `a comma or "${inner.close}"`);
    at = skip(SPACE, text, at + 1);
    const member = inner.close === '}' ? readKey(text, at, open) : at;
    if (typeof member !== 'number') return member;
    at = member;
  }
}

/** Reads `"key" :` and returns where its value begins. */
function readKey(text: string, at: number, open: readonly Open[]): number | JsonFault {
  if (text[at] !== '"') return wanted(at, WANTED.key);
  const end = endOfString(text, at);
  if (typeof end !== 'number') return end;
  const keys = open.at(-1)?.keys;
  const key: unknown = JSON.parse(text.slice(at, end));
  if (keys?.has(key)) return { at, accepted: 'Give each key once; this one stands twice.' };
  keys?.add(key);
  const colon = skip(SPACE, text, end);
  return text[colon] === ':' ? skip(SPACE, text, colon + 1) : wanted(colon, WANTED.colon);
}

function endOfScalar(text: string, at: number): number | JsonFault {
  if (text[at] === '"') return endOfString(text, at);
  const number = skip(NUMBER, text, at);
  if (number > at) return number;
  const word = skip(WORD, text, at);
  return word > at ? word : wanted(at, WANTED.value);
}

/** Walks character by character: a pattern over the whole of a long string would exhaust the matcher. */
function endOfString(text: string, start: number): number | JsonFault {
  for (let at = start + 1; at < text.length; at += 1) {
    const char = text[at];
    if (char === '"') return at + 1;
    if (char === '\\') {
      const end = skip(ESCAPE, text, at);
      if (end === at) return wanted(at, 'an escape such as \\n, \\" or \\u00b0');
      at = end - 1;
    } else if (char !== undefined && char < ' ') {
      return wanted(at, WANTED.control);
    }
  }
  return wanted(start, 'a closing double quote for this text');
}

function skip(pattern: RegExp, text: string, at: number): number {
  pattern.lastIndex = at;
  return pattern.test(text) ? pattern.lastIndex : at;
}

function wanted(at: number, what: string): JsonFault {
  return { at, accepted: `Give valid JSON; here should come ${what}.` };
}
