import { describe, expect, it } from 'vitest';
import { advise } from '../../../src/advice/advise.ts';
import type { Knowledge } from '../../../src/advice/judge-walls.ts';
import type { Catalogue } from '../../../src/assembly/catalogue.ts';
import { scenarioSchema } from '../../../src/brief/scenario.ts';
import { basisOf } from '../../../src/record/basis.ts';
import { buildRecord, recordDigest } from '../../../src/record/build-record.ts';
import { checkRecord } from '../../../src/record/check/check-record.ts';
import { checkLines } from '../../../src/record/check/check-text.ts';
import { asRecord } from '../../../src/record/read-record.ts';
import type { DecisionRecord } from '../../../src/record/record-schema.ts';
import { Rulebook } from '../../../src/rulebook/rulebook.ts';
import { KNOWLEDGE, TYPICAL } from '../../advice/pipeline.ts';

const scenario = scenarioSchema.parse(TYPICAL);
const PROGRAM = 'a'.repeat(64);
const advice = await advise(scenario, KNOWLEDGE, { top: 2, toolVersion: '0.1.0' });
const record = buildRecord({
  scenario,
  advice,
  created: new Date('2026-03-14T15:09:26.000Z'),
  revision: 1,
  basis: basisOf(KNOWLEDGE, PROGRAM),
});
const first = advice.ranked[0];
if (!first) throw new Error('the typical job has an answer');

const check = (data: DecisionRecord, knowledge: Knowledge = KNOWLEDGE, program = PROGRAM) =>
  checkRecord(asRecord(JSON.parse(JSON.stringify(data)), 'record.json'), {
    knowledge,
    basis: basisOf(knowledge, program),
    toolVersion: '0.1.0',
  });

function withCatalogue(change: Partial<Catalogue>): Knowledge {
  return { ...KNOWLEDGE, catalogue: { ...KNOWLEDGE.catalogue, ...change } };
}

const { prices, claddings } = KNOWLEDGE.catalogue;

describe('checkRecord', () => {
  it('says the same decision when nothing changed, and names nothing', async () => {
    const checked = await check(record);
    expect(checked).toMatchObject({ outcome: 'same', holds: true, is_altered: false, is_unexplained: false });
    expect(checked.changed).toEqual({
      tool_version: null,
      program: false,
      packs: [],
      rules: [],
      tables: [],
      catalogue: [],
      prices: [],
    });
    expect(checkLines(checked).join('\n')).toContain('Still the same decision.');
  });

  it('says the same decision with changed figures after a dearer flashing, and names the price', async () => {
    const dear = { low: 61, likely: 96, high: 151 };
    const checked = await check(
      record,
      withCatalogue({ prices: { ...prices, opening_flashing_usd_each: dear } }),
    );
    expect(checked).toMatchObject({ outcome: 'figures-changed', holds: true, is_unexplained: false });
    expect(checked.changed.prices).toEqual([{ name: 'fasteners and flashing', change: 'changed' }]);
    expect(checked.figures.some(({ path }) => /cost|score/.test(path))).toBe(true);
  });

  it('says a different decision when the cladding is gone, and that the wall is not drawn up any more', async () => {
    const gone = claddings.find(({ label }) => label === first.cladding);
    const checked = await check(
      record,
      withCatalogue({ claddings: claddings.filter((one) => one !== gone) }),
    );
    expect(checked).toMatchObject({ outcome: 'different-decision', holds: false });
    expect(checked.old_decision_today?.state).toBe('not-drawn-up');
    expect(checked.changed.catalogue).toEqual([{ name: `claddings/${gone?.id}`, change: 'gone' }]);
    const text = checkLines(checked).join('\n');
    expect(text).toContain('A different decision today.');
    expect(text).toContain(`catalogue entry claddings/${gone?.id} is gone`);
  });

  it('names the new rule that forbids the old decision', async () => {
    const [pattern] = KNOWLEDGE.rulebook.rules.filter(({ rule }) => rule.verdict === 'forbid');
    if (!pattern) throw new Error('some rule forbids');
    const against = {
      ...pattern,
      rule: {
        ...pattern.rule,
        id: 'energy.no-such-wall',
        editions: ['2021' as const],
        applies_when: undefined,
        conditions: {
          all: [{ fact: 'insulation.thickness_in', operator: 'greaterThan' as const, value: 0 }],
        },
        reason: 'No insulation this year.',
        pass_reason: undefined,
      },
    };
    const { rulebook } = KNOWLEDGE;
    const knowledge = {
      ...KNOWLEDGE,
      rulebook: new Rulebook({ facts: rulebook.facts, limits: rulebook.limits }, rulebook.packs, [
        ...rulebook.rules,
        against,
      ]),
    };
    const checked = await check(record, knowledge);
    expect(checked).toMatchObject({ outcome: 'different-decision', holds: false });
    expect(checked.old_decision_today).toMatchObject({ state: 'forbidden', rules: ['energy.no-such-wall'] });
    expect(checked.changed.rules).toEqual([{ name: 'energy.no-such-wall', change: 'new' }]);
  });

  it('notices a figure that was changed in the file', async () => {
    const { ranked } = record.advice;
    const forged = { ...record.advice, ranked: ranked.map((wall) => ({ ...wall, weight_psf: 1 })) };
    const checked = await check({ ...record, advice: forged });
    expect(checked).toMatchObject({ is_altered: true, holds: false });
    expect(checked.figures).toContainEqual({ path: 'weight_psf', then: 1, now: first.weight_psf });
  });

  it('notices a figure that was changed together with the digest', async () => {
    const { ranked } = record.advice;
    const advice = { ...record.advice, ranked: ranked.map((wall) => ({ ...wall, u_factor: 0.02 })) };
    const forged = { ...record, advice };
    const checked = await check({ ...forged, digest: recordDigest(forged) });
    expect(checked).toMatchObject({ is_altered: false, is_unexplained: true, holds: false });
    expect(checkLines(checked).join('\n')).toContain('wrote a new digest');
  });

  it('takes other source of the program for a reason, and says so', async () => {
    const { ranked } = record.advice;
    const other = { ...record.advice, ranked: ranked.map((wall) => ({ ...wall, score: 0.5 })) };
    const earlier = { ...record, advice: other };
    const checked = await check({ ...earlier, digest: recordDigest(earlier) }, KNOWLEDGE, 'b'.repeat(64));
    expect(checked).toMatchObject({ outcome: 'figures-changed', holds: true, is_unexplained: false });
    expect(checkLines(checked).join('\n')).toContain('built from other source');
  });
});
