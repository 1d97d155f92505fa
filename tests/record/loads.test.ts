import { describe, expect, it } from 'vitest';
import type { RecordBlock, TableBlock } from '../../src/record/record-document.ts';
import { deadLoad, schedule, wind } from '../../src/record/sections/loads.ts';
import { FULL_ADVICE } from './fixture-advice.ts';

const [wall] = FULL_ADVICE.ranked;
if (!wall) throw new Error('the fixture ranks a wall');

function table(blocks: readonly RecordBlock[], caption: RegExp): TableBlock {
  const found = blocks.find(
    (block): block is TableBlock => block.kind === 'table' && caption.test(block.caption),
  );
  if (!found) throw new Error(`no table ${caption}`);
  for (const row of found.rows) expect(row.length).toBe(found.columns.length);
  return found;
}

describe('the fastening schedule in the record', () => {
  const blocks = schedule(wall);

  it('has one row for each line, in order', () => {
    const rows = table(blocks, /What fixes what/).rows;
    expect(rows.map((row) => row.slice(0, 3))).toEqual([
      ['1', 'mineral wool board, 3 in.', 'every stud'],
      ['2', 'the mat with its bonded lath', 'every stud'],
    ]);
    expect(rows[1]).toContain('8 in. up, 16 in. across');
    expect(rows[1]).toContain('a design professional must size it');
    // 112.5 in 100 ft² is 113 whole ones.
    expect(rows[1]).toContain('113');
  });

  it('shows every check of both zones with its use and what it decides', () => {
    const rows = table(blocks, /Checks by zone/).rows;
    expect(rows.map((row) => [row[0], row[1], row[2], row[7], row[8]])).toEqual([
      ['2', 'field', '17.4', '80 %', 'decides'],
      ['2', 'corner', '21.5', '80 %', 'decides'],
    ]);
  });

  it('says where no stock length reaches, and asks about the coast', () => {
    const rows = table(blocks, /^Length/).rows;
    expect(rows[1]).toContain('none reaches');
    expect(rows[1]?.at(-1)).toMatch(/^Coastal: ask/);
    expect(rows[0]?.at(-1)).toBe('no sign of one in the answers');
  });

  it('lists what to buy with waste', () => {
    expect(table(blocks, /each by its area/).rows).toEqual([
      ['No. 10 wood screw', '4', '675', '743', '1'],
      ['2 in. plate washer', '', '2,025', '2,228', '2'],
    ]);
  });

  it('has the labour line by line, with the price that pays for it', () => {
    expect(table(blocks, /One person’s time/).rows).toEqual([
      ['1', '675', '0.20', '2.3', '1.1 to 3.9', 'fasteners'],
    ]);
    expect(JSON.stringify(blocks)).toContain('Fastening takes one person about 2.3 h.');
  });

  it('tells a line’s notes with its number', () => {
    expect(JSON.stringify(blocks)).toContain('Line 2: Stop when the washer touches.');
  });
});

describe('loads in the record', () => {
  it('has the wind of both zones, with standard and velocity pressure', () => {
    const zones = table(wind(FULL_ADVICE), /ASCE 7-16, 115 mph, exposure B.*18\.6 psf/);
    expect(zones.rows.map((row) => [row[0], row[5]])).toEqual([
      ['4', '-14.3'],
      ['5', '-17.6'],
    ]);
  });

  it('has the dead load by layer, dry and wet, and says that the wet sum is a lower bound', () => {
    const { rows } = table(deadLoad(wall), /By layer/);
    expect(rows[0]?.slice(0, 3)).toEqual(['mineral wool board', '2.00', 'not known']);
    expect(rows[0]?.[3]).toMatch(/from memory, not verified/);
    expect(rows.at(-1)?.slice(0, 3)).toEqual(['All', '12.10', 'at least 12.70']);
  });
});
