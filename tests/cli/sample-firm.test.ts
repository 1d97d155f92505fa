import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { parseInput } from '../../src/base/parse-input.ts';
import { scenarioSchema } from '../../src/brief/scenario.ts';
import { changesSchema, DECIDES_OTHERWISE } from '../../src/firm/changes-schema.ts';
import { matrixSchema } from '../../src/firm/matrix-schema.ts';
import { ROOT, runProgram } from './run-program.ts';

const HOUSE = ['--house-rules', 'scenarios/firm/house.rules.json'];
const PROJECTS = 'scenarios/firm/projects';
const FILES = readdirSync(join(ROOT, PROJECTS)).sort();

describe('the invented firm', () => {
  it('has twelve projects, each with its own name and nothing left open but what is stated', () => {
    const read = (file: string) =>
      parseInput(scenarioSchema, JSON.parse(readFileSync(join(ROOT, PROJECTS, file), 'utf8')), file);
    expect(FILES).toHaveLength(12);
    expect(new Set(FILES.map((file) => read(file).name)).size).toBe(12);
  });

  it('has house rules whose examples hold', async () => {
    const { code, stdout } = await runProgram(['rules', 'check', ...HOUSE]);
    expect(code).toBe(0);
    expect(stdout).toContain('no problem found');
  });

  it('covers its matrix by a few assemblies, proved smallest, none of which its house rules forbid', async () => {
    const { code, stdout } = await runProgram([
      'matrix',
      'scenarios/firm/firm.json',
      '--zones',
      '2A,4C,6A',
      '--finishes',
      'cement-stucco',
      ...HOUSE,
      '--json',
    ]);
    const { cells, standard, assemblies, rules } = matrixSchema.parse(JSON.parse(stdout));
    const passing = cells.filter(({ first_choice }) => first_choice !== null);
    expect(code).toBe(passing.length < cells.length ? 1 : 0);
    expect(cells).toHaveLength(9);
    expect(passing.length).toBeGreaterThan(5);
    expect(standard).toMatchObject({ cells_covered: passing.length, is_proved: true });
    expect(standard.assemblies.length).toBeLessThan(passing.length);
    expect(rules.packs.filter(({ house }) => house).map(({ name }) => name)).toEqual(['quoin-ferry-house']);
    for (const { id } of assemblies) expect(id).not.toMatch(/\/no-buck$/);
    for (const { standard: wall } of passing) {
      expect(wall?.u_factor).toBeLessThanOrEqual((wall?.max_u_factor ?? 0) + 5e-5);
      expect(['u-factor', 'both']).toContain(wall?.energy_route);
    }
  }, 120_000);

  it('decides some projects otherwise under the 2024 edition, each with a reason, and ends with 1', async () => {
    const { code, stdout } = await runProgram([
      'changes',
      PROJECTS,
      '--from-edition',
      '2018',
      '--to-edition',
      '2024',
      ...HOUSE,
      '--json',
    ]);
    expect(code).toBe(1);
    const { projects, decisions_changed } = changesSchema.parse(JSON.parse(stdout));
    expect(projects.map(({ file }) => file)).toEqual(FILES.map((file) => join(PROJECTS, file)));
    const changed = projects.filter(({ outcome }) => DECIDES_OTHERWISE.has(outcome));
    expect(decisions_changed).toBe(changed.length);
    expect(changed.length).toBeGreaterThan(0);
    expect(changed.length).toBeLessThan(12);
    for (const { why } of changed) {
      expect(why[0]?.kind).toMatch(/^(?:rules-it-out|no-longer-ruled-out|score)$/);
      expect(why.some(({ kind }) => kind === 'limit')).toBe(true);
    }
    // County tables of the 2015 and 2021 editions (PNNL-33270): three of the places lie in another zone.
    const moved = projects.filter(({ before, after }) => before.climate_zone !== after.climate_zone);
    expect(moved.map(({ name, before, after }) => [name, before.climate_zone, after.climate_zone])).toEqual([
      ['Mill Race duplexes', '4A', '3A'],
      ['Bracken Hollow house', '5A', '4A'],
      ['Larch Terrace', '6A', '5A'],
    ]);
  }, 120_000);
});
