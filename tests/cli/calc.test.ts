import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { z } from 'zod';
import { CALC_EXAMPLES, CALC_KEYS, type CalcName } from './example-inputs.ts';
import { type Ended, runProgram } from './run-program.ts';

const folder = mkdtempSync(join(tmpdir(), 'cladwright-calc-'));
afterAll(() => rmSync(folder, { recursive: true }));

const names = Object.keys(CALC_EXAMPLES) as CalcName[];
const answerSchema = z.looseObject({
  source: z.array(z.string().min(3)).min(1),
  notes: z.array(z.string()).optional(),
});

function calc(name: string, input: unknown): Promise<Ended> {
  return runProgram(['calc', name], { stdin: typeof input === 'string' ? input : JSON.stringify(input) });
}

async function answerOf(name: CalcName, input: unknown = CALC_EXAMPLES[name]) {
  const { code, stdout, stderr } = await calc(name, input);
  expect({ code, stderr }).toEqual({ code: 0, stderr: '' });
  return answerSchema.parse(JSON.parse(stdout));
}

function file(name: string, content: string | Uint8Array): string {
  const path = join(folder, name);
  writeFileSync(path, content);
  return path;
}

/** Refused: exit 2, one message on standard error, nothing on standard output. */
function expectRefused(ended: Ended, message: RegExp | string): void {
  expect(ended.stderr).toMatch(message);
  expect({ code: ended.code, stdout: ended.stdout }).toEqual({ code: 2, stdout: '' });
  expect(ended.stderr).toMatch(/^cladwright: /);
}

describe('calc', () => {
  it.each(names)('%s answers its example with every promised key and a source', async (name) => {
    const answer = await answerOf(name);
    expect(Object.keys(answer)).toEqual(expect.arrayContaining([...CALC_KEYS[name]]));
  });

  it('reads a file as it reads standard input', async () => {
    const path = file('wind.json', JSON.stringify(CALC_EXAMPLES.wind));
    const fromFile = await runProgram(['calc', 'wind', path]);
    const fromDash = await runProgram(['calc', 'wind', '-'], { stdin: JSON.stringify(CALC_EXAMPLES.wind) });
    expect(fromFile).toEqual(fromDash);
    expect(fromFile.code).toBe(0);
  });

  it('takes a byte-order mark and Windows line ends', async () => {
    const text = `\ufeff${JSON.stringify(CALC_EXAMPLES.wind, null, 2).replaceAll('\n', '\r\n')}\r\n`;
    expect((await calc('wind', text)).code).toBe(0);
  });

  // Series 0.68 + 0.45 + 0.62 + 12 + 0.17 = 13.92; paths 33.92 and 20.80;
  // U = 0.75 / 33.92 + 0.25 / 20.80 + 0.75 × 0.003 = 0.036380
  it('thermal matches a hand calculation of parallel paths', async () => {
    const answer = await answerOf('thermal');
    expect(answer.u_factor).toBeCloseTo(0.03638, 5);
    expect(answer.delta_u_fasteners).toBeCloseTo(0.00225, 8);
  });

  // NDS 12.2.2: W = 2850 G² D = 2850 × 0.42² × 0.19 = 95.52 lb/in; 1.5 in. × 1.6
  it('withdrawal matches the published equation', async () => {
    const answer = await answerOf('withdrawal');
    expect(answer.reference_lb_per_in).toBeCloseTo(95.52, 2);
    expect(answer.allowable_lb).toBeCloseTo(229.25, 1);
  });

  // IECC 2021 R301: Boulder County, Colorado stands in zone 5B.
  it('climate knows a county', async () => {
    expect((await answerOf('climate')).climate_zone).toBe('5B');
  });

  // Twelve equal months at 65 °F: no heating at base 65; 15 °F × 365 days of cooling at base 50.
  it('climate works out twelve months', async () => {
    const answer = await answerOf('climate', {
      monthly_mean_temp_f: Array(12).fill(65),
      monthly_precip_in: Array(12).fill(3),
    });
    expect(answer.cdd50_f_days).toBeGreaterThan(5400);
    expect(answer.cdd50_f_days).toBeLessThan(5600);
    expect(answer.climate_zone).toMatch(/^3[ABC]$/);
  });
});

describe('calc refuses', () => {
  it('an unknown name, with the names and the nearest', async () => {
    const ended = await calc('termal', {});
    expectRefused(ended, /"termal".*thermal, condensation, climate.*buck.*Did you mean "thermal"\?/);
  });

  it('no name, with the names', async () => {
    expectRefused(await runProgram(['calc']), /calculator: \(nothing\).*thermal, condensation/);
  });

  it('a name of the prototype of objects', async () => {
    expectRefused(await calc('constructor', {}), /"constructor" is not accepted/);
    expectRefused(await calc('__proto__', {}), /"__proto__" is not accepted/);
  });

  it('a third argument', async () => {
    expectRefused(await runProgram(['calc', 'wind', '-', 'more'], { stdin: '{}' }), /"more"/);
  });

  it('an unknown key, by its name', async () => {
    expectRefused(await calc('buck', { ...CALC_EXAMPLES.buck, hue: 'blue' }), /hue: "blue" is not accepted/);
  });

  it('a key that reaches the prototype of objects', async () => {
    const text = JSON.stringify(CALC_EXAMPLES.wind).replace('{', '{"__proto__":{"kzt":1},');
    expectRefused(await calc('wind', text), /__proto__/);
  });

  it.each([
    [
      'a negative speed',
      { basic_wind_speed_mph: -115 },
      /basic_wind_speed_mph: -115 is not accepted.*85 to 220/,
    ],
    ['a number as text', { basic_wind_speed_mph: '115' }, /basic_wind_speed_mph: "115" is not accepted/],
    ['a height above the method', { mean_roof_height_ft: 61 }, /mean_roof_height_ft: 61 is not accepted/],
    ['an unknown zone', { wall_zone: 6 }, /wall_zone: 6 is not accepted/],
    ['null', { exposure: null }, /exposure: null is not accepted/],
  ])('%s', async (_, change, message) => {
    expectRefused(await calc('wind', { ...CALC_EXAMPLES.wind, ...change }), message);
  });

  it.each([
    ['NaN', 'NaN', /line 1, column \d+: "NaN/],
    ['Infinity', '-Infinity', /line 1, column \d+/],
    [
      'a number beyond all bounds',
      '1e999',
      /basic_wind_speed_mph: a number too large to be read is not accepted/,
    ],
  ])('%s', async (_, literal, message) => {
    const text = JSON.stringify({ ...CALC_EXAMPLES.wind, basic_wind_speed_mph: 0.5 }).replace(
      ':0.5',
      `:${literal}`,
    );
    expectRefused(await calc('wind', text), message);
  });

  it('text that is no JSON, naming source, line and column', async () => {
    const path = file('broken.json', '{\n  "standard": "ASCE 7-16",\n  "exposure": "B",\n}\n');
    expectRefused(await runProgram(['calc', 'wind', path]), `${path}, line 4, column 1: "}"`);
    expectRefused(await calc('wind', '{"standard" "x"}'), /standard input, line 1, column 13: /);
  });

  it('no text at all', async () => {
    expectRefused(await calc('wind', ''), /standard input, line 1, column 1: the end of the text/);
  });

  it('a key given twice', async () => {
    expectRefused(await calc('wind', '{"kzt": 1, "kzt": 2}'), /column 12.*Give each key once/);
  });

  it('nesting without end', async () => {
    expectRefused(await calc('wind', '['.repeat(100_000)), /Nest at most/);
  });

  it('a file that is not there, a folder, bytes that are no UTF-8, and more than 1 MB', async () => {
    const missing = join(folder, 'missing.json');
    expectRefused(await runProgram(['calc', 'wind', missing]), /FILE: ".*missing\.json".*no such file/);
    expectRefused(await runProgram(['calc', 'wind', folder]), /FILE: .*it is a folder/);
    expectRefused(
      await runProgram(['calc', 'wind', file('latin1', Buffer.from([0x22, 0xe9, 0x22]))]),
      /UTF-8/,
    );
    expectRefused(await calc('wind', ' '.repeat(1_000_001)), /standard input: over 1 MB.*at most 1 MB/);
  });

  it('without letting the input steer the terminal', async () => {
    const ended = await calc('wind', { ...CALC_EXAMPLES.wind, '\u001b[2Jkey': 1 });
    expectRefused(ended, /\\u001b\[2Jkey/);
    expect(ended.stderr).not.toContain('\u001b');
  });
});
