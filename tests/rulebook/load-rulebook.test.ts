import { createHash } from 'node:crypto';
import { mkdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { loadRulebook } from '../../src/rulebook/load-rulebook.ts';
import { FACTS, rawPack, rawRule, refusalOf, rulebookOf, rulesFolder } from './invented-rules.ts';

const leaf = (fact: string, operator: string, value: unknown) => ({ fact, operator, value });
const withLeaf = (fact: string, operator: string, value: unknown) =>
  rawRule({ conditions: { all: [leaf(fact, operator, value)] } });
const refusedLeaf = (fact: string, operator: string, value: unknown) =>
  refusalOf(rulebookOf([withLeaf(fact, operator, value)]));

const AT = 'structure/test.rules.json, rule "weight.too-heavy": conditions.all[0]';

describe('loading a rulebook', () => {
  it('reads every pack below the folder in path order, with rules sorted by id', async () => {
    const dir = await rulesFolder({
      'b/second.rules.json': rawPack([rawRule({ id: 'b.one' })], { pack: 'second' }),
      'a/deep/first.rules.json': rawPack([rawRule({ id: 'c.one' }), rawRule({ id: 'a.one' })], {
        pack: 'first',
      }),
      'a/limits.table.json': { anything: true },
      'a/notes.json': 'not even JSON',
    });
    const rulebook = await loadRulebook(dir);
    expect(rulebook.packs.map((p) => [p.file, p.name, p.rules])).toEqual([
      ['a/deep/first.rules.json', 'first', 2],
      ['b/second.rules.json', 'second', 1],
    ]);
    expect(rulebook.rules.map((r) => r.rule.id)).toEqual(['a.one', 'b.one', 'c.one']);
  });

  it("gives each pack the SHA-256 of its file's bytes", async () => {
    const dir = await rulesFolder({ 'x.rules.json': rawPack([rawRule()]) });
    const bytes = await readFile(join(dir, 'x.rules.json'));
    const [pack] = (await loadRulebook(dir)).packs;
    expect(pack?.sha256).toBe(createHash('sha256').update(bytes).digest('hex'));
    expect(pack?.version).toBe('1.0.0');
  });

  it('tells every error of every pack at once', async () => {
    const dir = await rulesFolder({
      'a.rules.json': rawPack([
        rawRule({ id: 'a.x', reason: 'See {wall.nothing} about it.' }),
        rawRule({ verdict: 'maybe' }),
      ]),
      'b.rules.json': rawPack([withLeaf('wall.weight_psf', 'above', 3)]),
    });
    const message = await refusalOf(loadRulebook(dir));
    expect(message).toContain('a.rules.json, rule "a.x": reason');
    expect(message).toContain('a.rules.json, rule "weight.too-heavy": verdict');
    expect(message).toContain('b.rules.json, rule "weight.too-heavy": conditions.all[0].operator');
  });

  it('refuses a folder without packs', async () => {
    expect(await refusalOf(loadRulebook(await rulesFolder({})))).toContain('at least one .rules.json');
  });
});

describe('comparisons that do not fit their fact are refused with file, rule and path', () => {
  it('names the nearest fact for an unknown one', async () => {
    const message = await refusedLeaf('wall.weight_pfs', 'lessThan', 3);
    expect(message).toContain(`${AT}.fact: "wall.weight_pfs"`);
    expect(message).toContain('Did you mean "wall.weight_psf"');
  });

  it('names the nearest operator for an unknown one', async () => {
    const message = await refusedLeaf('wall.weight_psf', 'lessthan', 3);
    expect(message).toContain(`${AT}.operator: "lessthan"`);
    expect(message).toContain('Did you mean "lessThan"');
  });

  it.each([
    ['an order operator on a text', 'wall.retarder', 'lessThan', 'none', '.operator'],
    ['an order operator on a yes-no', 'wall.is_vented', 'greaterThanInclusive', true, '.operator'],
    ['"in" on a yes-no', 'wall.is_vented', 'in', [true], '.operator'],
    ['a number against a string', 'wall.weight_psf', 'lessThan', '12 in', '.value'],
    ['a number against a yes-no', 'wall.weight_psf', 'equal', true, '.value'],
    ['a text against a number', 'wall.cladding', 'equal', 3, '.value'],
    ['a yes-no against a string', 'wall.is_vented', 'equal', 'true', '.value'],
    ['a text outside its list', 'wall.retarder', 'equal', 'class-iv', '.value'],
    ['a list item outside the list', 'wall.retarder', 'in', ['none', 'class-iv'], '.value[1]'],
    ['"in" without a list', 'wall.retarder', 'in', 'none', '.value'],
    ['"notIn" against another fact', 'wall.retarder', 'notIn', { fact: 'wall.cladding' }, '.value'],
    ['"equal" with a list', 'wall.retarder', 'equal', ['none'], '.value'],
    ['another fact that is unknown', 'wall.weight_psf', 'lessThan', { fact: 'wall.limit' }, '.value.fact'],
    ['another fact of another type', 'wall.weight_psf', 'equal', { fact: 'wall.retarder' }, '.value.fact'],
    [
      'another fact in another unit',
      'wall.weight_psf',
      'lessThan',
      { fact: 'wall.thickness_in' },
      '.value.fact',
    ],
    [
      'a fact compared with itself',
      'wall.weight_psf',
      'lessThan',
      { fact: 'wall.weight_psf' },
      '.value.fact',
    ],
    ['an empty list', 'wall.retarder', 'in', [], '.value'],
    ['null', 'wall.weight_psf', 'equal', null, '.value'],
    ['an infinite number', 'wall.weight_psf', 'lessThan', Number.POSITIVE_INFINITY, '.value'],
  ])('%s', async (_, fact, operator, value, path) => {
    expect(await refusedLeaf(fact, operator, value)).toContain(`${AT}${path}: `);
  });

  it('accepts the limit, list and other-fact forms that do fit', async () => {
    const rules = [
      withLeaf('wall.weight_psf', 'lessThanInclusive', { fact: 'wall.limit_psf' }),
      withLeaf('wall.layers', 'in', [1, 2]),
      withLeaf('wall.cladding', 'notEqual', 'anything at all'),
      withLeaf('wall.is_vented', 'notEqual', false),
    ].map((raw, i) => ({ ...raw, id: `fits.r${i}` }));
    expect((await rulebookOf(rules)).rules).toHaveLength(4);
  });
});

describe('condition trees that could pass unseen are refused', () => {
  const refusedTree = (tree: unknown, key = 'conditions') =>
    refusalOf(rulebookOf([rawRule({ [key]: tree })]));
  const heavy = leaf('wall.weight_psf', 'greaterThan', 10);

  it.each([
    ['an empty all', { all: [] }, 'conditions.all'],
    ['an empty any', { any: [] }, 'conditions.any'],
    ['an empty group further in', { all: [heavy, { any: [] }] }, 'conditions.all[1].any'],
    ['a list under not', { all: [{ not: [heavy] }] }, 'conditions.all[0].not'],
    ['two groups side by side', { all: [heavy], any: [heavy] }, 'conditions.any'],
    ['a path into a fact', { all: [{ ...heavy, path: '$..x' }] }, 'conditions.all[0].path'],
    ['a named condition of the engine', { all: [{ condition: 'elsewhere' }] }, 'conditions.all[0].condition'],
    ['a priority', { all: [{ ...heavy, priority: 10 }] }, 'conditions.all[0].priority'],
    [
      'a comparison without a value',
      { all: [{ fact: 'wall.weight_psf', operator: 'equal' }] },
      'conditions.all[0].value',
    ],
    ['a comparison instead of a group', heavy, 'conditions'],
    ['nothing at all', undefined, 'conditions'],
    ['not at the top', { not: heavy }, 'conditions'],
    ['a text instead of a tree', 'wall.weight_psf > 10', 'conditions'],
  ])('%s', async (_, tree, path) => {
    expect(await refusedTree(tree)).toContain(`rule "weight.too-heavy": ${path}: `);
  });

  it('an empty group in applies_when', async () => {
    expect(await refusedTree({ all: [] }, 'applies_when')).toContain('applies_when.all: []');
  });

  const nested = (levels: number): unknown => (levels === 0 ? heavy : { all: [nested(levels - 1)] });

  it('six groups inside one another are the most', async () => {
    expect((await rulebookOf([rawRule({ conditions: nested(6) })])).rules).toHaveLength(1);
    expect(await refusedTree(nested(7))).toContain('Nest at most 6 groups');
  });

  it('nesting without end neither hangs nor overflows', async () => {
    const deep = `{"all":[`.repeat(50_000) + JSON.stringify(heavy) + ']}'.repeat(50_000);
    const text = JSON.stringify(rawPack([rawRule({ conditions: 'HERE' })])).replace('"HERE"', deep);
    const dir = await rulesFolder({ 'deep.rules.json': text });
    expect(await refusalOf(loadRulebook(dir))).toContain('deep.rules.json: ');
  });

  it.each(['__proto__', 'constructor', 'prototype'])('the key %s anywhere', async (key) => {
    const places = [
      { conditions: { all: [JSON.parse(`{"${key}": {"fact": "wall.weight_psf"}}`)] } },
      { examples: { fires: [{ name: 'heavy', facts: JSON.parse(`{"${key}": 1}`) }], silent: [] } },
    ];
    for (const place of places) {
      const message = await refusalOf(rulebookOf([rawRule(place)]));
      expect(message).toContain(`the key "${key}"`);
      expect(message).toContain('structure/test.rules.json: rules[0].');
    }
  });

  it('a fact called like something that objects inherit', async () => {
    expect(await refusedLeaf('constructor', 'equal', 'x')).toContain(`${AT}.fact: "constructor"`);
    expect(await refusedLeaf('toString', 'equal', 'x')).toContain(`${AT}.fact: "toString"`);
  });
});

describe('the rest of a rule', () => {
  it('refuses a placeholder that is no fact, with the nearest', async () => {
    const message = await refusalOf(rulebookOf([rawRule({ remedy: 'Stay under {wall.limit_ps}.' })]));
    expect(message).toContain('rule "weight.too-heavy": remedy: "{wall.limit_ps}"');
    expect(message).toContain('"wall.limit_psf"');
  });

  it('refuses an unclosed brace', async () => {
    const message = await refusalOf(
      rulebookOf([rawRule({ reason: 'It weighs {wall.weight_psf, too much.' })]),
    );
    expect(message).toContain('reason: ');
  });

  it('refuses a doubled id, naming both files', async () => {
    const dir = await rulesFolder({
      'a.rules.json': rawPack([rawRule()], { pack: 'one' }),
      'b.rules.json': rawPack([rawRule()], { pack: 'two' }),
    });
    const message = await refusalOf(loadRulebook(dir));
    expect(message).toContain('b.rules.json, rule "weight.too-heavy": id');
    expect(message).toContain('a.rules.json has a rule with this id');
  });

  it('refuses two packs of one name', async () => {
    const dir = await rulesFolder({
      'a.rules.json': rawPack([rawRule({ id: 'a.a' })]),
      'b.rules.json': rawPack([rawRule({ id: 'b.b' })]),
    });
    expect(await refusalOf(loadRulebook(dir))).toContain('b.rules.json: pack: "test-pack"');
  });

  it.each([
    ['an unknown key', { severity: 3 }, 'severity'],
    ['an unknown edition', { editions: ['2015'] }, 'editions[0]'],
    ['no examples', { examples: { fires: [], silent: [] } }, 'examples.fires'],
    ['an unknown provenance', { citation: { text: 'somewhere', provenance: 'sure' } }, 'citation.provenance'],
  ])('refuses %s', async (_, change, path) => {
    expect(await refusalOf(rulebookOf([rawRule(change)]))).toContain(`rule "weight.too-heavy": ${path}: `);
  });

  it('names a rule without an id by its place', async () => {
    expect(await refusalOf(rulebookOf([rawRule(), { ...rawRule(), id: undefined }]))).toContain(
      'rule number 2: id: ',
    );
  });
});

describe('files', () => {
  it('refuses bad JSON by file', async () => {
    const dir = await rulesFolder({ 'bad.rules.json': '{"schema": ' });
    expect(await refusalOf(loadRulebook(dir))).toMatch(/^bad\.rules\.json: .*valid JSON/);
  });

  it('refuses a file over 1 MB', async () => {
    const dir = await rulesFolder({
      'big.rules.json': `${JSON.stringify(rawPack([rawRule()]))}${' '.repeat(1_000_000)}`,
    });
    expect(await refusalOf(loadRulebook(dir))).toMatch(/^big\.rules\.json: .*at most 1 MB/);
  });

  it('refuses a folder that is named like a pack', async () => {
    const dir = await rulesFolder({});
    await mkdir(join(dir, 'odd.rules.json'));
    expect(await refusalOf(loadRulebook(dir))).toMatch(/^odd\.rules\.json: /);
  });

  it('refuses an unknown key and a missing fact dictionary', async () => {
    const dir = await rulesFolder({ 'x.rules.json': rawPack([rawRule()], { author: 'nobody' }) });
    expect(await refusalOf(loadRulebook(dir))).toContain('x.rules.json: author: "nobody"');
    expect(await refusalOf(loadRulebook(join(dir, 'nowhere')))).toMatch(
      /^facts\.json: .*there is no such file/,
    );
  });

  it.each([
    ['a doubled fact', { id: 'wall.layers', type: 'number', meaning: 'the layers again' }, 'id'],
    ['a fact id without a dot', { id: 'layers', type: 'number', meaning: 'the layers' }, 'id'],
    ['a unit on a text', { id: 'wall.colour', type: 'text', unit: 'in.', meaning: 'the colour' }, 'unit'],
    [
      'a value list on a number',
      { id: 'wall.x', type: 'number', values: ['1'], meaning: 'the x of it' },
      'values',
    ],
  ])('refuses %s in the fact dictionary', async (_, fact, key) => {
    const dir = await rulesFolder({ 'facts.json': { ...FACTS, facts: [...FACTS.facts, fact] } });
    expect(await refusalOf(loadRulebook(dir))).toContain(`facts.json: facts[${FACTS.facts.length}].${key}: `);
  });
});

describe('house packs', () => {
  const house = async (rules: readonly unknown[], changes = {}) => {
    const dir = await rulesFolder({});
    const path = join(dir, 'ours.json');
    await writeFile(path, JSON.stringify(rawPack(rules, { pack: 'ours', ...changes })));
    return path;
  };

  it('add rules, marked as house rules', async () => {
    const path = await house([rawRule({ id: 'ours.lighter' })]);
    const rulebook = await rulebookOf([rawRule()], { extraPacks: [path] });
    expect(rulebook.rules.map((r) => [r.rule.id, r.house])).toEqual([
      ['ours.lighter', true],
      ['weight.too-heavy', false],
    ]);
    expect(rulebook.packs.map((p) => [p.name, p.house])).toEqual([
      ['test-pack', false],
      ['ours', true],
    ]);
    const outcomes = await rulebook.evaluate({ 'wall.weight_psf': 12 }, '2021');
    expect(outcomes.map((o) => [o.rule.id, o.house])).toEqual([
      ['ours.lighter', true],
      ['weight.too-heavy', false],
    ]);
  });

  it('may not redefine a rule: loosening is refused by name', async () => {
    const path = await house([rawRule({ verdict: 'caution' })]);
    const message = await refusalOf(rulebookOf([rawRule()], { extraPacks: [path] }));
    expect(message).toContain(`${path}, rule "weight.too-heavy"`);
    expect(message).toContain('never looser');
  });

  it('are checked like any other pack', async () => {
    const path = await house([withLeaf('wall.weihgt_psf', 'lessThan', 1)]);
    expect(await refusalOf(rulebookOf([rawRule()], { extraPacks: [path] }))).toContain(
      `${path}, rule "weight.too-heavy": conditions.all[0].fact`,
    );
  });
});

describe('what a rule lacks is told in plain words', () => {
  const silent = [{ name: 'at the limit', facts: { 'wall.weight_psf': 10 } }];
  const fires = [{ name: 'heavy', facts: { 'wall.weight_psf': 12 } }];
  it.each([
    [
      'examples.fires[0].name',
      { examples: { silent, fires: [{ name: 'a', facts: {} }] } },
      '"a"',
      'three letters',
    ],
    [
      'examples.silent[0].name',
      { examples: { fires, silent: [{ facts: {} }] } },
      '(nothing)',
      'three letters',
    ],
    ['examples.fires', { examples: { silent, fires: [] } }, '', 'one example at least'],
    ['citation.text', { citation: { text: 'x', provenance: 'memory' } }, '"x"', 'five letters'],
    ['editions[0]', { editions: ['2022'] }, '"2022"', '2018, 2021, 2024'],
    ['editions', { editions: [] }, '', '2018, 2021, 2024'],
  ])('%s', async (field, change, value, accepted) => {
    const message = await refusalOf(rulebookOf([rawRule(change)]));
    expect(message).toContain(`rule "weight.too-heavy": ${field}: ${value}`);
    expect(message).toContain(accepted);
    expect(message).not.toMatch(/Too small|Invalid/);
  });
});
