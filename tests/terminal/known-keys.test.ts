import { describe, expect, it } from 'vitest';
import { withoutStrangeKeys } from '../../src/terminal/known-keys.ts';

describe('what comes from the terminal', () => {
  it.each([
    ['\u001b[A', 'up'],
    ['\u001b[1;5D', 'a word to the left'],
    ['\u001b[H', 'home'],
    ['\u001b[3~', 'delete'],
    ['\u001b[200~pasted\u001b[201~', 'a paste between its marks'],
    ['\u001b', 'escape'],
    ['\u001bOP', 'F1'],
    ['2x6 [osb]', 'letters'],
  ])('keeps %j, %s', (chunk) => expect(withoutStrangeKeys(chunk)).toBe(chunk));

  it.each([
    ['\u001b[1;5P', '', 'F1 with control'],
    ['\u001b[15;5~', '', 'F5 with control'],
    ['\u001b[31mred\u001b[0m', 'red', 'coloured text'],
    ['a\u001b[?1;2cb', 'ab', 'a terminal telling what it is'],
    ['\u001b[I', '', 'the window coming to the front'],
  ])('loses %j but for %j: %s', (chunk, left) => expect(withoutStrangeKeys(chunk)).toBe(left));
});
