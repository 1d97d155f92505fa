import stringWidth from 'string-width';
import { describe, expect, it } from 'vitest';
import { buildRecord } from '../../src/record/build-record.ts';
import { recordText } from '../../src/record/record-text.ts';
import { CREATED, EMPTY_ADVICE, FALLBACK_ADVICE, FULL_ADVICE, SCENARIO } from './fixture-advice.ts';
import { HOSTILE_NAMES } from './hostile-names.ts';

const recordOf = (advice = FULL_ADVICE, scenario = SCENARIO) =>
  buildRecord({ scenario, advice, created: CREATED, revision: 1 });

describe('recordText', () => {
  it('says what the pages say: the same headings and figures', () => {
    const text = recordText(recordOf(), 80);
    for (const wanted of [
      'Decision record: Quarry Lane duplex, north wall\n====',
      'The situation\n----',
      'First choice: Three-coat cement stucco',
      '  - 8. three-coat cement plaster, 7/8 in.\n    Role: finish;',
      '  1. Slope the sill of the buck outward.',
      'Rule trace\n----',
      'from memory, not',
      'Owner (must sign: pays for it and lives with it)\n    Name ____',
    ]) {
      expect(text).toContain(wanted);
    }
  });

  it('asks bids of all trades of the cladding, not of the last one alone', () => {
    const text = recordText(recordOf(), 1000);
    expect(text).toContain('trades: carpenter and plasterer) from two bidders or more');
  });

  it('sets a small table in columns and numbers to the right', () => {
    expect(recordText(recordOf(), 80)).toContain(
      '  What                     Weight\n  -----------------------  ------\n  safety against moisture       2\n',
    );
  });

  it.each([40, 60, 80, 120])('keeps every line within %i columns', (width) => {
    for (const advice of [FULL_ADVICE, EMPTY_ADVICE, FALLBACK_ADVICE]) {
      for (const line of recordText(recordOf(advice), width).split('\n')) {
        expect(stringWidth(line)).toBeLessThanOrEqual(width);
        expect(line).toBe(line.trimEnd());
      }
    }
  });

  it('treats a width too small to read as 40', () => {
    expect(recordText(recordOf(), 5)).toBe(recordText(recordOf(), 40));
  });

  it('says on top when the file was changed after it was saved', () => {
    const warning = 'This record was changed after it was saved';
    expect(recordText(recordOf(), 80, { isAltered: true }).slice(0, 400)).toContain(warning);
    expect(recordText(recordOf(), 80)).not.toContain(warning);
  });

  it.each(HOSTILE_NAMES)('shows escape codes and direction marks instead of obeying them: %j', (name) => {
    const text = recordText(recordOf(FULL_ADVICE, { ...SCENARIO, name }), 80);
    expect(text.replaceAll('\n', '')).not.toMatch(/[\p{Cc}\u202a-\u202e\u2066-\u2069\u200e\u200f]/u);
    for (const line of text.split('\n')) expect(stringWidth(line)).toBeLessThanOrEqual(80);
  });

  it('shows who signed', () => {
    const record = recordOf();
    const signed = {
      ...record,
      sign_off: { ...record.sign_off, owner: { name: 'A. Sample', date: '2026-03-16' } },
    };
    expect(recordText(signed, 80)).toContain('Name A. Sample Date 2026-03-16');
  });
});
