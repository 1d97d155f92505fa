import { describe, expect, it } from 'vitest';
import { decideColour } from '../../src/cli/colour.ts';

const plain = { TERM: 'xterm' };

describe('colour', () => {
  it.each([
    ['a terminal has it', plain, null, true, 'basic'],
    ['a richer terminal has more', { TERM: 'xterm-256color' }, null, true, 'full'],
    ['a pipe has none', plain, null, false, 'none'],
    ['a dumb terminal has none', { TERM: 'dumb' }, null, true, 'none'],
    ['NO_COLOR puts it off', { ...plain, NO_COLOR: '1' }, null, true, 'none'],
    ['an empty NO_COLOR does not', { ...plain, NO_COLOR: '' }, null, true, 'basic'],
    ['NO_COLOR outweighs FORCE_COLOR', { ...plain, NO_COLOR: '1', FORCE_COLOR: '3' }, null, true, 'none'],
    ['FORCE_COLOR outweighs a pipe', { ...plain, FORCE_COLOR: '1' }, null, false, 'basic'],
    ['FORCE_COLOR outweighs a dumb terminal', { TERM: 'dumb', FORCE_COLOR: '2' }, null, true, 'full'],
    ['FORCE_COLOR=0 puts it off', { ...plain, FORCE_COLOR: '0' }, null, true, 'none'],
    ['the flag outweighs NO_COLOR', { ...plain, NO_COLOR: '1' }, 'always', false, 'basic'],
    ['the flag outweighs FORCE_COLOR', { ...plain, FORCE_COLOR: '3' }, 'never', true, 'none'],
  ] as const)('%s', (_what, env, flag, isTTY, mode) => {
    expect(decideColour(env, { colour: flag }, isTTY)).toBe(mode);
  });
});
