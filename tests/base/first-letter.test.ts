import { describe, expect, it } from 'vitest';
import { capital, ended, lower } from '../../src/base/first-letter.ts';

describe('the first letter of a text', () => {
  it('is raised or lowered alone; the letters after it stay as they are', () => {
    expect(capital('three-coat stucco over XPS')).toBe('Three-coat stucco over XPS');
    expect(lower('Climate zone 5B')).toBe('climate zone 5B');
  });

  it('stays as it is where it has no other case, and nothing stays nothing', () => {
    expect(capital('2 in. of board')).toBe('2 in. of board');
    expect(capital('')).toBe('');
  });
});

describe('the end of a sentence', () => {
  it('is one period, also after an abbreviation', () => {
    expect(ended('so it is')).toBe('so it is.');
    expect(ended('2 in.')).toBe('2 in.');
  });
});
