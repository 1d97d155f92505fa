import { describe, expect, it } from 'vitest';
import { type CheckedFile, checkListLines, summaryOf } from '../../../src/record/check/check-list.ts';
import type { CheckedRecord } from '../../../src/record/check/check-record.ts';

const wall = { kind: 'first-choice' as const, id: 'a', title: 'A wall' };

function file(name: string, more: Partial<CheckedRecord> = {}): CheckedFile {
  return { file: name, checked: { ...HOLDS, ...more } };
}

const HOLDS: CheckedRecord = {
  title: 'Mill wall',
  revision: 1,
  status: 'proposed',
  created: '2026-03-14T15:09:26.000Z',
  outcome: 'same',
  is_altered: false,
  is_unexplained: false,
  holds: true,
  decision: { then: wall, now: wall },
  old_decision_today: null,
  figures: [],
  verdicts: [],
  changed: {
    tool_version: null,
    program: false,
    packs: [],
    rules: [],
    tables: [],
    catalogue: [],
    prices: [],
  },
};

const FILES: readonly CheckedFile[] = [
  file('good-1.json'),
  file('good-2.json', { outcome: 'figures-changed' }),
  file('altered-same.json', { is_altered: true, holds: false }),
  file('altered-figures.json', { outcome: 'figures-changed', is_unexplained: true, holds: false }),
  file('altered-other.json', { outcome: 'different-decision', is_altered: true, holds: false }),
  file('other.json', { outcome: 'different-decision', holds: false }),
  { file: 'cut.json', refused: [{ field: 'record', value: '"cut.json"', accepted: 'The file is cut off.' }] },
];

describe('summaryOf', () => {
  it('counts every record in one group, so that the groups add up', () => {
    const { records, hold, passed_over, ...groups } = summaryOf(FILES, 2);
    expect(groups).toEqual({
      same: 1,
      figures_changed: 1,
      different_decision: 1,
      altered: 3,
      unreadable: 1,
    });
    expect(Object.values(groups).reduce((sum, count) => sum + count, 0)).toBe(records);
    expect({ records, hold, passed_over }).toEqual({ records: 7, hold: 2, passed_over: 2 });
  });

  it('counts as the list groups', () => {
    const lines = checkListLines(FILES, 0);
    for (const heading of ['different decision today (1)', 'figures (3)', 'read (1)', 'changed figures (1)'])
      expect(lines.some((line) => line.endsWith(heading))).toBe(true);
    expect(lines.at(-1)).toContain(
      '7 records: 1 the same, 1 with changed figures, 1 decided differently today, 3 altered, 1 unreadable.',
    );
  });
});
