import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { glassWeight_lb, windowsTableSchema, windowWeight } from '../../src/calculators/window-weight.ts';

const table = windowsTableSchema.parse(
  JSON.parse(readFileSync(new URL('../../rules/openings/windows.table.json', import.meta.url), 'utf8')),
);

describe('glass weights', () => {
  // Glass trade data sheet (pounds per square foot) against 2500 kg/m³: 13.0 lb/ft² per inch, within 1 %.
  const KG_PER_M2_PER_MM_IN_LB_PER_FT2 = (2.5 / 0.45359237) * 0.09290304;
  it.each([
    ['1/8', 0.125],
    ['3/16', 0.1875],
    ['1/4', 0.25],
    ['3/8', 0.375],
    ['1/2', 0.5],
  ])('%s in.: data sheet and glass density agree', (nominal, thickness_in) => {
    const fromDensity = KG_PER_M2_PER_MM_IN_LB_PER_FT2 * thickness_in * 25.4;
    expect(Math.abs((table.glass.lb_per_ft2[nominal] ?? 0) / fromDensity - 1)).toBeLessThan(0.0101);
  });
  it('the low figure for 1/8 in. is 3.0 mm glass', () => {
    expect(table.glass.thin_1_8_lb_per_ft2).toBeCloseTo(KG_PER_M2_PER_MM_IN_LB_PER_FT2 * 3, 2);
  });

  // UK glazing page: 4 mm double 20 kg/m², triple 30 kg/m². A 41 in. square unit shows 36 × 36 in. = 0.8361 m² of glass.
  it.each([
    ['double' as const, 20],
    ['triple' as const, 30],
  ])('4 mm %s glazing weighs %i kg/m²', (glazing, kg_per_m2) => {
    const lb = glassWeight_lb(41, 41, glazing, KG_PER_M2_PER_MM_IN_LB_PER_FT2 * 4, table);
    expect(Math.abs(lb * 0.45359237 - kg_per_m2 * 0.83613)).toBeLessThan(0.05);
  });
});

describe('whole units, typical weights per square foot, from memory', () => {
  it.each([
    { glazing: 'double', lite: '1/8', frame: 'vinyl', operation: 'fixed', low: 3.5, high: 5 },
    { glazing: 'double', lite: '1/8', frame: 'wood-clad', operation: 'casement', low: 4.5, high: 6.5 },
    { glazing: 'double', lite: '1/8', frame: 'fibreglass', operation: 'casement', low: 4, high: 5.5 },
    { glazing: 'triple', lite: '1/8', frame: 'fibreglass', operation: 'casement', low: 5.5, high: 7.5 },
    { glazing: 'triple', lite: '3/16', frame: 'wood-clad', operation: 'casement', low: 8, high: 11 },
  ] as const)('$glazing $lite in., $frame $operation: $low to $high lb/ft², from memory', (c) => {
    const { likely_lb } = windowWeight({ ...c, width_in: 40, height_in: 60 }, table);
    const perFt2 = likely_lb / ((40 * 60) / 144);
    expect(perFt2).toBeGreaterThanOrEqual(c.low);
    expect(perFt2).toBeLessThanOrEqual(c.high);
  });
});
