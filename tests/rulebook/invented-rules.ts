// An invented fact dictionary and invented rules: nothing here is a requirement of any standard.
import { mkdir, mkdtemp, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { CODE_EDITIONS } from '../../src/base/code-editions.ts';
import { Refusal } from '../../src/base/refusal.ts';
import { type FactIndex, parseFactDictionary } from '../../src/rulebook/fact-dictionary.ts';
import { type LoadOptions, loadRulebook } from '../../src/rulebook/load-rulebook.ts';
import type { Condition, Rule } from '../../src/rulebook/rule-schema.ts';
import type { Rulebook } from '../../src/rulebook/rulebook.ts';

export const FACTS = {
  schema: 'cladwright-facts/1',
  facts: [
    {
      id: 'wall.weight_psf',
      type: 'number',
      unit: 'psf',
      meaning: 'the weight of the cladding',
      can_be_unknown: true,
    },
    {
      id: 'wall.limit_psf',
      type: 'number',
      unit: 'psf',
      meaning: 'the most the screws carry',
      can_be_unknown: true,
    },
    { id: 'wall.u_factor', type: 'number', unit: 'Btu/(h·ft²·°F)', meaning: "the wall's U-factor" },
    {
      id: 'wall.ci_r',
      type: 'number',
      unit: 'h·ft²·°F/Btu',
      meaning: 'the R-value of the insulation',
      can_be_unknown: true,
    },
    { id: 'wall.thickness_in', type: 'number', unit: 'in.', meaning: 'the thickness of the insulation' },
    {
      id: 'wall.permeance_perm',
      type: 'number',
      unit: 'perm',
      meaning: 'the permeance of the insulation',
      can_be_unknown: true,
    },
    {
      id: 'wall.cost_usd_per_ft2',
      type: 'number',
      unit: '$/ft²',
      meaning: 'the likely cost',
      can_be_unknown: true,
    },
    { id: 'wall.layers', type: 'number', unit: '', meaning: 'the number of layers' },
    {
      id: 'wall.retarder',
      type: 'text',
      meaning: 'the class of the vapour retarder',
      values: ['none', 'class-iii', 'class-ii', 'class-i'],
      can_be_unknown: true,
    },
    { id: 'wall.cladding', type: 'text', meaning: 'the cladding' },
    { id: 'wall.is_vented', type: 'yes-no', meaning: 'whether the cladding is vented', can_be_unknown: true },
    { id: 'wall.is_new', type: 'yes-no', meaning: 'whether the wall is new' },
  ],
};

export function factIndex(): FactIndex {
  return parseFactDictionary(FACTS, 'facts.json');
}

type RawRule = { [key: string]: unknown };

/** A sound rule; whatever is given replaces a part of it. */
export function rawRule(changes: RawRule = {}): RawRule {
  return {
    id: 'weight.too-heavy',
    title: 'Weight the screws can carry',
    editions: [...CODE_EDITIONS],
    citation: { text: 'invented for a test', provenance: 'proposal' },
    conditions: { all: [{ fact: 'wall.weight_psf', operator: 'greaterThan', value: 10 }] },
    verdict: 'forbid',
    reason: 'The cladding weighs {wall.weight_psf}, more than 10 psf.',
    remedy: 'Choose a lighter cladding.',
    examples: {
      fires: [{ name: 'heavy', facts: { 'wall.weight_psf': 12 } }],
      silent: [{ name: 'at the limit', facts: { 'wall.weight_psf': 10 } }],
      undecided: [{ name: 'weight not known', facts: { 'wall.weight_psf': null } }],
    },
    ...changes,
  };
}

/** A rule straight for the engine. */
export function rule(conditions: Rule['conditions'], applies_when?: { all: Condition[] }): Rule {
  return {
    id: 'test.rule',
    title: 'A rule of a test',
    editions: ['2021'],
    citation: { text: 'invented for a test', provenance: 'proposal' },
    ...(applies_when ? { applies_when } : {}),
    conditions,
    verdict: 'forbid',
    reason: 'The conditions of the test hold.',
    remedy: 'None is needed.',
    examples: { fires: [{ name: 'none', facts: {} }], silent: [{ name: 'none', facts: {} }] },
  };
}

export function rawPack(rules: readonly unknown[], changes: RawRule = {}): RawRule {
  return {
    schema: 'cladwright-rules/1',
    pack: 'test-pack',
    version: '1.0.0',
    concern: 'structure',
    rules,
    ...changes,
  };
}

/** Writes files (objects as JSON, strings as they are) into a new folder; the fact dictionary is there already. */
export async function rulesFolder(files: Readonly<Record<string, unknown>>): Promise<string> {
  const dir = await mkdtemp(join(tmpdir(), 'rulebook-'));
  for (const [name, content] of Object.entries({ 'facts.json': FACTS, ...files })) {
    const path = join(dir, name);
    await mkdir(dirname(path), { recursive: true });
    await writeFile(path, typeof content === 'string' ? content : JSON.stringify(content));
  }
  return dir;
}

export async function rulebookOf(rules: readonly unknown[], options: LoadOptions = {}): Promise<Rulebook> {
  return loadRulebook(await rulesFolder({ 'structure/test.rules.json': rawPack(rules) }), options);
}

/** The message of the refusal that some work ends in. */
export async function refusalOf(work: Promise<unknown>): Promise<string> {
  try {
    await work;
  } catch (error) {
    if (error instanceof Refusal) return error.message;
    throw error;
  }
  throw new Error('nothing was refused');
}
