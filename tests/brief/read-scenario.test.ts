import { describe, expect, it } from 'vitest';
import { Refusal } from '../../src/base/refusal.ts';
import { readScenario } from '../../src/brief/read-scenario.ts';

const PLACE = { climate_zone: '5B' };

function issuesOf(data: unknown, root = '') {
  try {
    readScenario(data, root);
  } catch (error) {
    if (error instanceof Refusal) return error.issues;
    throw error;
  }
  return [];
}

describe('a document that is no scenario', () => {
  it.each([
    ['cladwright-advice/1', 'This is an answer, as "advise --json" writes it.'],
    ['cladwright-record/2', 'This is a decision record, which'],
    ['cladwright-batch-short/1', 'This is a line that "batch --short" wrote.'],
    ['cladwright-batch-error/1', 'This is a line that "batch" wrote for'],
    ['cladwright-rules/1', 'This is a pack of rules, which "--house-rules" takes.'],
    ['cladwright-firm/1', 'This is a firm’s file, which "matrix" takes.'],
    ['cladwright-tostring/1', 'This is another file of this program.'],
    ['cladwright-scenario/2', 'This is written for a later version of the program; this one reads'],
    ['cladwright-scenario/0', 'There is no such version of it.'],
    ['https://example.org/other', 'That is no schema of this program.'],
    [7, 'That is no schema of this program.'],
    [null, 'That is no schema of this program.'],
  ])('says what it is, and what would do, in one sentence whatever its keys: %s', (schema, words) => {
    const issues = issuesOf({ schema, ranked: [], place: 7, also: 1 }, 'a.json');
    expect(issues).toHaveLength(1);
    expect(issues[0]).toMatchObject({ field: 'a.json: schema', value: JSON.stringify(schema) });
    expect(issues[0]?.accepted).toContain(words);
    expect(issues[0]?.accepted).toContain('"cladwright-scenario/1"');
  });

  it('is told as such without a schema too, where nothing looks like a scenario', () => {
    expect(issuesOf({ name: 'x', version: '1', license: 'y' })).toEqual([
      {
        field: 'input',
        value: 'this document',
        accepted: expect.stringContaining('neither "schema" nor "place"'),
      },
    ]);
  });

  it.each([
    ['a scenario whose schema was left out', { place: PLACE, walls: 1 }, ['schema', 'walls']],
    ['a scenario without its place', { schema: 'cladwright-scenario/1', walls: 1 }, ['place', 'walls']],
    ['nothing at all', {}, ['schema', 'place']],
    ['a list', [1], ['input']],
  ])('is not what this is, and every fault of it is told: %s', (_, data, fields) => {
    expect(issuesOf(data).map(({ field }) => field)).toEqual(fields);
  });

  it('is not what a whole scenario is', () => {
    expect(issuesOf({ schema: 'cladwright-scenario/1', place: PLACE })).toEqual([]);
  });
});
