import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it, vi } from 'vitest';
import { adviceSchema } from '../../src/advice/advice-schema.ts';
import { runProgram } from './run-program.ts';

// Whole answers of the built program, on a machine that may be busy.
vi.setConfig({ testTimeout: 60_000 });

const PACK = 'scenarios/house-packs/harrow-lane.rules.json';
const folder = mkdtempSync(join(tmpdir(), 'cladwright-house-'));
afterAll(() => rmSync(folder, { recursive: true }));

function packFile(pack: object): string {
  const path = join(folder, `pack-${readdirSync(folder).length}.json`);
  writeFileSync(
    path,
    JSON.stringify({
      schema: 'cladwright-rules/1',
      pack: 'test-firm',
      version: '1.0.0',
      concern: 'fire',
      ...pack,
    }),
  );
  return path;
}

async function adviceOf(scenario: string, ...more: readonly string[]) {
  const { code, stdout, stderr } = await runProgram(['advise', scenario, '--json', ...more]);
  expect({ code, stderr }).toEqual({ code: 0, stderr: '' });
  return adviceSchema.parse(JSON.parse(stdout));
}

describe('the pack to copy', () => {
  it('passes the check as it stands, and uses every key that a pack may have', async () => {
    const template = 'scenarios/house-packs/template.rules.json';
    const { code, stdout } = await runProgram(['rules', 'check', '--house-rules', template]);
    expect(stdout).toContain('no problem found');
    expect(code).toBe(0);
    expect(Object.keys(JSON.parse(readFileSync(template, 'utf8'))).sort()).toEqual(
      Object.keys(JSON.parse(readFileSync(PACK, 'utf8'))).sort(),
    );
  });
});

describe('the sample pack of an invented firm', () => {
  it('is sound', async () => {
    const { code, stderr } = await runProgram(['rules', 'check', '--house-rules', PACK]);
    expect({ code, stderr }).toEqual({ code: 0, stderr: '' });
  });

  it.each([
    ['scenarios/steel-studs-new.json', 'a banned material', 'harrow-lane.forbid-insulation'],
    ['scenarios/hot-humid-new.json', 'a tightened limit', 'rain.drainage-efficiency'],
  ])('changes the answer of %s by %s, and says so', async (scenario, _, rule) => {
    const [plain, house] = await Promise.all([adviceOf(scenario), adviceOf(scenario, '--house-rules', PACK)]);
    const before = plain.ranked[0];
    expect(house.ranked[0]?.title).not.toBe(before?.title);
    expect(house.house?.changes_first_choice).toBe(true);
    expect(house.house?.sentences.join(' ')).toContain(before?.title);
    const reasons = house.excluded.flatMap(({ because }) => because).filter((one) => one.rule === rule);
    expect(reasons.length).toBeGreaterThan(0);
    for (const reason of reasons) {
      expect(reason.house).toBe('harrow-lane');
      expect(reason.text).toMatch(/^House rule \(harrow-lane\): /);
    }
    expect(
      house.assumptions.filter((one) => one.house === 'harrow-lane').map(({ field }) => field),
    ).toContain('price_book');
  });

  it('says what is another where only a detail of the wall is', async () => {
    const house = await adviceOf('scenarios/dry-cold-new.json', '--house-rules', PACK);
    expect(house.house?.sentences.at(-1)).toMatch(
      /^Without the house packs the first choice becomes the same wall with .*wrap/,
    );
  });

  it('stands in the printed answer and in the record', async () => {
    const dir = join(folder, 'records');
    const { code, stdout } = await runProgram([
      'advise',
      'scenarios/hot-humid-new.json',
      '--save',
      dir,
      '--house-rules',
      PACK,
    ]);
    expect(code).toBe(0);
    expect(stdout).toContain('House rules');
    expect(stdout.replace(/\s+/g, ' ')).toContain('1/2 in. instead of 3/16 in.');
    for (const end of ['.md', '.html']) {
      const name = readdirSync(dir).find((file) => file.endsWith(end) && !file.includes('build-sheet')) ?? '';
      const text = readFileSync(join(dir, name), 'utf8');
      expect(text).toContain('House rules');
      expect(text).toMatch(/House rule \\?\(harrow-lane\\?\)/);
    }
  });

  it('is explained with what its rules decided', async () => {
    const { code, stdout } = await runProgram([
      'rules',
      'explain',
      'harrow-lane.forbid-insulation',
      '--in',
      'scenarios/steel-studs-new.json',
      '--house-rules',
      PACK,
    ]);
    expect(code).toBe(0);
    expect(stdout).toContain('the firm’s own rule');
    expect(stdout).toMatch(/alone rules out [\d,]+ walls/);
    expect(stdout).toMatch(/decides the first choice: judged without it, that would be .*graphite/);
  });
});

describe('a house pack that is refused', () => {
  const reason = 'The firm learned this the hard way.';
  it.each([
    [
      'a looser limit, by name',
      { tighten: [{ limit: 'foam-thickness', to: 6, reason }] },
      /tighten\[0\]\.to: 6 for the limit "foam-thickness".*is 4 in\. \(read by fire\.foam-over-4-in\).*never looser/,
    ],
    ['an unknown limit', { tighten: [{ limit: 'foam-thicknes', to: 3, reason }] }, /"foam-thickness"/],
    [
      'an unknown product',
      { products: [{ category: 'buck', forbid: ['tin'], reason }] },
      /products\[0\]\.forbid\[0\]: "tin"/,
    ],
    ['nothing at all', {}, /an empty pack/],
  ])('for %s: nothing is answered, nothing written', async (_, parts, message) => {
    const path = packFile(parts);
    const dir = join(folder, 'never');
    const ended = await runProgram([
      'advise',
      'scenarios/dry-cold-new.json',
      '--save',
      dir,
      '--house-rules',
      path,
    ]);
    expect({ code: ended.code, stdout: ended.stdout }).toEqual({ code: 2, stdout: '' });
    expect(ended.stderr).toContain(path);
    expect(ended.stderr).toMatch(message);
    expect(existsSync(dir)).toBe(false);
  });
});

describe('rules check fails, naming file, rule and what is wrong', () => {
  const windy = (change: object = {}) => ({
    id: 'test-firm.windy',
    title: 'Windy site',
    editions: ['2021'],
    conditions: { all: [{ fact: 'site.exposure', operator: 'equal', value: 'D' }] },
    verdict: 'caution',
    reason: 'The site lies by open water.',
    remedy: 'Ask the firm.',
    citation: { text: 'invented for a test', provenance: 'house' },
    examples: {
      fires: [{ name: 'open water', facts: { 'site.exposure': 'D' } }],
      silent: [{ name: 'wooded', facts: { 'site.exposure': 'B' } }],
    },
    ...change,
  });
  it.each([
    [
      'an unknown fact',
      [windy({ conditions: { all: [{ fact: 'site.exposre', operator: 'equal', value: 'D' }] } })],
      /rule "test-firm\.windy": conditions\.all\[0\]\.fact: "site\.exposre"/,
    ],
    [
      'an unreachable rule',
      [windy({ applies_when: { all: [{ fact: 'site.exposure', operator: 'equal', value: 'B' }] } })],
      /rule "test-firm\.windy".*unreachable/,
    ],
    [
      'a duplicate',
      [windy(), windy({ id: 'test-firm.windy-too' })],
      /rule "test-firm\.windy-too".*duplicate: .*test-firm\.windy in/,
    ],
    [
      'contradictory verdicts',
      [
        windy({ verdict: 'forbid' }),
        windy({ id: 'test-firm.breezy', verdict: 'prefer', title: 'A fine breeze' }),
      ],
      /contradiction: on the facts of example "open water".*test-firm\.windy/,
    ],
    [
      'an example on the wrong side',
      [
        windy({
          examples: {
            fires: [{ name: 'open water', facts: { 'site.exposure': 'D' } }],
            silent: [{ name: 'D too', facts: { 'site.exposure': 'D' } }],
          },
        }),
      ],
      /rule "test-firm\.windy".*"D too" stands under "silent", but it fires/,
    ],
  ])('%s', async (_, rules, message) => {
    const path = packFile({ rules });
    const ended = await runProgram(['rules', 'check', '--house-rules', path]);
    expect({ code: ended.code, stdout: ended.stdout }).toEqual({ code: 2, stdout: '' });
    expect(ended.stderr).toContain(path);
    expect(ended.stderr).toMatch(message);
  });
});

describe('named limits and scenarios in rules check and explain', () => {
  it('explains a limit and who reads it', async () => {
    const { code, stdout } = await runProgram(['rules', 'explain', 'drainage-gap']);
    expect(code).toBe(0);
    expect(stdout).toContain('3/16 in. as shipped; a house pack may make it higher, never lower');
    expect(stdout).toContain('rain.stucco-drainage-space (forbid)');
  });

  it('shows what could steer a terminal instead of obeying it', async () => {
    const pack = JSON.parse(readFileSync(PACK, 'utf8'));
    pack.rules[0].title = 'No third\u001b[2J layer';
    const path = packFile(pack);
    const ended = await runProgram(['rules', 'explain', 'harrow-lane.three-layers', '--house-rules', path]);
    expect(ended.stdout).toContain('No third\\u001b[2J layer');
    expect(ended.stdout).not.toContain('\u001b');
  });

  it('refuses a limit with a scenario, and a scenario that is none', async () => {
    const limit = await runProgram([
      'rules',
      'explain',
      'drainage-gap',
      '--in',
      'scenarios/dry-cold-new.json',
    ]);
    expect(limit.code).toBe(2);
    expect(limit.stderr).toContain('one of the rules that read it');
    const none = await runProgram(['rules', 'explain', 'safety.falls', '--in', PACK]);
    expect({ code: none.code, stdout: none.stdout }).toEqual({ code: 2, stdout: '' });
    expect(none.stderr).toContain('schema');
  });

  it('says which rules fire in scenarios and which never', async () => {
    const { code, stdout } = await runProgram(['rules', 'check', '--in', 'scenarios/dry-cold-new.json']);
    expect(code).toBe(0);
    expect(stdout).toMatch(/Over 1 scenario \d+ rules fire on some walls and hold back on others\./);
    expect(stdout).toMatch(/On every wall: .*safety\.falls/);
    expect(stdout).toMatch(/On no wall: .*rain\.wall-has-a-barrier/);
  });
});

describe('a price book in a scenario', () => {
  const scenario = (price_book: unknown) => {
    const path = join(folder, `scenario-${readdirSync(folder).length}.json`);
    const text = JSON.parse(readFileSync('scenarios/dry-cold-new.json', 'utf8'));
    writeFileSync(path, JSON.stringify({ ...text, price_book }));
    return path;
  };

  it('moves the cost, and stands among the answers', async () => {
    const plain = await adviceOf('scenarios/dry-cold-new.json');
    const dear = await adviceOf(scenario({ region_factor: 1.4, labour_usd_per_h: 90 }));
    expect(dear.answers.find(({ field }) => field === 'price_book')?.answer).toBe(
      'region factor 1.4, labour $90 an hour',
    );
    expect(dear.ranked[0]?.installed_cost_usd_per_ft2.likely).toBeGreaterThan(
      plain.ranked[0]?.installed_cost_usd_per_ft2.likely ?? 0,
    );
  });

  it.each([
    [{ region_factor: 9 }, /price_book\.region_factor: 9/],
    [
      { prices: [{ item: 'cladding/marble', low: 1, likely: 2, high: 3 }] },
      /price_book\.prices\[0\]\.item: "cladding\/marble"/,
    ],
    [{ discount: 3 }, /price_book\.discount/],
    ['cheap', /price_book: "cheap"/],
  ])('%j is refused by its field', async (book, message) => {
    const ended = await runProgram(['advise', scenario(book)]);
    expect({ code: ended.code, stdout: ended.stdout }).toEqual({ code: 2, stdout: '' });
    expect(ended.stderr).toMatch(message);
  });
});
