import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { describeIssue, inRange, Refusal, showValue } from '../../src/base/refusal.ts';

const DEPTH = { field: 'framing.depth_in', value: '"-2"', accepted: 'Give inches, for example 5.5.' };
const COUNT = { field: 'windows[0].count', value: '0', accepted: 'Give a whole number.' };

describe('a refusal', () => {
  it('says field, value and what would be accepted, one line for each issue', () => {
    const refusal = new Refusal([DEPTH, COUNT]);
    expect(refusal.message).toBe(
      'framing.depth_in: "-2" is not accepted. Give inches, for example 5.5.\n' +
        'windows[0].count: 0 is not accepted. Give a whole number.',
    );
    expect(refusal.message).toBe([DEPTH, COUNT].map(describeIssue).join('\n'));
  });

  it('takes a single issue as a list of one, and is an error by its own name', () => {
    const refusal = new Refusal(DEPTH);
    expect(refusal.issues).toEqual([DEPTH]);
    expect(refusal).toBeInstanceOf(Error);
    expect(refusal.name).toBe('Refusal');
  });
});

describe('a shown value', () => {
  it.each([
    [undefined, '(nothing)'],
    [null, 'null'],
    [Number.NaN, 'NaN'],
    [Number.POSITIVE_INFINITY, 'a number too large to be read'],
    [Number.NEGATIVE_INFINITY, 'a number too large to be read'],
    ['', '""'],
    [' 18O ', '" 18O "'],
    [-2, '-2'],
    [[1, 'a'], '[1,"a"]'],
    [{ a: 1 }, '{"a":1}'],
    ['say "no"', '"say \\"no\\""'],
  ])('of %j is %s', (value, shown) => {
    expect(showValue(value)).toBe(shown);
  });

  it.each([
    ['the escape that starts a terminal sequence', '\u001b[31mred', '\\u001b'],
    ['a line end', 'one\ntwo', '\\n'],
    ['delete', 'a\u007fb', '\\u007f'],
    ['the one-byte sequence introducer', '\u009b2J', '\\u009b'],
    ['a right-to-left override', 'abc\u202egpj', '\\u202e'],
    ['a direction isolate', 'a\u2066b', '\\u2066'],
    ['the Arabic letter mark', 'a\u061cb', '\\u061c'],
    ['a zero-width space', 'a\u200bb', '\\u200b'],
    ['a byte-order mark', '\ufeffa', '\\ufeff'],
  ])('has %s escaped', (_, given, escaped) => {
    expect(showValue(given)).toContain(escaped);
  });

  it('never holds a character that could steer a terminal, whatever was given', () => {
    const steering = [...'\u001b\u0007\r\n\u007f\u0085\u009b\u061c\u200b\u200f\u2028\u202e\u2069\ufeff'];
    const text = fc
      .array(fc.oneof(fc.constantFrom(...steering), fc.string({ unit: 'binary', maxLength: 3 })))
      .map((parts) => parts.join(''));
    fc.assert(
      fc.property(text, (given) => {
        expect(showValue(given)).not.toMatch(
          /[\u0000-\u001f\u007f-\u009f\u061c\u200b-\u200f\u2028-\u202e\u2066-\u2069\ufeff]/,
        );
      }),
      { numRuns: 40 },
    );
  });

  it('is cut to a readable length, with a mark, and never through the middle of a character', () => {
    expect(showValue('x'.repeat(78))).toBe(`"${'x'.repeat(78)}"`);
    expect(showValue('x'.repeat(79))).toBe(`"${'x'.repeat(43)}…${'x'.repeat(35)}"`);
    expect(showValue(`/home/somebody/${'deep/'.repeat(20)}wall.json`)).toMatch(/deep\/wall\.json"$/);
    expect(showValue([...'x'.repeat(40)])).toMatch(/^\["x",.*…$/);
    fc.assert(
      fc.property(fc.nat(90), (before) => {
        const shown = showValue('x'.repeat(before) + '𝄞'.repeat(20));
        expect(shown.length).toBeLessThanOrEqual(81);
        expect(shown).not.toMatch(/\p{Surrogate}/u);
      }),
    );
  });
});

describe('the gate for numbers', () => {
  it('lets the whole range through, its ends included', () => {
    expect(inRange(85, 'basic_wind_speed_mph', 85, 220, 'miles per hour')).toBe(85);
    expect(inRange(220, 'basic_wind_speed_mph', 85, 220, 'miles per hour')).toBe(220);
  });

  it.each([84.999, 220.001, Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY])(
    'refuses %s by name, with the range in words',
    (value) => {
      expect(() => inRange(value, 'basic_wind_speed_mph', 85, 220, 'miles per hour')).toThrow(
        /^basic_wind_speed_mph: .* is not accepted\. Give miles per hour from 85 to 220\.$/,
      );
    },
  );
});
