import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readLengthIn, readNumber } from '../../src/conversation/understanding/numbers.ts';

describe('numbers as people write them', () => {
  it.each([
    ['30', 30],
    ['5.5', 5.5],
    ['.75', 0.75],
    ['5 1/2', 5.5],
    ['3-5/8', 3.625],
    ['1/2', 0.5],
    ['six', 6],
    ['twelve', 12],
    ['a dozen', 12],
    ['half a dozen', 6],
    ['thirty-two', 32],
    ['a couple of', 2],
  ])('"%s" is %d', (text, value) => {
    expect(readNumber(text)).toBe(value);
  });

  it.each(['', 'some', '5..5', '1/0', 'six seven', '30x'])('"%s" is none', (text) => {
    expect(readNumber(text)).toBeNull();
  });

  it('are read back, whatever the number', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 100_000 }),
        fc.integer({ min: 0, max: 999 }),
        (whole, thousandths) => {
          const text = `${whole}.${String(thousandths).padStart(3, '0')}`;
          expect(readNumber(text)).toBeCloseTo(whole + thousandths / 1000, 9);
        },
      ),
    );
  });
});

describe('lengths as people write them', () => {
  // 1 in. = 25.4 mm exactly (international yard and pound agreement of 1959).
  it.each([
    ['16 in.', 16],
    ['16"', 16],
    ['3 5/8 inches', 3.625],
    ['5 ft', 60],
    [`3'`, 36],
    [`3'6"`, 42],
    ['5 ft 6 1/2 in.', 66.5],
    ['25.4 mm', 1],
    ['254 mm', 10],
    ['2.54 cm', 1],
    ['1 m', 39.37],
  ])('%s is %d in.', (text, inches) => {
    expect(readLengthIn(text)).toBeCloseTo(inches, 3);
  });

  it.each(['16', 'long', '6 pounds', '5 mph', '3 miles'])('"%s" is none', (text) => {
    expect(readLengthIn(text)).toBeNull();
  });
});
