import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cleanText } from '../../src/record/clean-text.ts';

describe('cleanText', () => {
  it.each([
    ['a\nb\r\n\tc', 'a b c'],
    ['\u001b[2Jgone', '\\u001b[2Jgone'],
    ['safe\u202egnp.exe', 'safe\\u202egnp.exe'],
    ['\u2066x\u2069', '\\u2066x\\u2069'],
    ['zero\u200bwidth', 'zero\\u200bwidth'],
    ['ad\u200dmin', 'ad\\u200dmin'],
    ['tag\u{e0041}', 'tag\\u{e0041}'],
    ['broken \ud83d end', 'broken \ufffd end'],
    ['  padded  ', 'padded'],
  ])('shows what could steer or hide: %j', (given, expected) => {
    expect(cleanText(given)).toBe(expected);
  });

  it('leaves words of any script and joined emoji as they are', () => {
    for (const word of ['Müller', 'بيت', 'می‌خواهم', '東京', '👩‍🌾', '½ in. ≤ 3″']) {
      expect(cleanText(word)).toBe(word);
    }
  });

  it('never leaves a line end, control or direction character', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (given) => {
        expect(cleanText(given)).not.toMatch(/[\p{Cc}\u2028-\u202e\u2066-\u2069\u200e\u200f\u200b]/u);
      }),
    );
  });
});
