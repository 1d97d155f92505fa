import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { canonicalJson } from '../../src/record/canonical-json.ts';

describe('canonicalJson', () => {
  // RFC 8785, section 3.2.3: keys sort by UTF-16 code units, so the emoji comes before U+FB33.
  it('sorts keys as the example of RFC 8785 does (from memory)', () => {
    const given = {
      '\u20ac': 'Euro Sign',
      '\r': 'Carriage Return',
      '\ufb33': 'Hebrew Letter Dalet With Dagesh',
      '1': 'One',
      '\ud83d\ude00': 'Emoji: Grinning Face',
      '\u0080': 'Control',
      '\u00f6': 'Latin Small Letter O With Diaeresis',
    };
    expect(canonicalJson(given)).toBe(
      '{"\\r":"Carriage Return","1":"One","\u0080":"Control","ö":"Latin Small Letter O With Diaeresis","€":"Euro Sign","\ud83d\ude00":"Emoji: Grinning Face","\ufb33":"Hebrew Letter Dalet With Dagesh"}',
    );
  });

  // RFC 8785, section 3.2.2.
  it('writes numbers as the example of RFC 8785 does (from memory)', () => {
    const given = JSON.parse('[333333333.33333329, 1E30, 4.50, 2e-3, 0.000000000000000000000000001]');
    expect(canonicalJson(given)).toBe('[333333333.3333333,1e+30,4.5,0.002,1e-27]');
  });

  it('leaves out keys without a value, as a saved file does', () => {
    expect(canonicalJson({ b: undefined, a: null, c: [true, 'x'] })).toBe('{"a":null,"c":[true,"x"]}');
  });

  it('does not depend on the order in which keys were set', () => {
    const entries = fc.uniqueArray(fc.tuple(fc.string(), fc.jsonValue()), { selector: ([key]) => key });
    fc.assert(
      fc.property(entries, (pairs) => {
        expect(canonicalJson(Object.fromEntries([...pairs].reverse()))).toBe(
          canonicalJson(Object.fromEntries(pairs)),
        );
      }),
    );
  });

  it('keeps the content: reading it gives the same data', () => {
    fc.assert(
      fc.property(fc.jsonValue({ noUnicodeString: false }), (value) => {
        const plain: unknown = JSON.parse(JSON.stringify(value));
        expect(JSON.parse(canonicalJson(plain))).toEqual(plain);
      }),
    );
  });

  it('refuses what JSON cannot hold and what is nested without end', () => {
    expect(() => canonicalJson({ u: Number.NaN })).toThrow(/NaN/);
    expect(() => canonicalJson([() => 1])).toThrow(/function/);
    expect(canonicalJson(JSON.parse('['.repeat(100) + ']'.repeat(100)))).toHaveLength(200);
    expect(() => canonicalJson(JSON.parse('['.repeat(102) + ']'.repeat(102)))).toThrow(/nested/);
  });
});
