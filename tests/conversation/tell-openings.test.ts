import { describe, expect, it } from 'vitest';
import { blocksToText } from '../../src/conversation/blocks.ts';
import { openingBlocks } from '../../src/conversation/tell-openings.ts';
import { everyWindow } from '../../src/record/sections/openings.ts';
import { SAMPLE_OPENINGS } from '../advice/sample-openings.ts';
import { sampleWall } from './sample-advice.ts';

const wall = { ...sampleWall(1, 'A wall'), openings: SAMPLE_OPENINGS };
const told = blocksToText(openingBlocks(wall), 2000);

describe('the windows of a wall, told', () => {
  it('each with weight, support, verdict, screws and opening', () => {
    expect(told).toContain('3 of 34 x 58 in. casement, triple-glazed, flanged (decides about the buck)');
    expect(told).toContain('Weighs 118 lb, as given.');
    expect(told).toContain('it carries, used to 15 % by weight');
    expect(told).toContain('6 in each jamb, 4 in sill and head each');
    expect(told).toContain('a buck inside (panel box) would leave a unit of 32-1/2 x 56-1/4 in.');
  });
  it('one that stands apart with the reason and its own support', () => {
    expect(told).toContain('Weighs about 235 lb (190 to 300), worked out');
    expect(told).toContain(
      'Too large for the others’ buck. Support of its own: engineered brackets; an engineer decides.',
    );
    expect(told).toMatch(/1 of 64 x 60 in\..*: the same order, but\n {2}- Brackets set/);
  });
  it('asks about a weight that cannot be right', () => {
    expect(told).toContain('Is 235 lb right?');
  });
  it('where they sit, what must not touch, and how one is replaced later, each once', () => {
    for (const words of ['3-1/2 in. outside the framing', 'No solvents.', 'A removable trim.'])
      expect(told.split(words)).toHaveLength(2);
  });
  it('not at all where there is none', () => {
    expect(openingBlocks({ ...wall, openings: [] })).toEqual([]);
    expect(everyWindow({ ...wall, openings: [] })).toEqual([]);
  });
});

describe('the same windows in the record', () => {
  const text = JSON.stringify(everyWindow(wall));
  it('stand under headings of their own, with both orders of flashing', () => {
    expect(text).toContain('Every window');
    expect(text).toContain('used to 15 % by weight');
    expect(text).toContain('Flashing in its own order: 1 of 64 x 60 in.');
    expect(text).toContain('Brackets set');
  });
});
