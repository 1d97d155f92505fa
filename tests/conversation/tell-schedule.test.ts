import { describe, expect, it } from 'vitest';
import { checkUseWords } from '../../src/advice/schedule-words.ts';
import { blocksToText } from '../../src/conversation/blocks.ts';
import { scheduleBlocks } from '../../src/conversation/tell-schedule.ts';
import { sampleWall } from './sample-advice.ts';

const wall = sampleWall(1, 'Stucco over mineral wool');
const told = blocksToText(scheduleBlocks(wall), 2000);

describe('scheduleBlocks', () => {
  it('tells every line in the order of work, with spacing, deciding check and verdict', () => {
    expect(told).toMatch(
      /1 {2}mineral wool board, 3 in\., to every stud: No\. 10 wood screw, 4 in\., 2 in\. cap; trade practice/,
    );
    expect(told).toMatch(
      /2 {2}the mat with its bonded lath, .*8 in\. up, 16 in\. across, corners the same; decided by weight, used to 80 %/,
    );
    expect(told).toContain('a design professional must size it.');
  });

  it('says where no length on the market reaches', () => {
    expect(told).toContain('No. 12 wood screw: no length on the market reaches the 4.67 in. needed');
  });

  it('says what is closer at the corners', () => {
    const [first, second] = wall.fastening_schedule.steps;
    if (!first || !second) throw new Error('the sample has two lines');
    const [field, corner] = second.zones;
    if (!field || !corner) throw new Error('the sample has two zones');
    const zones = [field, { ...corner, spacing_along_in: 6, governing: 'wind' as const, utilisation: null }];
    const steps = [first, { ...second, zones }];
    const text = blocksToText(
      scheduleBlocks({ ...wall, fastening_schedule: { ...wall.fastening_schedule, steps } }),
      2000,
    );
    expect(text).toContain('field 8 in. up, 16 in. across, corners 6 in. up, 16 in. across');
    expect(text).toContain('decided by weight, used to 80 % in the field and wind: no figure at the corners');
  });

  it('asks about the coast, says how to hit the studs, what to buy and what it weighs', () => {
    expect(told).toContain('Coastal: ask whether salt air reaches the site.');
    expect(told).toMatch(/The stud lies 3\.4 in\. behind the head.*3\.6°/);
    expect(told).toMatch(/743 +No\. 10 wood screw, 4 in\./);
    expect(told).toMatch(/2,228 +2 in\. plate washer/);
    expect(told).toMatch(/Wet +at least 12\.7 lb per square foot/);
  });
});

describe('a check that is told besides', () => {
  it('says what holds wet boards where the fasteners alone do not', () => {
    expect(checkUseWords({ check: 'weight-when-wet-with-boards', utilisation: 0.98 })).toBe(
      'wet weight, boards hung on too 98 %',
    );
    expect(checkUseWords({ check: 'weight-when-wet-with-boards', utilisation: 1.01 })).toBe(
      'wet weight, boards hung on too 101 % (so the boards stand on a ledger or track, not on these)',
    );
    expect(checkUseWords({ check: 'wind', utilisation: 1.2 })).toBe('wind 120 %');
  });
});
