import { readFileSync } from 'node:fs';
import { gunzipSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { parseOlder } from '../../src/record/fill-missing.ts';
import { asRecord } from '../../src/record/read-record.ts';
import { recordHtml } from '../../src/record/record-html.ts';
import { recordMarkdown } from '../../src/record/record-markdown.ts';

/** A record as the first format had it, written by the program of that day and never touched since. */
const FORMAT_1: unknown = JSON.parse(
  gunzipSync(readFileSync(new URL('fixtures/record-format-1.json.gz', import.meta.url))).toString('utf8'),
);

describe('a record of the first format', () => {
  it('still opens, fits its digest and can be drawn', () => {
    const { record, isAltered } = asRecord(FORMAT_1, 'old.json');
    expect(isAltered).toBe(false);
    expect(record.schema).toBe('cladwright-record/1');
    expect(record.basis).toBeUndefined();
    expect(record.advice.ranked[0]?.cladding).toBe('three-coat cement stucco on metal lath over furring');
    for (const page of [recordHtml(record), recordMarkdown(record)]) {
      expect(page).toContain('Alder Street house, whole retrofit');
      expect(page).toContain('No. 12 wood screw');
      expect(page).not.toContain('NaN');
      expect(page).not.toContain('e+300');
    }
  });
});

const fill = (schema: z.ZodType, data: unknown) => parseOlder(schema, data, (filled) => filled);

describe('parseOlder', () => {
  const schema = z.object({
    name: z.string(),
    later_list: z.array(z.string()),
    later_figure: z.number().nullable(),
    later_word: z.string(),
    later_number: z.number(),
    later_extra: z.string().optional(),
    later_group: z.object({ notes: z.array(z.string()), by_name: z.record(z.string(), z.number()) }),
    rows: z.array(z.object({ id: z.string(), later: z.string().nullable() })),
  });

  it('reads what an older program could not write as not known, down into lists', () => {
    expect(fill(schema, { name: 'wall', rows: [{ id: 'a' }], other: 1 })).toEqual({
      name: 'wall',
      other: 1,
      later_list: [],
      later_figure: null,
      later_word: 'not recorded',
      later_number: Number.NaN,
      later_group: { notes: [], by_name: {} },
      rows: [{ id: 'a', later: null }],
    });
  });

  it('changes nothing that is there, not even what is wrong', () => {
    const data = { name: 7, later_list: 'x', later_figure: 1, rows: 'none' };
    expect(fill(schema, data)).toMatchObject(data);
  });

  it.each([z.boolean(), z.enum(['a', 'b'])])('makes up no choice and no yes', (inner) => {
    const filled = fill(z.object({ inner }), {});
    expect(filled).toEqual({});
    expect(z.object({ inner }).safeParse(filled).success).toBe(false);
  });
});
