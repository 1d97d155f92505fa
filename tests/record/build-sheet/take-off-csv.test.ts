import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { csvCell, takeOffCsv } from '../../../src/record/build-sheet/take-off-csv.ts';
import type { TakeOffLine } from '../../../src/record/build-sheet/take-off-line.ts';
import { HOSTILE_NAMES } from '../hostile-names.ts';

const line = (item: string): TakeOffLine => ({
  group: 'cladding',
  item,
  net: 1.5,
  unit: 'ft',
  waste_percent: 10,
  order: null,
  order_unit: 'ft',
  how: 'by hand',
  provenance: 'common-practice',
});

/** Reads CSV as RFC 4180 has it: section 2, rules 1 to 7. */
function readCsv(text: string): string[][] {
  const rows: string[][] = [[]];
  const cell = /("(?:[^"]|"")*"|[^",\r\n]*)(,|\r\n|$)/gy;
  for (let match = cell.exec(text); match && cell.lastIndex <= text.length; match = cell.exec(text)) {
    const [, raw = '', end] = match;
    rows.at(-1)?.push(raw.startsWith('"') ? raw.slice(1, -1).replaceAll('""', '"') : raw);
    if (end === '\r\n') rows.push([]);
    if (end === '' || cell.lastIndex >= text.length) break;
  }
  return rows.filter((row) => row.length > 0);
}

describe('takeOffCsv', () => {
  it('has a head line, CRLF ends and an empty cell for what must be measured', () => {
    expect(takeOffCsv([line('1x4, "clear"')])).toBe(
      'group,item,net,unit,waste_percent,order,order_unit,how_counted,provenance\r\n' +
        'cladding,"1x4, ""clear""",1.5,ft,10,,ft,by hand,common-practice\r\n',
    );
  });

  it.each(['=1+1', '+1', '-1', '@SUM(A1)', '=HYPERLINK("x")', '\t=1', " =cmd|' /C calc'!A0"])(
    'never begins a cell with a formula: %j',
    (item) => {
      const [, row] = readCsv(takeOffCsv([line(item)]));
      expect(row?.[1]).toMatch(/^'/);
    },
  );

  it.each(HOSTILE_NAMES)('keeps rows and columns whatever a name holds: %j', (item) => {
    const rows = readCsv(takeOffCsv([line(item), line('next')]));
    expect(rows.map((row) => row.length)).toEqual([9, 9, 9]);
    expect(rows[2]?.[1]).toBe('next');
  });

  it('is read back as it was, but for the guard', () => {
    fc.assert(
      fc.property(fc.stringMatching(/^[a-z0-9 ,"']*$/), (text) => {
        const [row] = readCsv(`${csvCell(text)},x\r\n`);
        expect(row?.[0]).toBe(text.replace(/\s+/g, ' ').trim());
      }),
    );
  });
});
