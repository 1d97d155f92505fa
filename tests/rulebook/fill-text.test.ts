import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { citationText } from '../../src/rulebook/citation.ts';
import { fillText } from '../../src/rulebook/fill-text.ts';
import { formatNumber, readableText, unitMarks } from '../../src/rulebook/format-fact.ts';
import { factIndex } from './invented-rules.ts';

const index = factIndex();
const fill = (text: string, facts: Record<string, number | string | boolean | null>) =>
  fillText(text, facts, index);

it('counts pieces whole, and leaves it to the sentence to name them', () => {
  expect(formatNumber(37.5, 'pieces')).toBe('38');
  expect(unitMarks('pieces')).toEqual({ before: '', after: '' });
});

describe('figures in a text', () => {
  it.each([
    ['wall.u_factor', 0.0412, '0.041 Btu/(h·ft²·°F)'],
    ['wall.u_factor', 0.05, '0.050 Btu/(h·ft²·°F)'],
    ['wall.weight_psf', 12, '12.0 psf'],
    ['wall.weight_psf', 3.14, '3.1 psf'],
    ['wall.ci_r', 12.6, 'R-12.6'],
    ['wall.ci_r', 5, 'R-5'],
    ['wall.thickness_in', 1.5, '1.5 in.'],
    ['wall.thickness_in', 0.375, '0.375 in.'],
    ['wall.thickness_in', 4.6666667, '4.67 in.'],
    ['wall.permeance_perm', 0.3, '0.3 perm'],
    ['wall.permeance_perm', 0.0567, '0.057 perm'],
    ['wall.permeance_perm', 15.63, '16 perm'],
    ['wall.permeance_perm', 0, '0 perm'],
    ['wall.cost_usd_per_ft2', 28.7, '$29/ft²'],
    ['wall.cost_usd_per_ft2', -3, '-$3/ft²'],
    ['wall.layers', 2, '2'],
    ['wall.layers', 0.4218, '0.42'],
    ['wall.is_new', true, 'yes'],
    ['wall.is_new', false, 'no'],
    ['wall.retarder', 'class-iii', 'class III'],
    ['wall.cladding', 'R-20 + R-5 or R-13 + R-10', 'R-20 + R-5 or R-13 + R-10'],
    ['wall.weight_psf', null, 'not known'],
    ['wall.retarder', null, 'not known'],
  ])('%s = %s reads "%s"', (id, value, expected) => {
    expect(fill(`It is {${id}}, then`, { [id]: value })).toBe(`It is ${expected}, then`);
  });

  it('do not repeat a unit that the sentence says itself', () => {
    const facts = {
      'wall.ci_r': 7.5,
      'wall.u_factor': 0.06,
      'wall.cost_usd_per_ft2': 30,
      'wall.thickness_in': 2,
      'wall.permeance_perm': 1,
    };
    expect(fill('R-{wall.ci_r} and U-{wall.u_factor}.', facts)).toBe('R-7.5 and U-0.060.');
    expect(fill('R {wall.ci_r}, U {wall.u_factor}.', facts)).toBe('R 7.5, U 0.060.');
    expect(fill('\u0024{wall.cost_usd_per_ft2} a square foot', facts)).toBe('$30 a square foot');
    expect(fill('\u0024{wall.cost_usd_per_ft2} it is', facts)).toBe('$30/ft² it is');
    expect(fill('{wall.thickness_in} in. thick, {wall.thickness_in} inches', facts)).toBe(
      '2 in. thick, 2 inches',
    );
    expect(fill('{wall.thickness_in} in the wall', facts)).toBe('2 in. in the wall');
    expect(fill('{wall.permeance_perm} permeance', facts)).toBe('1 perm permeance');
  });

  it('get more decimals when two different ones would look the same', () => {
    const text = fill('{wall.weight_psf} is above {wall.limit_psf}', {
      'wall.weight_psf': 10.04,
      'wall.limit_psf': 10,
    });
    expect(text).toBe('10.04 psf is above 10.00 psf');
    const equal = fill('{wall.weight_psf} meets {wall.limit_psf}', {
      'wall.weight_psf': 10,
      'wall.limit_psf': 10,
    });
    expect(equal).toBe('10.0 psf meets 10.0 psf');
  });

  it('leave no brace behind, whatever the values', () => {
    fc.assert(
      fc.property(fc.double({ noNaN: true, min: -1e9, max: 1e9 }), fc.string(), (n, s) => {
        const text = fill('{wall.weight_psf} {wall.ci_r} {wall.permeance_perm} {wall.thickness_in}', {
          'wall.weight_psf': n,
          'wall.ci_r': n,
          'wall.permeance_perm': n,
          'wall.thickness_in': n,
        });
        expect(text).not.toMatch(/[{}]|NaN|e\+|undefined/);
        // Values are never read as placeholders or as replacement patterns.
        expect(fill('<{wall.cladding}>', { 'wall.cladding': `$&{wall.layers}${s}!` })).toBe(
          `<$&{wall.layers}${s}!>`,
        );
      }),
    );
  });

  it('throw when a fact is missing', () => {
    expect(() => fill('It is {wall.layers}.', {})).toThrow('fact wall.layers is missing');
  });
});

describe('numbers', () => {
  it('come close to their value: within half of the last decimal of the unit', () => {
    const halves = { psf: 0.05, 'Btu/(h·ft²·°F)': 0.0005, '$/ft²': 0.5, psi: 0.5, '°F': 0.05 };
    fc.assert(
      fc.property(fc.double({ noNaN: true, min: -99_999, max: 99_999 }), (value) => {
        for (const [unit, half] of Object.entries(halves)) {
          expect(Math.abs(Number(formatNumber(value, unit).replaceAll(',', '')) - value)).toBeLessThanOrEqual(
            half * 1.0001,
          );
        }
      }),
    );
  });

  it('group thousands and have no negative zero', () => {
    expect(formatNumber(1_234_567.8, 'ft²')).toBe('1,234,568');
    expect(formatNumber(-1234, 'mph')).toBe('-1,234');
    expect(formatNumber(-0.01, 'psf')).toBe('0.0');
    expect(formatNumber(1000, '')).toBe('1,000');
    expect(formatNumber(100, 'perm')).toBe('100');
  });
});

describe('identifiers', () => {
  it.each([
    ['mineral-wool', 'mineral wool'],
    ['class-i', 'class I'],
    ['lag-screw-1/4', 'lag screw 1/4'],
    ['nail-0.120', 'nail 0.120'],
    ['2x6', '2x6'],
    ['5A', '5A'],
    ['none', 'none'],
  ])('%s reads "%s"', (given, expected) => {
    expect(readableText(given)).toBe(expected);
  });
});

describe('citations', () => {
  it('say when they are remembered or have no source', () => {
    expect(citationText({ text: 'Code X, section 1', provenance: 'verified' })).toBe('Code X, section 1');
    expect(citationText({ text: 'Code X, section 1', provenance: 'memory' })).toBe(
      'Code X, section 1 (from memory, not verified)',
    );
    expect(citationText({ text: 'common practice', provenance: 'common-practice' })).toBe(
      'common practice, no source',
    );
    expect(citationText({ text: 'Common practice, no source', provenance: 'common-practice' })).toBe(
      'Common practice, no source',
    );
    expect(citationText({ text: 'Plasterers do so', provenance: 'common-practice' })).toBe(
      'Plasterers do so (common practice, no source)',
    );
  });
});
