import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import retarderJson from '../../rules/vapour/retarders.table.json' with { type: 'json' };
import { parseInput } from '../../src/base/parse-input.ts';
import { Refusal } from '../../src/base/refusal.ts';
import {
  judgeRetarder,
  type RetarderQuestion,
  vapourInputSchema,
  vapourRequirement,
} from '../../src/calculators/vapour-code.ts';
import { vapourTableSchema } from '../../src/calculators/vapour-table.ts';

const table = vapourTableSchema.parse(retarderJson);
const input = {
  edition: '2021',
  climate_zone: '6A',
  framing_depth_in: 5.5,
  ci_r: 11.25,
  cladding_vented: false,
};

function ask(changes: Record<string, unknown> = {}) {
  return vapourRequirement(table, parseInput(vapourInputSchema, { ...input, ...changes }));
}

describe('vapourRequirement', () => {
  it('permits Class III exactly at the minimum and not a hair below', () => {
    expect(ask().class_iii.verdict).toBe('permitted');
    expect(ask({ ci_r: 11.2 }).class_iii.verdict).toBe('conditional');
    // 0.1 · 112.5 as a sum of layers may fall short by rounding alone.
    expect(ask({ ci_r: 11.25 - 1e-12 }).class_iii.verdict).toBe('permitted');
  });

  it('carries minima, sources with provenance, and the standing notes', () => {
    const found = ask();
    expect(found.min_ci_r_for_class_iii).toBe(11.25);
    expect(found.min_ci_r_for_class_ii).toBe(5);
    expect(found.source.some((s) => s.includes('Table R702.7(3)') && s.includes('verified'))).toBe(true);
    expect(found.source.some((s) => s.includes('Table R702.7(4)') && s.includes('from memory'))).toBe(true);
    const notes = found.notes.join(' ');
    expect(notes).toContain('the larger governs');
    expect(notes).toContain('approved hygrothermal design');
    expect(notes).toContain('amend');
  });

  it('takes listed vented cladding over the right sheathing for the exterior R', () => {
    const vented = { ci_r: 0, cladding_vented: true };
    expect(ask({ ...vented, sheathing: 'gypsum' }).class_iii.verdict).toBe('permitted');
    expect(ask({ ...vented, sheathing: 'fibreboard' }).class_iii.verdict).toBe('permitted');
    expect(ask({ ...vented, sheathing: 'osb' }).class_iii.verdict).toBe('conditional');
    expect(ask({ ...vented, sheathing: 'osb', climate_zone: '5A' }).class_iii.verdict).toBe('permitted');
    expect(ask({ ...vented, sheathing: 'boards', climate_zone: '5A' }).class_iii.verdict).toBe('conditional');
    expect(ask({ ...vented, sheathing: 'gypsum', climate_zone: '7' }).class_iii.verdict).toBe('conditional');
  });

  it('reads an unsaid sheathing as the one with the fewest allowances, and says so', () => {
    const zone5 = ask({ ci_r: 0, cladding_vented: true, climate_zone: '5A' });
    const zone6 = ask({ ci_r: 0, cladding_vented: true });
    expect(zone5.class_iii.verdict).toBe('permitted');
    expect(zone6.class_iii.verdict).toBe('conditional');
    expect(zone6.notes.join(' ')).toContain('sheathing is not said');
    expect(zone6.notes.join(' ')).toContain('only where the building official approves');
  });

  it('reads depths up to 3.5 in. as 2x4, up to 5.5 in. as 2x6, and notes what lies between', () => {
    expect(ask({ framing_depth_in: 2.5 }).min_ci_r_for_class_iii).toBe(7.5);
    expect(ask({ framing_depth_in: 3.5 }).min_ci_r_for_class_iii).toBe(7.5);
    expect(ask({ framing_depth_in: 3.625 }).min_ci_r_for_class_iii).toBe(11.25);
    expect(ask({ framing_depth_in: 3.625 }).notes.join(' ')).toContain('2x6 column');
    expect(ask().notes.join(' ')).not.toContain('column');
  });

  it.each([6, 7.25, 12])('sends %d in. framing off the table to an approved design', (framing_depth_in) => {
    const found = ask({ framing_depth_in, ci_r: 30 });
    expect(found.class_iii.verdict).toBe('conditional');
    expect(found.class_iii.why).toContain('approved design');
    expect(found.class_ii.verdict).toBe('conditional');
    expect(found.min_ci_r_for_class_iii).toBeNull();
    expect(found.min_ci_r_for_class_ii).toBeNull();
    expect(found.notes.join(' ')).toContain('approved design');
  });

  it('asks Class II for exterior R only under foam plastic', () => {
    expect(ask({ ci_r: 4 }).class_ii.verdict).toBe('conditional');
    expect(ask({ ci_r: 4 }).class_ii.why).toContain('where the exterior insulation is foam plastic');
    expect(ask({ ci_r: 4, foam_plastic_ci: true }).class_ii.verdict).toBe('conditional');
    expect(ask({ ci_r: 5, foam_plastic_ci: true }).class_ii.why).toContain('exceed 1 perm by the wet cup');
    expect(ask({ ci_r: 4, foam_plastic_ci: false }).class_ii.verdict).toBe('permitted');
    expect(ask({ ci_r: 4, foam_plastic_ci: false }).min_ci_r_for_class_ii).toBeNull();
    expect(ask({ ci_r: 0 }).class_ii.verdict).toBe('permitted');
    expect(ask({ ci_r: 4, edition: '2018' }).class_ii.verdict).toBe('permitted');
    expect(ask({ ci_r: 4, edition: '2018' }).min_ci_r_for_class_ii).toBeNull();
  });

  it('warns where 2018 is silent on Class I in a warm zone', () => {
    const found = ask({ edition: '2018', climate_zone: '2A' });
    expect(found.class_i.verdict).toBe('permitted');
    expect(found.class_i.why).toContain('Later editions prohibit');
  });

  it('says by which code plain zone 4 was judged', () => {
    expect(ask({ climate_zone: '4A' }).notes.join(' ')).toContain('by the residential code');
    expect(ask({ climate_zone: '4A', occupancy: 'building-code' }).notes.join(' ')).toContain(
      'by the building code',
    );
  });

  it('says when a figure is held from memory', () => {
    expect(ask({ climate_zone: '8' }).source.some((s) => s.includes('R-20 (from memory'))).toBe(true);
  });

  it('never turns worse with more exterior insulation', () => {
    const better = { prohibited: 0, conditional: 1, permitted: 2 };
    fc.assert(
      fc.property(
        fc.constantFrom('2018', '2021', '2024'),
        fc.constantFrom('1A', '3C', '4A', '4C', '5B', '6A', '7', '8'),
        fc.constantFrom(3.5, 5.5, 7.25),
        fc.double({ min: 0.1, max: 40, noNaN: true }),
        fc.double({ min: 0, max: 20, noNaN: true }),
        (edition, climate_zone, framing_depth_in, ci_r, more) => {
          const a = ask({ edition, climate_zone, framing_depth_in, ci_r });
          const b = ask({ edition, climate_zone, framing_depth_in, ci_r: ci_r + more });
          for (const key of ['class_i', 'class_ii', 'class_iii'] as const) {
            expect(better[b[key].verdict]).toBeGreaterThanOrEqual(better[a[key].verdict]);
          }
        },
      ),
    );
  });

  it.each([
    [{ edition: '2015' }, /edition: "2015"/],
    [{ climate_zone: '9' }, /climate_zone: "9"/],
    [{ climate_zone: '4' }, /climate_zone: "4"/],
    [{ framing_depth_in: 0 }, /framing_depth_in: 0/],
    [{ ci_r: -1 }, /ci_r: -1/],
    [{ cladding_vented: 'no' }, /cladding_vented: "no"/],
    [{ sheathing: 'cardboard' }, /sheathing: "cardboard"/],
    [{ zone: '5A' }, /zone: "5A" .*not known/],
  ])('refuses %j by name', (changes, message) => {
    expect(() => ask(changes)).toThrow(Refusal);
    expect(() => ask(changes)).toThrow(message);
  });
});

describe('judgeRetarder', () => {
  const question: RetarderQuestion = {
    edition: '2021',
    climate_zone: '5B',
    framing_depth_in: 5.5,
    ci_r: 5,
    retarder_class: 'class-iii',
    sheathing: 'osb',
    foam_plastic_ci: true,
    cladding_listed_as_vented: false,
  };
  const judge = (changes: Partial<RetarderQuestion>) => judgeRetarder(table, { ...question, ...changes });

  it('tells the trap: R-20 + R-5 over 2x6 with Class III', () => {
    const found = judge({});
    expect(found.verdict).toBe('conditional');
    expect(found.class_iii_ci_met).toBe(false);
    expect(found.min_ci_r_class_iii).toBe(7.5);
    expect(found.class_ii_ci_met).toBe(true);
  });

  it('gives 0 where nothing is asked for and null off the table', () => {
    expect(judge({ climate_zone: '3B' }).min_ci_r_class_iii).toBe(0);
    expect(judge({ climate_zone: '3B' }).class_iii_ci_met).toBe(true);
    expect(judge({ framing_depth_in: 7.25 }).min_ci_r_class_iii).toBeNull();
    expect(judge({ framing_depth_in: 7.25 }).class_iii_ci_met).toBeNull();
    expect(judge({ foam_plastic_ci: false }).min_ci_r_class_ii).toBe(0);
  });

  it('lets a responsive retarder in everywhere from 2021 on, and judges it as Class II in 2018', () => {
    for (const climate_zone of ['1A', '2A', '4A', '5B', '8']) {
      expect(judge({ retarder_class: 'responsive', climate_zone }).verdict).toBe('permitted');
    }
    expect(judge({ retarder_class: 'responsive', edition: '2018' }).why).toContain('judged as Class II');
  });

  it('forbids polyethylene in warm zones and permits it in cold ones', () => {
    expect(judge({ retarder_class: 'class-i', climate_zone: '2A' }).verdict).toBe('prohibited');
    expect(judge({ retarder_class: 'class-i', climate_zone: '7' }).verdict).toBe('permitted');
  });

  it('never lets a bare wall pass where a retarder is asked for', () => {
    expect(judge({ retarder_class: 'none', climate_zone: '3A' }).verdict).toBe('permitted');
    expect(judge({ retarder_class: 'none', climate_zone: '5A', ci_r: 20 }).verdict).toBe('conditional');
    expect(judge({ retarder_class: 'none', climate_zone: '5A' }).from_memory).toBe(true);
    expect(judge({ retarder_class: 'none', climate_zone: '5A', edition: '2018' }).verdict).toBe('prohibited');
  });

  it('marks verdicts that rest on figures from memory', () => {
    expect(judge({ climate_zone: '8' }).from_memory).toBe(true);
    expect(judge({ climate_zone: '5B' }).from_memory).toBe(false);
    expect(judge({ edition: '2024' }).from_memory).toBe(true);
  });

  it('agrees with the long form', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('2018', '2021', '2024'),
        fc.constantFrom('0A', '1A', '2B', '3C', '4A', '4C', '5C', '6B', '7', '8'),
        fc.double({ min: 1.5, max: 12, noNaN: true }),
        fc.double({ min: 0, max: 30, noNaN: true }),
        fc.constantFrom('class-i', 'class-ii', 'class-iii'),
        (edition, climate_zone, framing_depth_in, ci_r, retarder_class) => {
          const found = ask({
            edition,
            climate_zone,
            framing_depth_in,
            ci_r,
            sheathing: 'osb',
            foam_plastic_ci: true,
          });
          const long = { 'class-i': found.class_i, 'class-ii': found.class_ii, 'class-iii': found.class_iii };
          const short = judge({ edition, climate_zone, framing_depth_in, ci_r, retarder_class });
          expect({ verdict: short.verdict, why: short.why }).toEqual(long[retarder_class]);
        },
      ),
    );
  });

  it('refuses a zone that the tables do not know', () => {
    expect(() => judge({ climate_zone: '4' })).toThrow(Refusal);
  });
});

describe('the table itself', () => {
  it('has one permission row for every edition and zone, and sections for both codes', () => {
    const zones = ['0', '1', '2', '3', '4', '4C', '5', '6', '7', '8'];
    for (const edition of ['2018', '2021', '2024']) {
      expect(table.permission.filter((r) => r.edition === edition).map((r) => r.zone)).toEqual(zones);
      expect(table.sections.filter((s) => s.edition === edition).map((s) => s.occupancy)).toEqual([
        'residential',
        'building-code',
      ]);
    }
  });
  it('gives a figure wherever a class goes by table', () => {
    for (const row of table.permission) {
      if (row.class_iii !== 'by-table') continue;
      expect(
        table.class_iii_ci.some((r) => r.edition === row.edition && r.zone === row.zone),
        `${row.edition} ${row.zone}`,
      ).toBe(true);
    }
  });
  it('never asks for less over 2x6 than over 2x4', () => {
    for (const row of [...table.class_iii_ci, ...table.class_ii_ci]) {
      expect(row.over_2x6.r).toBeGreaterThanOrEqual(row.over_2x4.r);
    }
  });
});
