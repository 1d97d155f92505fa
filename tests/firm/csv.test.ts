import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { csvText } from '../../src/firm/csv.ts';

describe('csvText', () => {
  // Source: RFC 4180, section 2, rules 1, 2, 5, 6 and 7.
  it('ends every line with CRLF and quotes commas and quotes', () => {
    const text = csvText(['name', 'size'], [['2" board, offset', 3.5]]);
    expect(text).toBe('name,size\r\n"2"" board, offset",3.5\r\n');
  });

  it('leaves an empty field for what is not known, and numbers as they are', () => {
    expect(csvText(['a', 'b', 'c'], [[null, -8, false]])).toBe('a,b,c\r\n,-8,false\r\n');
    expect(() => csvText(['a'], [[Number.NaN]])).toThrow(/NaN/);
  });

  // Source: OWASP, "CSV Injection": =, +, -, @, tab and carriage return, and the full-width forms of the first four.
  it.each(['=1+1', '+1', '-1+cmd', '@SUM(A1)', '＝1', '＋1', '－1', '＠x', '\t=1', '\r=1', ' =1'])(
    'shows %j as text, never as a formula',
    (text) => {
      const [row = []] = parse(csvText(['a'], [[text]]), { from_line: 2 }) as string[][];
      expect(row[0]).toMatch(/^'[=+\-@＝＋－＠]/u);
    },
  );

  it('is read back field by field by another reader, whatever stands in it', () => {
    // What stays as it is: no control or format characters, no white space to fold, no first character of a formula.
    const plain = fc
      .string({ unit: fc.constantFrom('a', 'é', ',', '"', ';', "'", '°', '✓', '1'), maxLength: 12 })
      .filter((text) => text.trim() === text);
    fc.assert(
      fc.property(fc.array(fc.tuple(plain, plain, fc.integer()), { minLength: 1, maxLength: 5 }), (rows) => {
        const text = csvText(['a', 'b', 'n'], rows);
        expect(parse(text, { from_line: 2 })).toEqual(rows.map(([a, b, n]) => [a, b, `${n}`]));
      }),
    );
  });

  it('keeps one line to a row, whatever line ends and control characters come', () => {
    fc.assert(
      fc.property(
        fc.array(fc.string({ unit: 'binary', maxLength: 20 }), { minLength: 1, maxLength: 5 }),
        (texts) => {
          const text = csvText(
            ['a'],
            texts.map((one) => [one]),
          );
          expect(text.split('\r\n')).toHaveLength(texts.length + 2);
          expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
        },
      ),
    );
  });
});
