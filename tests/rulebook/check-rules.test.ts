import { describe, expect, it } from 'vitest';
import { checkRules } from '../../src/rulebook/check-rules.ts';
import { rawRule, rulebookOf } from './invented-rules.ts';

const messages = async (...rules: readonly unknown[]) =>
  (await checkRules(await rulebookOf(rules))).problems.map((p) => `${p.rule}: ${p.message}`);

const heavy = { name: 'heavy', facts: { 'wall.weight_psf': 12 } };
const light = { name: 'light', facts: { 'wall.weight_psf': 9 } };
const unknown = { name: 'not known', facts: { 'wall.weight_psf': null } };

describe('checking rules', () => {
  it('counts what it looked at and finds nothing wrong with a sound rule', async () => {
    const result = await checkRules(await rulebookOf([rawRule()]));
    expect(result).toEqual({ packs: 1, rules: 1, facts: 12, examples: 3, problems: [] });
  });

  it('takes "does not apply" for silent too', async () => {
    const rule = rawRule({
      applies_when: { all: [{ fact: 'wall.is_new', operator: 'equal', value: true }] },
      examples: {
        fires: [{ name: 'new', facts: { 'wall.weight_psf': 12, 'wall.is_new': true } }],
        silent: [{ name: 'old', facts: { 'wall.weight_psf': 12, 'wall.is_new': false } }],
      },
    });
    expect(await messages(rule)).toEqual([]);
  });

  it.each([
    ['fires', light, 'it applies and is kept'],
    ['fires', unknown, 'it is undecided'],
    ['silent', heavy, 'it fires'],
    ['silent', unknown, 'it is undecided'],
    ['undecided', heavy, 'it fires'],
    ['undecided', light, 'it applies and is kept'],
  ])('tells an example that stands wrongly under "%s"', async (kind, example, what) => {
    const examples = { fires: [heavy], silent: [light], undecided: [unknown] };
    const rule = rawRule({ examples: { ...examples, [kind]: [...examples[kind as 'fires'], example] } });
    expect(await messages(rule)).toEqual([
      `weight.too-heavy: example "${example.name}" stands under "${kind}", but ${what}.`,
    ]);
  });

  it('does not take a fired "undecided" verdict for facts that are missing', async () => {
    const examples = { fires: [heavy], silent: [light], undecided: [heavy] };
    expect(await messages(rawRule({ verdict: 'undecided', examples }))).toHaveLength(1);
  });

  it.each([
    [{}, 'wall.weight_psf is missing'],
    [{ 'wall.weight_psf': 12, 'wall.layers': 1 }, "wall.layers is given, but the rule doesn't read it"],
    [{ 'wall.weight_psf': 12, 'wall.leyers': 1 }, 'wall.leyers is no fact'],
    [{ 'wall.weight_psf': '12' }, 'wall.weight_psf: "12" is not accepted'],
  ])('wants exactly the facts that the rule reads: %j', async (facts, what) => {
    const rule = rawRule({ examples: { fires: [heavy, { name: 'odd one', facts }], silent: [light] } });
    const found = await messages(rule);
    expect(found).toHaveLength(1);
    expect(found[0]).toContain(`example "odd one": ${what}`);
  });

  it('calls a rule unreachable when applies_when and conditions can not hold together', async () => {
    const rule = rawRule({
      applies_when: { all: [{ fact: 'wall.weight_psf', operator: 'lessThan', value: 5 }] },
      examples: { fires: [heavy], silent: [light] },
    });
    expect(await messages(rule)).toEqual([
      'weight.too-heavy: example "heavy" stands under "fires", but it does not apply.',
      'weight.too-heavy: unreachable: none of its examples makes it fire.',
    ]);
  });

  it('finds a duplicate whatever the order of its members', async () => {
    const isNew = { fact: 'wall.is_new', operator: 'equal', value: true };
    const retarder = (value: readonly string[]) => ({ fact: 'wall.retarder', operator: 'in', value });
    const facts = { 'wall.is_new': true, 'wall.retarder': 'none' };
    const examples = {
      fires: [{ name: 'both', facts }],
      silent: [{ name: 'not new', facts: { ...facts, 'wall.is_new': false } }],
    };
    const one = rawRule({
      id: 'a.one',
      conditions: { all: [isNew, retarder(['none', 'class-i'])] },
      examples,
    });
    const two = {
      ...one,
      id: 'a.two',
      conditions: { all: [retarder(['class-i', 'none']), { all: [isNew] }] },
    };
    expect(await messages(one, two)).toEqual([
      'a.two: duplicate: the same conditions and verdict as a.one in structure/test.rules.json.',
    ]);
    expect(await messages(one, { ...two, verdict: 'caution' })).toEqual([]);
    expect(await messages(one, { ...two, conditions: { any: two.conditions.all }, examples })).toHaveLength(
      1,
    );
    expect(await messages({ ...one, editions: ['2018'] }, { ...two, editions: ['2024'] })).toEqual([]);
  });

  it('finds two rules that forbid and prefer on the same facts, and tells the pair once', async () => {
    const prefer = rawRule({
      id: 'weight.solid',
      verdict: 'prefer',
      conditions: { any: [{ fact: 'wall.weight_psf', operator: 'greaterThanInclusive', value: 11 }] },
      examples: { fires: [{ name: 'solid', facts: { 'wall.weight_psf': 11 } }], silent: [light] },
    });
    expect(await messages(rawRule(), prefer)).toEqual([
      'weight.solid: contradiction: on the facts of example "solid" this rule says prefer, and weight.too-heavy says forbid.',
    ]);
    expect(await messages(rawRule({ editions: ['2018'] }), { ...prefer, editions: ['2021'] })).toEqual([]);
    expect(await messages(rawRule(), { ...prefer, verdict: 'caution' })).toEqual([]);
  });
});
