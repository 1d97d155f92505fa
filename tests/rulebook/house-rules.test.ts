import { describe, expect, it } from 'vitest';
import { checkRules } from '../../src/rulebook/check-rules.ts';
import { explainRule } from '../../src/rulebook/explain-rule.ts';
import { checkLimits } from '../../src/rulebook/limit-direction.ts';
import { loadRulebook } from '../../src/rulebook/load-rulebook.ts';
import type { Facts, RuleOutcome } from '../../src/rulebook/rule-schema.ts';
import type { Rulebook } from '../../src/rulebook/rulebook.ts';
import { findRulesDir } from '../../src/rulebook/rules-dir.ts';
import { houseFile, rawHouse, shippedWith } from './house-packs.ts';
import { refusalOf } from './invented-rules.ts';

const WHY = 'The firm learned this the hard way.';
/** Every fact of the shipped dictionary, none known. */
const NOTHING_KNOWN = Object.fromEntries(
  (await loadRulebook(findRulesDir())).facts.ids.map((id) => [id, null]),
);
const tighten = (...list: readonly object[]) => rawHouse({ tighten: list });
const products = (...list: readonly object[]) => rawHouse({ products: list });

/** What one rule says of the facts that it reads. */
async function said(rulebook: Rulebook, id: string, facts: Facts): Promise<RuleOutcome | undefined> {
  const loaded = rulebook.find(id);
  if (!loaded) throw new Error(`no rule ${id}`);
  // Every fact that some rule reads must be there; the others are not known.
  const sheet = Object.fromEntries(rulebook.facts.ids.map((fact) => [fact, facts[fact] ?? null]));
  return (await rulebook.evaluate(sheet, '2021')).find(({ rule }) => rule.id === id);
}

const foam = (thickness_in: number): Facts => ({
  'insulation.is_foam_plastic': true,
  'insulation.thickness_in': thickness_in,
});

describe('a distance to the lot line that a firm widens', async () => {
  // At 5.1 ft a wall that grows falls under the code's 5 ft; under the firm's 5.2 ft it stood already.
  const facts = {
    ...NOTHING_KNOWN,
    'project.is_retrofit': true,
    'site.fire_separation_ft': 5.1,
    'thickness.face_to_lot_line_ft': 4.7,
  };
  it.each([
    ['shipped', []],
    ['widened', [tighten({ limit: 'rated-wall-distance', to: 5.2, reason: WHY })]],
  ])('leaves what the code’s own distance says, %s', async (_, packs) => {
    const [verdicts] = await (await shippedWith(...packs)).evaluateAll([facts], '2021');
    expect(verdicts?.outcomes().map(({ rule, verdict }) => `${rule.id} ${verdict}`)).toContain(
      'fire.added-thickness-crosses-a-distance caution',
    );
  });
});

describe('a limit that a firm tightens', async () => {
  const rulebook = await shippedWith(tighten({ limit: 'foam-thickness', to: 3, reason: WHY }));

  // 4 in. is the building code's figure; 3 in. is the invented firm's.
  it.each([
    [3, 'pass', false],
    [3.01, 'caution', true],
    [4, 'caution', true],
    [4.01, 'caution', false],
  ] as const)('%f in. of foam: %s, by the house %s', async (thickness_in, verdict, isHouse) => {
    const outcome = await said(rulebook, 'fire.foam-over-4-in', foam(thickness_in));
    expect(outcome).toMatchObject({ verdict, house: isHouse, house_pack: isHouse ? 'larch-row' : null });
    expect(outcome?.text.startsWith('House rule (larch-row): ')).toBe(isHouse);
    expect(outcome?.text.includes('3 in. instead of 4 in.')).toBe(isHouse);
    expect(outcome?.text.includes(WHY)).toBe(isHouse);
  });

  it('shows in the remedy what the firm asks for', async () => {
    const outcome = await said(rulebook, 'fire.foam-over-4-in', foam(4));
    expect(outcome?.remedy).toContain('keep to 3 in.');
  });

  it('leaves the shipped rules within reach', async () => {
    expect((await said(rulebook.shipped, 'fire.foam-over-4-in', foam(4)))?.verdict).toBe('pass');
    expect(rulebook.shipped.packs.some(({ house }) => house)).toBe(false);
  });

  it('moves the distances of every fire rule that speaks of them', async () => {
    const wide = await shippedWith(
      tighten(
        { limit: 'opening-distance', to: 4, reason: WHY },
        { limit: 'rated-wall-distance', to: 7, reason: WHY },
      ),
    );
    const verdicts = async (id: string, facts: Facts) => [
      (await said(wide.shipped, id, facts))?.verdict,
      (await said(wide, id, facts))?.verdict,
    ];
    const glass = { 'windows.count': 9, 'windows.open_share_percent': 45 };
    const share = (face_ft: number) =>
      verdicts('fire.open-share-near-the-line', { ...glass, 'thickness.face_to_lot_line_ft': face_ft });
    expect(await share(6)).toEqual([undefined, 'caution']);
    expect(await share(4)).toEqual(['caution', 'caution']);
    // No window at all may stand there by now, which is for another rule to say.
    expect(await share(3.5)).toEqual(['caution', undefined]);
    const crossing = (from_ft: number, to_ft: number) =>
      verdicts('fire.added-thickness-crosses-a-distance', {
        'project.is_retrofit': true,
        'site.fire_separation_ft': from_ft,
        'thickness.face_to_lot_line_ft': to_ft,
      });
    expect(await crossing(7.2, 6.9)).toEqual(['pass', 'caution']);
    expect(await crossing(4.2, 3.9)).toEqual(['pass', 'caution']);
    expect(await crossing(7.5, 7.2)).toEqual(['pass', 'pass']);
  });

  it('holds the rule to its examples as shipped', async () => {
    expect((await checkRules(rulebook)).problems).toEqual([]);
  });

  it('is explained with both values', () => {
    const text = explainRule(rulebook, 'fire.foam-over-4-in');
    expect(text).toContain('4 in. as shipped, 3 in. by house pack larch-row (stricter is lower)');
  });

  it('moves every rule that reads it', async () => {
    const gap = await shippedWith(tighten({ limit: 'drainage-gap', to: 0.5, reason: WHY }));
    const moist = {
      'cladding.is_cement_stucco': true,
      'sheathing.is_wood_based': true,
      'site.moisture_regime': 'A',
      'drainage.gap_in': 0.375,
      'drainage.kind': 'mat',
      'wrb.grade': 'two-layer-10-minute',
    };
    expect((await said(gap, 'rain.stucco-drainage-space', moist))?.verdict).toBe('forbid');
    expect((await said(gap.shipped, 'rain.stucco-drainage-space', moist))?.verdict).toBe('pass');
    const drained = { 'drainage.gap_in': 0.375, 'drainage.kind': 'mat' };
    expect((await said(gap, 'rain.drained-gap', drained))?.verdict).toBe('pass');
    expect((await said(gap.shipped, 'rain.drained-gap', drained))?.verdict).toBe('prefer');
  });

  it('of two firms the stricter one holds, in either order', async () => {
    const four = tighten({ limit: 'drainage-gap', to: 0.25, reason: WHY });
    const half = { ...tighten({ limit: 'drainage-gap', to: 0.5, reason: WHY }), pack: 'other-firm' };
    for (const packs of [
      [four, half],
      [half, four],
    ]) {
      const { house } = await shippedWith(...packs);
      expect(house.limits.map(({ to, pack }) => [to, pack.name])).toEqual([[0.5, 'other-firm']]);
    }
  });

  it('may be given as it is shipped: that is not looser', async () => {
    expect(
      (await shippedWith(tighten({ limit: 'stud-spacing', to: 24, reason: WHY }))).house.limits,
    ).toHaveLength(1);
  });
});

describe('every named limit', async () => {
  const { limits } = await loadRulebook(findRulesDir());
  const moved = ({ id, value, stricter }: (typeof limits.all)[number], share: number) => ({
    limit: id,
    to: value + Math.abs(value) * share * (stricter === 'lower' ? -1 : 1),
    reason: WHY,
  });

  it.each(limits.all.map((limit) => [limit.id, limit] as const))(
    '%s: may be tightened by half, and the rules still pass their check',
    async (_, limit) => {
      const { problems } = await checkRules(await shippedWith(tighten(moved(limit, 0.5))));
      expect(problems).toEqual([]);
    },
  );

  it.each([0.1, 0.9])('may be tightened together with all others, by %s', async (share) => {
    const pack = tighten(...limits.all.map((limit) => moved(limit, share)));
    expect((await checkRules(await shippedWith(pack))).problems).toEqual([]);
  });
});

describe('what would loosen the code is refused by name', () => {
  it.each([
    ['foam-thickness', 5, '4 in.', 'fire.foam-over-4-in', 'or less'],
    ['drainage-gap', 0.125, '3/16 in.', 'rain.stucco-drainage-space', 'or more'],
    ['wind-use', 1.01, 'is 1 ', 'structure.wind-use', 'or less'],
    ['rated-wall-distance', 4.9, '5 ft', 'fire.close-to-the-lot-line', 'or more'],
    ['lath-fastener-spacing', 8, '7 in.', 'stucco-practice.lath-fasteners', 'or less'],
  ])('%s to %f', async (limit, to, shipped, rule, way) => {
    const path = await houseFile(tighten({ limit, to, reason: WHY }));
    const message = await refusalOf(loadRulebook(findRulesDir(), { extraPacks: [path] }));
    expect(message).toContain(`${path}: tighten[0].to: ${to} for the limit "${limit}"`);
    expect(message).toContain(shipped);
    expect(message).toContain(rule);
    expect(message).toContain('never looser');
    expect(message).toContain(way);
  });

  it('a caution made milder, a ban taken back', async () => {
    for (const [rule, verdict] of [
      ['fire.foam-over-4-in', 'prefer'],
      ['structure.wind-use', 'caution'],
    ]) {
      const message = await refusalOf(shippedWith(tighten({ rule, verdict, reason: WHY })));
      expect(message).toContain('tighten[0].verdict');
      expect(message).toContain('never milder');
    }
  });

  it('a shipped rule written anew', async () => {
    const rule = loadRulebook(findRulesDir()).then((book) => book.find('structure.wind-use')?.rule);
    const message = await refusalOf(
      shippedWith(rawHouse({ rules: [{ ...(await rule), verdict: 'caution' }] })),
    );
    expect(message).toMatch(/rule "structure\.wind-use": id.*never looser/);
  });

  it('one looser limit among sound ones: nothing of the pack is applied', async () => {
    const pack = tighten(
      { limit: 'foam-thickness', to: 3, reason: WHY },
      { limit: 'stud-spacing', to: 30, reason: WHY },
    );
    expect(await refusalOf(shippedWith(pack))).toContain('tighten[1].to');
  });
});

describe('a caution that a firm makes a ban', () => {
  it('rules the wall out and says that the firm did', async () => {
    const rulebook = await shippedWith(
      tighten({ rule: 'fire.foam-over-4-in', verdict: 'forbid', reason: WHY }),
    );
    const outcome = await said(rulebook, 'fire.foam-over-4-in', foam(5));
    expect(outcome).toMatchObject({ verdict: 'forbid', house: true, house_pack: 'larch-row' });
    expect(outcome?.text).toContain('shipped as "caution"');
    expect((await said(rulebook, 'fire.foam-over-4-in', foam(4)))?.verdict).toBe('pass');
  });

  it('must be one: a preference can’t become a ban, and the name must be known', async () => {
    const raise = (rule: string) => refusalOf(shippedWith(tighten({ rule, verdict: 'forbid', reason: WHY })));
    expect(await raise('rain.drained-gap')).toContain('This rule prefers');
    expect(await raise('fire.foam-over-4-inn')).toContain('Did you mean "fire.foam-over-4-in"');
  });
});

describe('a ban that two firms make of the same caution', () => {
  it('keeps the name and the reason of the first', async () => {
    const raise = { rule: 'buildability.three-layers', verdict: 'forbid' };
    const second = { ...tighten({ ...raise, reason: 'The other firm says so too.' }), pack: 'other-firm' };
    const { house } = await shippedWith(tighten({ ...raise, reason: WHY }), second);
    expect(house.raised).toMatchObject([{ reason: WHY, pack: { name: 'larch-row' } }]);
  });
});

describe('each shipped caution and open question that a firm makes a ban', async () => {
  const shipped = await loadRulebook(findRulesDir());
  const ids = shipped.rules.flatMap(({ rule }) =>
    rule.verdict === 'caution' || rule.verdict === 'undecided' ? [rule.id] : [],
  );
  const raised = await shippedWith(tighten(...ids.map((rule) => ({ rule, verdict: 'forbid', reason: WHY }))));

  it('passes the check with all the others', async () => {
    expect(raised.house.raised.map(({ rule }) => rule).sort()).toEqual([...ids].sort());
    expect((await checkRules(raised)).problems).toEqual([]);
  });

  it('is held against what the same firm prefers', async () => {
    const three = shipped.find('buildability.three-layers')?.rule;
    if (!three) throw new Error('no such rule');
    const wish = { ...three, id: 'larch-row.layers', verdict: 'prefer' };
    const pack = { rules: [wish], tighten: [{ rule: three.id, verdict: 'forbid', reason: WHY }] };
    const { problems } = await checkRules(await shippedWith(rawHouse(pack)));
    expect(problems.map(({ message }) => message).join()).toMatch(/contradiction: .*larch-row\.layers/);
  });

  // Alone, where the rules that take over from it stay as mild as they are.
  it('passes the direction check alone', () => {
    const wrong = ids.flatMap((id) => {
      const rules = shipped.rules.map((one) => (one.rule.id === id ? (raised.find(id) ?? one) : one));
      expect(rules.filter(({ tightened }) => tightened)).toHaveLength(1);
      return checkLimits(rules, shipped.limits, 'limits.json');
    });
    expect(wrong).toEqual([]);
  });
});

describe('products', () => {
  it.each([
    ['only', 'eps', 'pass'],
    ['only', 'xps', 'forbid'],
    ['forbid', 'eps', 'forbid'],
    ['forbid', 'xps', 'pass'],
    ['prefer', 'eps', 'prefer'],
    ['prefer', 'xps', 'pass'],
  ] as const)('%s EPS: %s is %s', async (how, id, verdict) => {
    const rulebook = await shippedWith(products({ category: 'insulation', [how]: ['eps'], reason: WHY }));
    const outcome = await said(rulebook, `larch-row.${how}-insulation`, { 'insulation.id': id });
    expect(outcome).toMatchObject({ verdict, house: true });
    expect(outcome?.text.startsWith('House rule (larch-row): ')).toBe(true);
    expect((await checkRules(rulebook)).problems).toEqual([]);
  });

  it('does not hold a firm’s retarder against one that is in the wall already', async () => {
    const rulebook = await shippedWith(products({ category: 'retarder', only: ['responsive'], reason: WHY }));
    const facts = (isExisting: boolean) => ({
      'retarder.class': 'class-i',
      'retarder.is_existing': isExisting,
    });
    expect((await said(rulebook, 'larch-row.only-retarder', facts(false)))?.verdict).toBe('forbid');
    expect(await said(rulebook, 'larch-row.only-retarder', facts(true))).toBeUndefined();
  });

  it.each([
    [
      { category: 'cladding', forbid: ['wood-sidings'] },
      /products\[0\]\.forbid\[0\].*"wood-sidings".*"wood-siding"/,
    ],
    [{ category: 'roof', forbid: ['tile'] }, /products\[0\]\.category/],
    [{ category: 'buck', forbid: ['no-buck'], only: ['no-buck'] }, /products\[0\].*one alone/],
    [{ category: 'buck' }, /products\[0\].*one alone/],
    [{ category: 'buck', only: [] }, /products\[0\]\.only/],
  ])('refuses %j', async (wish, message) => {
    expect(await refusalOf(shippedWith(products({ ...wish, reason: WHY })))).toMatch(message);
  });

  it('refuses to forbid all there is', async () => {
    const all = ['none', 'class-iii', 'class-ii', 'class-i', 'responsive'];
    expect(
      await refusalOf(shippedWith(products({ category: 'retarder', forbid: all, reason: WHY }))),
    ).toContain('no wall does without');
  });

  it('a firm may forbid what the shipped rules prefer, and not prefer what they forbid', async () => {
    const rule = (id: string, verdict: string, operator: string, value: number) => ({
      id,
      title: 'Layers of boards',
      editions: ['2021'],
      citation: { text: 'House rule of the firm', provenance: 'house' },
      conditions: { all: [{ fact: 'framing.spacing_in', operator, value }] },
      verdict,
      reason: 'The studs stand {framing.spacing_in} apart.',
      remedy: 'Ask the firm.',
      examples: {
        fires: [{ name: 'wide', facts: { 'framing.spacing_in': 30 } }],
        silent: [{ name: 'close', facts: { 'framing.spacing_in': 16 } }],
      },
    });
    const bad = await shippedWith(rawHouse({ rules: [rule('larch-row.wide', 'prefer', 'greaterThan', 20)] }));
    const [problem, ...more] = (await checkRules(bad)).problems;
    expect(more).toEqual([]);
    expect(problem?.message).toMatch(/^contradiction: .*structure\.stud-spacing/);
  });
});

describe('defaults and prices', () => {
  it('stand in the house standard, with their pack', async () => {
    const { house } = await shippedWith(
      rawHouse({ defaults: { crew_skill: 'stucco-experienced' }, prices: { region_factor: 1.1 } }),
    );
    expect(house.crew_skill).toMatchObject({ value: 'stucco-experienced', pack: { name: 'larch-row' } });
    expect(house.prices?.book).toEqual({ region_factor: 1.1 });
  });

  it('two packs must agree on the crew', async () => {
    const one = rawHouse({ defaults: { crew_skill: 'general' } });
    const two = { ...rawHouse({ defaults: { crew_skill: 'first-time' } }), pack: 'other-firm' };
    expect(await refusalOf(shippedWith(one, two))).toMatch(/defaults\.crew_skill: "first-time".*larch-row/);
  });

  it.each([
    [{ defaults: { crew_skill: 'expert' } }, /defaults\.crew_skill/],
    [{ defaults: { crew: 'general' } }, /defaults\.crew/],
    [{ prices: { region_factor: 0 } }, /prices\.region_factor/],
    [
      { prices: { prices: [{ item: 'cladding/gold', low: 1, likely: 2, high: 3 }] } },
      /prices\.prices\[0\]\.item/,
    ],
    [{ prices: { prices: [{ item: 'cladding/wood-siding', low: 3, likely: 2, high: 1 }] } }, /rising order/],
  ])('refuses %j', async (parts, message) => {
    expect(await refusalOf(shippedWith(rawHouse(parts)))).toMatch(message);
  });
});

describe('the shape of a house pack', () => {
  it('refuses one that says nothing', async () => {
    expect(await refusalOf(shippedWith(rawHouse({})))).toContain('an empty pack');
  });

  it('is not looked for in a file of another schema', async () => {
    const told = await refusalOf(shippedWith({ schema: 'cladwright-scenario/1', place: 7 }));
    expect(told).toContain('This is a scenario, which "advise" and "batch" answer. Give house rules');
    expect(told).not.toContain('place');
  });

  it('refuses keys that it does not know', async () => {
    expect(await refusalOf(shippedWith(rawHouse({ loosen: [] })))).toContain('loosen');
  });

  it('a shipped pack has no such parts', async () => {
    const { rulesFolder, rawPack, rawRule } = await import('./invented-rules.ts');
    const dir = await rulesFolder({ 'x.rules.json': rawPack([rawRule()], { tighten: [] }) });
    expect(await refusalOf(loadRulebook(dir))).toContain('x.rules.json: tighten');
    const rule = rawRule({ citation: { text: 'the firm itself', provenance: 'house' } });
    const other = await rulesFolder({ 'x.rules.json': rawPack([rule]) });
    expect(await refusalOf(loadRulebook(other))).toContain('citation.provenance: "house"');
  });
});

describe('bad house packs are refused with file and path', () => {
  const rule = (change: object) => ({
    id: 'larch-row.some',
    title: 'A rule of the firm',
    editions: ['2021'],
    citation: { text: 'House rule of the firm', provenance: 'house' },
    conditions: { all: [{ fact: 'site.exposure', operator: 'equal', value: 'D' }] },
    verdict: 'forbid',
    reason: 'The site lies by open water.',
    remedy: 'Ask the firm.',
    examples: {
      fires: [{ name: 'open water', facts: { 'site.exposure': 'D' } }],
      silent: [{ name: 'wooded', facts: { 'site.exposure': 'B' } }],
    },
    ...change,
  });
  const leaf = (change: object) => ({
    conditions: { all: [{ fact: 'site.exposure', operator: 'equal', value: 'D', ...change }] },
  });
  const deep = (levels: number): unknown =>
    levels === 0 ? leaf({}).conditions.all[0] : { all: [deep(levels - 1)] };

  it.each([
    ['an unknown fact', leaf({ fact: 'site.exposur' }), 'conditions.all[0].fact'],
    ['an unknown operator', leaf({ operator: 'matches' }), 'conditions.all[0].operator'],
    ['a regular expression as a value', leaf({ value: { regex: '^D' } }), 'conditions.all[0].value'],
    ['a regular expression as a text', leaf({ value: '/^D/' }), 'conditions.all[0].value'],
    [
      'a regular expression for a product',
      { conditions: { all: [{ fact: 'cladding.id', operator: 'equal', value: '/^wood/' }] } },
      'conditions',
    ],
    ['a path into a fact', leaf({ path: '$.length' }), 'conditions.all[0].path'],
    ['a path outside the facts', leaf({ fact: 'site.exposure.__proto__' }), 'conditions.all[0].fact'],
    ['a path outside the facts in a text', { reason: 'See {process.env.HOME} for more.' }, 'reason'],
    ['a limit that is none', leaf({ value: { limit: 'nothing' } }), 'conditions.all[0].value.limit'],
    [
      'a limit of another unit',
      leaf({ fact: 'drainage.gap_in', operator: 'lessThan', value: { limit: 'tall-wall' } }),
      'conditions.all[0].value.limit',
    ],
    ['endless nesting', { conditions: deep(7) }, 'conditions.all[0]'],
  ])('%s', async (_, change, path) => {
    const file = await houseFile(rawHouse({ rules: [rule(change)] }));
    const message = await refusalOf(loadRulebook(findRulesDir(), { extraPacks: [file] }));
    expect(message).toContain(`${file}, rule "larch-row.some": ${path}`);
  });

  it.each(['__proto__', 'constructor', 'prototype'])('the key %s', async (key) => {
    const text = JSON.stringify(rawHouse({ rules: [rule({ HERE: 1 })] })).replace('HERE', key);
    const file = await houseFile(text);
    const message = await refusalOf(loadRulebook(findRulesDir(), { extraPacks: [file] }));
    expect(message).toContain(`${file}: rules[0].${key}: the key "${key}"`);
  });

  it('nesting without end, anywhere in the file', async () => {
    const text = JSON.stringify(rawHouse({ tighten: 'HERE' })).replace(
      '"HERE"',
      '['.repeat(60_000) + ']'.repeat(60_000),
    );
    const file = await houseFile(text);
    const message = await refusalOf(loadRulebook(findRulesDir(), { extraPacks: [file] }));
    expect(message).toContain(`${file}: `);
  });
});
