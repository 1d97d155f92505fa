import { mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import stringWidth from 'string-width';
import { afterAll, describe, expect, it } from 'vitest';
import { whyNotSchema } from '../../src/advice/why-not-schema.ts';
import { SCENARIO } from './example-inputs.ts';
import { runProgram } from './run-program.ts';

const folder = mkdtempSync(join(tmpdir(), 'cladwright-why-not-'));
afterAll(() => rmSync(folder, { recursive: true }));

const FULL = { ...SCENARIO, interior_vapour_retarder: 'class-ii', budget_usd_per_ft2: 14 };

const ask = (...args: string[]) => runProgram(['advise', '-', ...args], { stdin: JSON.stringify(FULL) });

describe('advise --why-not', { timeout: 60_000 }, () => {
  it('says as JSON and as text which rules are against a wall and what would admit it, with 0', async () => {
    const words = 'three-coat stucco on furring over 4 in. mineral wool';
    const [asJson, asText] = await Promise.all([ask('--why-not', words, '--json'), ask('--why-not', words)]);
    expect([asJson.code, asText.code, asJson.stderr, asText.stderr]).toEqual([0, 0, '', '']);
    const told = whyNotSchema.parse(JSON.parse(asJson.stdout));
    expect(told).toMatchObject({ asked: words, verdict: 'excluded' });
    const text = asText.stdout.replace(/\s+/g, ' ');
    for (const { rule } of told.because) expect(text).toContain(`rule ${rule}`);
    expect(told.smallest_changes.length).toBeGreaterThan(0);
    for (const { sentence } of told.smallest_changes) expect(text).toContain(sentence);
    for (const line of asText.stdout.split('\n')) expect(stringWidth(line)).toBeLessThanOrEqual(80);
  });

  it('refuses a name that it does not know, with the nearest ones, and 2', async () => {
    const { code, stdout, stderr } = await ask('--why-not', 'marble over 3 in. eps');
    expect([code, stdout]).toEqual([2, '']);
    expect(stderr).toMatch(/^cladwright: why-not: .*"marble"/);
    expect(stderr.trimEnd().split('\n')).toHaveLength(1);
  });

  it('writes no record', async () => {
    const { code, stdout, stderr } = await ask('--why-not', 'stucco', '--save', folder);
    expect([code, stdout]).toEqual([2, '']);
    expect(stderr).toContain('--save');
    expect(readdirSync(folder)).toEqual([]);
  });

  it('shows control characters in the words, and never obeys them', async () => {
    const { code, stderr } = await ask('--why-not', 'stucco \u001b[31mover\u0007 marble');
    expect(code).toBe(2);
    for (const mark of ['\u001b', '\u0007']) expect(stderr).not.toContain(mark);
  });
});
