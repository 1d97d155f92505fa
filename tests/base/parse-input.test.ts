import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { parseInput, pathText, valueAt } from '../../src/base/parse-input.ts';
import { Refusal } from '../../src/base/refusal.ts';

const schema = z.strictObject({
  project: z.enum(['new', 'retrofit'], 'Choose "new" or "retrofit"').optional(),
  windows: z
    .array(
      z.strictObject({
        width_in: z.number('Give inches, for example 36.').min(6, 'Give 6 in. or more!'),
      }),
    )
    .optional(),
  place: z
    .union(
      [
        z.strictObject({ state: z.string('Give a state.'), county: z.string('Give a county.') }),
        z.strictObject({ zone: z.string('Give a zone.') }),
      ],
      'Give a place.',
    )
    .optional(),
});

function issuesOf(input: unknown, root = '') {
  try {
    parseInput(schema, input, root);
  } catch (error) {
    if (error instanceof Refusal) return error.issues;
    throw error;
  }
  throw new Error('nothing was refused');
}

describe('checked input', () => {
  it('comes back as it was when it fits', () => {
    const input = { project: 'new', windows: [{ width_in: 36 }], place: { zone: '5A' } };
    expect(parseInput(schema, input)).toEqual(input);
  });

  it('is refused with every issue at once, each with path, value and what would be accepted', () => {
    expect(issuesOf({ project: 'old', windows: [{ width_in: 36 }, { width_in: '36' }] })).toEqual([
      { field: 'project', value: '"old"', accepted: 'Choose "new" or "retrofit".' },
      { field: 'windows[1].width_in', value: '"36"', accepted: 'Give inches, for example 36.' },
    ]);
  });

  it('ends each message as a sentence, without a second full stop', () => {
    expect(issuesOf({ windows: [{ width_in: 5 }] })[0]?.accepted).toBe('Give 6 in. or more!');
  });

  it('names an unknown key by its own path, where it stands', () => {
    expect(issuesOf({ windows: [{ width_in: 36, wdith_in: 40 }], colour: 'red' })).toEqual([
      expect.objectContaining({ field: 'windows[0].wdith_in', value: '40' }),
      expect.objectContaining({ field: 'colour', value: '"red"' }),
    ]);
  });

  it('lets the branch of a union speak whose keys were given', () => {
    expect(issuesOf({ place: { state: 'CO', county: 7 } })).toEqual([
      { field: 'place.county', value: '7', accepted: 'Give a county.' },
    ]);
    expect(issuesOf({ place: { zone: 5 } })).toEqual([
      { field: 'place.zone', value: '5', accepted: 'Give a zone.' },
    ]);
    expect(issuesOf({ place: { state: 'CO' } })).toEqual([
      { field: 'place.county', value: '(nothing)', accepted: 'Give a county.' },
    ]);
  });

  it('lets the branch speak that came furthest, where the keys fit both', () => {
    const either = z.union([
      z.strictObject({ a: z.string('text') }),
      z.strictObject({ a: z.array(z.number('number')) }),
    ]);
    expect(() => parseInput(either, { a: [1, 'x'] })).toThrow(/^a\[1\]: "x" is not accepted\. number\.$/);
  });

  it('lets the union itself speak when no branch came anywhere', () => {
    expect(issuesOf({ place: 5 })).toEqual([{ field: 'place', value: '5', accepted: 'Give a place.' }]);
  });

  it('says in plain words which shape is wanted where the schema has no words for it', () => {
    const bare = z.object({ a: z.array(z.number()), b: z.string(), c: z.boolean() });
    expect(() => parseInput(bare, [])).toThrow(/^input: \[\] is not accepted\. Give an object: .*braces/);
    expect(() => parseInput(bare, { a: {}, b: 1, c: 'yes' })).toThrow(
      /a: \{\}.*Give a list.*\n?.*b: 1.*Give a text in quotes.*\n?.*c: "yes".*Give true or false/s,
    );
    expect(() => parseInput(z.object({ a: z.number() }), { a: 'x' })).toThrow(
      /Give a number, without quotes\.$/,
    );
  });

  it('is told once a field, by the first of its faults', () => {
    const three = z.object({ months: z.array(z.number(), 'Give a list').length(3, 'Give three') });
    expect(() => parseInput(three, { months: 'x' })).toThrow(/^months: "x" is not accepted\. Give a list\.$/);
  });

  it('says of a list what its length may be, not that it should be a list', () => {
    const list = z.union([z.array(z.number()).max(2, 'Give at most 2'), z.literal('unknown')], 'Give a list');
    expect(() => parseInput(list, [1, 2, 3])).toThrow(/Give at most 2\.$/);
    expect(() => parseInput(list, 'three')).toThrow(/Give a list\.$/);
  });

  it('puts the name of the file before the path, and names the whole input when there is no path', () => {
    expect(issuesOf({ project: 1 }, 'wall.json')[0]?.field).toBe('wall.json: project');
    expect(issuesOf(null, 'wall.json')[0]?.field).toBe('wall.json');
    expect(issuesOf(null)[0]?.field).toBe('input');
  });
});

describe('paths into unknown data', () => {
  it('read own properties only', () => {
    expect(valueAt({ a: [{ b: 2 }] }, ['a', 0, 'b'])).toBe(2);
    expect(valueAt({}, ['constructor'])).toBeUndefined();
    expect(valueAt({}, ['__proto__', 'toString'])).toBeUndefined();
    expect(valueAt({ a: null }, ['a', 'b'])).toBeUndefined();
  });

  it('are written with dots and brackets', () => {
    expect(pathText(['windows', 0, 'weight_lb'])).toBe('windows[0].weight_lb');
    expect(pathText([0, 'a'])).toBe('[0].a');
  });
});
