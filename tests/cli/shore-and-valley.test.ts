import { describe, expect, it } from 'vitest';
import { adviceSchema } from '../../src/advice/advice-schema.ts';
import { runProgram } from './run-program.ts';

const SHORE = 'scenarios/stucco-on-a-stormy-shore.json';
const VALLEY = 'scenarios/stucco-in-a-calm-valley.json';

async function answered(scenario: string) {
  const { code, stdout } = await runProgram(['advise', scenario, '--json', '--top', '6']);
  expect(code).toBe(0);
  return adviceSchema.parse(JSON.parse(stdout));
}

const [shore, valley] = await Promise.all([answered(SHORE), answered(VALLEY)]);

type Wall = (typeof shore)['ranked'][number];

function wallOf(advice: typeof shore, cladding: string): Wall {
  const found = advice.ranked.find(
    (wall) => wall.cladding === cladding && wall.insulation.id === 'mineral-wool',
  );
  if (!found) throw new Error(`no ${cladding} over mineral wool is ranked`);
  return found;
}

function use(wall: Wall, fixes: string, zone: 'field' | 'corner', check: string): number | null | undefined {
  const step = wall.fastening_schedule.steps.find((one) => one.fixes.startsWith(fixes));
  return step?.zones.find((one) => one.zone === zone)?.checks.find((one) => one.check === check)?.utilisation;
}

describe('heavy three-coat stucco over 3 in. of mineral wool, a 140 mph shore beside a calm valley', () => {
  // ASCE 7-16 by hand, 25 ft. Shore, exposure D: Kz 2.01 (25/700)^(2/11.5) = 1.126, q = 0.00256 x 1.126 x 0.85 x 140² =
  // 48.0 psf; 0.6 x 48.0 x 1.28 = 36.9 in the field, x 1.58 = 45.5 at the corners. Valley, 105 mph, exposure B: 15.95 psf,
  // 12.2 and 15.1.
  it('has the winds of both places (hand-worked)', () => {
    const outward = ({ wind }: typeof shore) => wind.zones.map(({ allowable }) => -allowable.outward_psf);
    for (const [told, field, corner] of [
      [outward(shore), 36.9, 45.5],
      [outward(valley), 12.25, 15.12],
    ] as const) {
      expect(told[0]).toBeCloseTo(field, 1);
      expect(told[1]).toBeCloseTo(corner, 1);
    }
  });

  it.each([
    'three-coat cement stucco on metal lath over furring',
    'three-coat cement stucco on a drainage mat with integral lath',
  ])('%s: every line of both has a governing check with its use', (cladding) => {
    const pair = [wallOf(shore, cladding), wallOf(valley, cladding)];
    for (const wall of pair) {
      expect(wall.insulation).toMatchObject({ thickness_in: 3, layers: 1 });
      expect(wall.fastening_schedule.verdict).toBe('design-required');
      for (const { zones, checks } of wall.fastening_schedule.steps.map(({ zones: both }) => ({
        zones: both,
        checks: both.flatMap((zone) => zone.checks),
      }))) {
        expect(zones).toHaveLength(2);
        expect(checks.every((check) => check.source.length > 4)).toBe(true);
        for (const zone of zones) {
          const governing = zone.checks.find(({ check, decides }) => check === zone.governing && decides);
          expect(governing?.utilisation).toBe(zone.utilisation);
          expect(zone.utilisation).toBeGreaterThan(0);
          expect(zone.utilisation).toBeLessThanOrEqual(1);
        }
      }
    }
    const fixes = pair.map((wall) => wall.fastening_schedule.steps.map((step) => step.fixes));
    expect(fixes[0]).toEqual(fixes[1]);
  });

  // Nails of 0.120 in. hold 1380 x 0.42^2.5 x 0.12 x 0.75 x 1.6 = 22.7 lb in the furring (NDS 12.2.3). Shore: 6 x 16 in. is
  // 0.667 ft², 24.6 lb in the field, too much; 4 x 16 in. 0.444 ft²: 16.4 and 20.2 lb. Valley, 6 in.: 10.1 lb at the corners,
  // and the 7 in. of lath practice decide.
  it('nails the lath at 4 in. on the shore by wind and at 6 in. in the valley by practice (hand-worked)', () => {
    const furred = 'three-coat cement stucco on metal lath over furring';
    const lath = (wall: Wall) =>
      wall.fastening_schedule.steps.find(({ fixes }) => fixes === 'the lath')?.zones ?? [];
    const [onShore, inValley] = [wallOf(shore, furred), wallOf(valley, furred)];
    expect(lath(onShore).map((zone) => [zone.spacing_along_in, zone.governing])).toEqual([
      [4, 'wind'],
      [4, 'wind'],
    ]);
    expect(lath(onShore).map((zone) => zone.utilisation ?? 0)).toEqual([
      expect.closeTo(16.4 / 22.7, 2),
      expect.closeTo(20.2 / 22.7, 2),
    ]);
    expect(lath(inValley).map((zone) => [zone.spacing_along_in, zone.governing])).toEqual([
      [6, 'lath-practice'],
      [6, 'lath-practice'],
    ]);
    expect(use(inValley, 'the lath', 'corner', 'wind')).toBeCloseTo(10.1 / 22.7, 2);
    // The screws through the boards: 1.333 ft² at 45.5 and 15.1 psf against 190 lb of head pull-through.
    expect(use(onShore, 'furring', 'corner', 'wind')).toBeCloseTo(60.7 / 190, 2);
    expect(use(inValley, 'furring', 'corner', 'wind')).toBeCloseTo(20.2 / 190, 2);
    // The same weight hangs on both.
    expect(use(onShore, 'furring', 'field', 'weight')).toBe(use(inValley, 'furring', 'field', 'weight'));
  });

  // A plan 30 ft wide: a tenth is 3 ft, 8 x 3 x 25 = 600 of 1,800 ft².
  it('marks the corner zone in feet and asks about salt air on the shore alone', () => {
    for (const [advice, isCoast] of [
      [shore, true],
      [valley, false],
    ] as const) {
      const schedule = advice.ranked[0]?.fastening_schedule;
      expect(schedule?.corner_zone).toMatchObject({ corner_width_ft: 3, corner_area_ft2: 600 });
      expect(schedule?.steps.some(({ corrosion }) => corrosion.coastal !== null)).toBe(isCoast);
    }
  });

  // Our own steps: 30 in. of rain a year on a shore (exposure D) want air behind the cladding.
  it('warns of driven rain on the shore, where no air moves behind the cladding', () => {
    const warned = (wall: Wall) => wall.cautions.some(({ rule }) => rule === 'rain.driven-rain-wants-air');
    const matted = 'three-coat cement stucco on a drainage mat with integral lath';
    expect(shore.site.annual_precip_in).toBeGreaterThan(30);
    expect(warned(wallOf(shore, matted))).toBe(true);
    expect(warned(wallOf(shore, 'three-coat cement stucco on metal lath over furring'))).toBe(false);
    expect(warned(wallOf(valley, matted))).toBe(false);
  });

  it('says it on the screen, line by line', async () => {
    const [onShore, inValley] = await Promise.all(
      [SHORE, VALLEY].map(async (scenario) => (await runProgram(['advise', scenario])).stdout),
    );
    for (const text of [onShore, inValley]) {
      const from = text?.indexOf('Fastening, in the order of work') ?? -1;
      const lines = text
        ?.slice(from, text.indexOf('A design professional must settle', from))
        .split(/\n {1,2}\d+ {2}/)
        .slice(1)
        .map((line) => line.replaceAll(/\s+/g, ' '));
      expect(lines).toHaveLength(5);
      for (const line of lines ?? []) expect(line).toMatch(/decided by [a-z ]+, used to \d+ %/);
    }
    expect(onShore).toContain('stainless steel for fastener');
    expect(inValley).not.toContain('stainless steel for fastener');
  });
});
