import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { parseInput } from '../../src/base/parse-input.ts';
import { resolveBrief } from '../../src/brief/resolve-brief.ts';
import { scenarioSchema } from '../../src/brief/scenario.ts';
import { resolveSite } from '../../src/site/resolve-site.ts';
import { answer, KNOWLEDGE, withCatalogue } from './pipeline.ts';

const FOLDER = fileURLToPath(new URL('../../scenarios/', import.meta.url));
const FILES = readdirSync(FOLDER).filter((name) => name.endsWith('.json'));
/** What is mostly built; the whole market takes twice as long. */
const MARKET = withCatalogue({ builds: KNOWLEDGE.catalogue.builds.filter((b) => b.thickness_in <= 4) });
const claddingOf = (id: string) => KNOWLEDGE.catalogue.claddings.find((c) => id.startsWith(`${c.id}/`));

describe.each(FILES)('the sample %s', async (name) => {
  const scenario = parseInput(scenarioSchema, JSON.parse(readFileSync(`${FOLDER}${name}`, 'utf8')), name);
  // `answer` checks it against the schema of an answer.
  const advice = await answer(scenario, MARKET);
  const { ranked } = advice;
  const excluded = advice.excluded.map(({ title }) => title.replace(/ \(closest:.*/, '').toLowerCase());
  // A cladding is listed as excluded when no wall of it passes.
  const admitted = KNOWLEDGE.catalogue.claddings.filter((c) => !excluded.includes(c.label.toLowerCase()));

  it('judges thousands of walls and admits some of them', () => {
    expect(advice.considered.candidates).toBeGreaterThan(1000);
    expect(advice.considered.admitted).toBeGreaterThan(0);
    expect(ranked.length).toBe(3);
    expect(advice.fallback).toBeNull();
  });

  it('ranks by score', () => {
    expect(ranked.map(({ rank }) => rank)).toEqual([1, 2, 3]);
    for (const [i, { score }] of ranked.slice(1).entries())
      expect(score).toBeLessThanOrEqual(ranked[i]?.score ?? Number.NaN);
  });

  it('shows genuinely different walls: no pair of cladding and insulation twice, another cladding among them', () => {
    const pairs = ranked.map(({ id, insulation }) => `${claddingOf(id)?.id} over ${insulation.id}`);
    expect(new Set(pairs).size).toBe(pairs.length);
    const claddings = new Set(ranked.map(({ cladding }) => cladding));
    expect(claddings.size > 1).toBe(admitted.filter((c) => !c.is_insulated_finish).length > 1);
  });

  it('does not rank a synthetic finish, and shows it for comparison where one passes', () => {
    expect(ranked.some(({ id }) => claddingOf(id)?.is_insulated_finish)).toBe(false);
    expect(advice.comparison !== null).toBe(admitted.some((c) => c.is_insulated_finish));
  });

  it('ranks nothing that a rule forbids, and gives each wall reasons and what it gives up', () => {
    for (const wall of ranked) {
      expect(wall.verdicts.map(({ verdict }) => verdict)).not.toContain('forbid');
      expect(wall.reasons.length).toBeGreaterThan(0);
      expect(wall.gives_up.length).toBeGreaterThan(0);
      expect(wall.gains.length).toBeGreaterThan(0);
      for (const { rule } of wall.reasons) expect(rule).toMatch(/^[a-z-]+\.[a-z0-9-]+$/);
    }
  });

  it('lists a caution for every open question and every rule that warns', () => {
    for (const wall of ranked) {
      const warned = wall.verdicts.filter(({ verdict }) => verdict === 'caution').map(({ rule }) => rule);
      const said = new Set([...wall.cautions, ...advice.cautions].map(({ rule }) => rule));
      for (const rule of warned) expect(said).toContain(rule);
      const isOpen = wall.verdicts.some(({ verdict }) => verdict === 'undecided');
      if (isOpen)
        expect(wall.cautions.some(({ text }) => /not known|agree|confirm|known only/.test(text))).toBe(true);
    }
  });

  it('names for everything excluded the rules against it, their sources and a remedy', () => {
    for (const { because } of advice.excluded) {
      expect(because.length).toBeGreaterThan(0);
      for (const { rule, citation, text, remedy } of because) {
        expect(rule).toMatch(/^[a-z-]+\./);
        for (const words of [citation, text, remedy]) expect(words.length).toBeGreaterThan(4);
      }
    }
  });

  it('excludes some claddings, but none that it ranks', () => {
    expect(admitted.length).toBeLessThan(KNOWLEDGE.catalogue.claddings.length);
    for (const { cladding } of ranked) expect(excluded).not.toContain(cladding.toLowerCase());
  });

  it('lists its assumptions, the months of a stand-in station first, each with whether it could change the answer', async () => {
    const { brief, assumptions } = resolveBrief(scenario);
    const { climate } = await resolveSite(brief.place, brief.code_edition);
    const standsIn = climate && !climate.is_assumption ? [] : ['place.climate'];
    const fields = assumptions.map(({ field }) => field);
    expect(advice.assumptions.map(({ field }) => field)).toEqual([...standsIn, ...fields]);
  });

  it('adds up: layers make the thickness and the resistance of the insulation, ranges are in order', () => {
    for (const wall of ranked) {
      const boards = wall.layers.filter(({ role }) => role === 'insulation');
      const sum = (key: 'thickness_in' | 'r') => boards.reduce((total, layer) => total + layer[key], 0);
      expect(sum('thickness_in')).toBeCloseTo(wall.insulation.thickness_in, 6);
      expect(sum('r')).toBeCloseTo(wall.insulation.r, 1);
      expect(boards).toHaveLength(wall.insulation.layers);
      expect(wall.r_effective * wall.u_factor).toBeCloseTo(1, 1);
      const { low, likely, high } = wall.installed_cost_usd_per_ft2;
      expect(low).toBeLessThanOrEqual(likely);
      expect(likely).toBeLessThanOrEqual(high);
      expect(wall.added_thickness_in).toBeGreaterThan(wall.insulation.thickness_in);
    }
  });

  it('defers to professionals and the local code, and warns of falls, dust and fire', () => {
    const kinds = new Set(advice.cautions.map(({ kind }) => kind));
    expect(kinds).toContain('professional');
    const said = advice.cautions.map(({ text }) => text).join(' ');
    expect(said).toMatch(/licensed|engineer|professional/i);
    expect(said).toMatch(/building official|building department|code/i);
    expect(said).toMatch(/\bfall/i);
    expect(said).toMatch(/dust/i);
    // Of a wall in which nothing burns, its own caution on embers speaks.
    const ofTheFirst = advice.ranked[0]?.cautions.map(({ text }) => text).join(' ');
    expect(`${said} ${ofTheFirst}`).toMatch(/\bfire|burn|embers/i);
  });

  it('warns of lead and asbestos in old walls, and only there', () => {
    const said = advice.cautions.filter(({ text }) => /lead|asbestos/i.test(text) && /asbestos/i.test(text));
    expect(said.length > 0).toBe(scenario.project === 'retrofit');
  });
});
