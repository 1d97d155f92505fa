import { describe, expect, it } from 'vitest';
import { listed } from '../../src/base/listed.ts';

describe('a list in words', () => {
  it('has its word before the last item alone', () => {
    expect(listed([])).toBe('');
    expect(listed(['a'])).toBe('a');
    expect(listed(['a', 'b'])).toBe('a and b');
    expect(listed(['a', 'b', 'c'])).toBe('a, b and c');
    expect(listed(['a', 'b', 'c'], 'or')).toBe('a, b or c');
  });
});
