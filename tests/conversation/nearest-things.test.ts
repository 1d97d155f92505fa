import { describe, expect, it } from 'vitest';
import { nearestThings } from '../../src/conversation/nearest-things.ts';

describe('what may have been meant', () => {
  it.each([
    ['plywod', 'plywood'],
    ['true stuco', 'true stucco'],
    ['casment windows', 'casement'],
    ['retorfit', 'retrofit'],
    ['triple flangd', 'flanged'],
  ])('is named after a slip of the keyboard: "%s"', (said, name) => {
    expect(nearestThings(said, [])).toContain(`"${name}"`);
  });

  it.each([
    'the wood is kinda old',
    'some bigger',
    'money is no object',
    'plaster walls',
    'we replaced the windows last year',
    'foam',
    'siding',
    'why does nothing work',
    'no',
  ])('is left out where whole words were said: "%s"', (said) => {
    expect(nearestThings(said, ['OSB', 'Plywood'])).toBe('');
  });
});
