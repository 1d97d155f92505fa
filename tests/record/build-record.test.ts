import { createHash } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import { buildRecord, recordDigest } from '../../src/record/build-record.ts';
import { recordSchema } from '../../src/record/record-schema.ts';
import { CREATED, FULL_ADVICE, SCENARIO } from './fixture-advice.ts';

const input = { scenario: SCENARIO, advice: FULL_ADVICE, created: CREATED, revision: 1 };

describe('buildRecord', () => {
  it('holds everything that was asked and answered, unsigned and proposed', () => {
    const record = buildRecord(input);
    expect(record).toMatchObject({
      schema: 'cladwright-record/2',
      schema_version: 2,
      tool_version: '0.1.0',
      created: '2026-03-14T15:09:26.000Z',
      revision: 1,
      status: 'proposed',
      title: 'Quarry Lane duplex, north wall',
      sign_off: { owner: null, builder: null, designer: null },
    });
    expect(record.scenario).toEqual(SCENARIO);
    expect(record.advice).toEqual(FULL_ADVICE);
    expect(record).not.toHaveProperty('supersedes');
  });

  it('is the same for the same input, and of its own schema after a round trip through JSON', () => {
    const record = buildRecord(input);
    expect(buildRecord(input)).toEqual(record);
    expect(recordSchema.parse(JSON.parse(JSON.stringify(record)))).toEqual(record);
  });

  it('takes its title from the answer when the wall has no name', () => {
    const { name: _, ...unnamed } = SCENARIO;
    const advice = { ...FULL_ADVICE, name: 'Unnamed wall' };
    expect(buildRecord({ ...input, scenario: unnamed, advice }).title).toBe('Unnamed wall');
    expect(buildRecord({ ...input, scenario: { ...SCENARIO, name: '  ' }, advice }).title).toBe(
      'Unnamed wall',
    );
  });

  it('names the record that it replaces', () => {
    const supersedes = { file: 'quarry-lane.json', digest: 'c'.repeat(64) };
    expect(buildRecord({ ...input, supersedes }).supersedes).toEqual(supersedes);
  });

  it('fails on an answer with a figure that is no number, rather than saving null for it', () => {
    const advice = structuredClone(FULL_ADVICE);
    const first = advice.ranked[0];
    if (first) first.u_factor = Number.NaN;
    expect(() => buildRecord({ ...input, advice })).toThrow(/u_factor/);
  });
});

describe('recordDigest', () => {
  it('is the SHA-256 of the canonical JSON of everything but the digest', () => {
    const expected = createHash('sha256').update('{"a":[1,2.5],"b":"ö"}').digest('hex');
    expect(recordDigest({ b: 'ö', digest: 'whatever', a: [1, 2.5] })).toBe(expected);
  });

  // FIPS 180-4 algorithm; expected value worked out with coreutils: printf '{}' | sha256sum
  it('agrees with an independent SHA-256', () => {
    expect(recordDigest({})).toBe('44136fa355b3678a1146ad16f7e8649e94fb4fc21fe77e8310c060f61caaff8a');
  });

  it('changes with any figure, name, date or signature', () => {
    const record = buildRecord(input);
    expect(recordDigest(record)).toBe(record.digest);
    const changed = [
      { ...record, title: 'another' },
      { ...record, created: '2026-03-15T15:09:26.000Z' },
      { ...record, sign_off: { ...record.sign_off, owner: { name: 'A. Sample', date: '2026-03-16' } } },
      { ...record, advice: { ...record.advice, considered: { candidates: 4212, admitted: 319 } } },
      { ...record, added_later: true },
    ];
    const digests = new Set([record.digest, ...changed.map(recordDigest)]);
    expect(digests.size).toBe(changed.length + 1);
  });
});
