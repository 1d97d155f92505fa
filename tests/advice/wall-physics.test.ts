import { describe, expect, it } from 'vitest';
import type { RankedAssembly } from '../../src/advice/advice-schema.ts';
import { figuresOf } from '../../src/advice/figures.ts';
import type { Judged, JudgedWall, Knowledge } from '../../src/advice/judge-walls.ts';
import { energyRemedy } from '../../src/advice/wall-energy-words.ts';
import { wallPhysics } from '../../src/advice/wall-physics.ts';
import type { InsulationBuild } from '../../src/assembly/insulation-builds.ts';
import { answer, board, briefOf, job, judge, KNOWLEDGE, withCatalogue } from './pipeline.ts';

const { catalogue } = KNOWLEDGE;
const market = withCatalogue({
  builds: catalogue.builds.filter((b) => ['eps', 'polyiso'].includes(b.insulation.id)),
  claddings: catalogue.claddings.filter((c) => ['plaster-on-furred-lath', 'insulated-finish'].includes(c.id)),
  retarders: catalogue.retarders.filter((r) => r.id === 'latex-paint'),
  barriers: catalogue.barriers.filter((b) => b.id === 'sealed-permeable'),
  bucks: catalogue.bucks
    .filter((b) => ['plywood-box', 'steel-bracket'].includes(b.id))
    .map((b) => ({ ...b, min_projection_in: 0, max_projection_in: 99 })),
});

/** The same market where nobody has seen the wood U-factors of the code. */
function withLimitsFromMemory(): Knowledge {
  const energy = structuredClone(market.tables.energy);
  for (const { rows } of energy.residential_editions)
    for (const { wood_frame } of rows)
      Object.assign(wood_frame.max_u_factor, { sources: ['recall'], provenance: 'memory' });
  return { ...market, tables: { ...market.tables, energy } };
}

const physicsOf = ({ context, assess }: Judged, { candidate }: JudgedWall) =>
  wallPhysics(candidate, assess.partsOf(candidate), context);

const idOf = ({ candidate: { cladding, build, buck } }: JudgedWall) =>
  `${cladding.id}/${build.insulation.id}-${build.boards_in.join('+')}/${buck.id}`;

function find(judged: Judged, id: string): JudgedWall {
  const wall = judged.walls.find((one) => idOf(one) === id);
  if (!wall) throw new Error(`no wall ${id}`);
  return wall;
}

describe('the energy route of a wall', async () => {
  const zone5 = await judge(briefOf(), market);
  const all = zone5.walls.map((wall) => ({ wall, energy: physicsOf(zone5, wall).energy }));

  it('is the one that the rules judged by', () => {
    const routes = new Set(all.map(({ energy }) => energy.route));
    expect(routes.size).toBeGreaterThanOrEqual(2);
    for (const { wall, energy } of all) {
      const { facts } = wall.verdicts;
      const expected = `${facts['energy.complies_by_u']}/${facts['energy.complies_by_r']}`;
      expect(
        { 'true/true': 'both', 'true/false': 'u-factor', 'false/true': 'r-value', 'false/false': 'none' }[
          expected
        ],
      ).toBe(energy.route);
      const words = facts['energy.route'];
      if (energy.route !== 'none') expect(energy.summary).toContain(`in zone 5B ${words}.`);
      else expect(energy.summary).toContain('does not meet');
    }
  });

  // 2021, zone 5: U 0.045 and R-20 + R-5, each seen in two published sources.
  it('comes with its margin in figures and in words', () => {
    const wall = find(zone5, 'plaster-on-furred-lath/eps-2/plywood-box');
    const { energy } = physicsOf(zone5, wall);
    const u = Number(wall.verdicts.facts['thermal.u_factor']);
    expect(energy.max_u_factor).toBe(0.045);
    expect(energy.u_margin_percent).toBeCloseTo(((0.045 - u) / 0.045) * 100, 1);
    expect(energy.option_met).toMatchObject({ cavity_r: 20, ci_r: 5, spare_cavity_r: 0, spare_ci_r: 3 });
    expect(energy.summary).toContain(
      'The option R-20 + R-5 continuous is met with nothing to spare in the cavity and R-3 outside.',
    );
    expect([energy.provenance, energy.from_memory]).toEqual(['two-sources', false]);
  });

  it('tells the limit and the option each by its own provenance', async () => {
    const judged = await judge(briefOf(), withLimitsFromMemory());
    const wall = find(judged, 'plaster-on-furred-lath/eps-2/plywood-box');
    const { energy } = physicsOf(judged, wall);
    expect([energy.max_u_factor_provenance, energy.option_met?.provenance]).toEqual([
      'memory',
      'two-sources',
    ]);
    expect(energy.summary).toContain('the 0.045 allowed, a limit from memory: check the adopted table.');
    expect(energy.summary).not.toContain('an option from memory');
    const reason = wall.verdicts.outcomes().find(({ rule }) => rule.id === 'energy.wall-complies');
    expect(reason?.text).toContain('the code takes U-0.045 (from memory, not verified) or one of R-30, ');
    expect(reason?.text).toContain('R-20 continuous (seen in published sources).');
  });

  it('sources the U-factor limit by where that column was seen, not by where the options were', async () => {
    const limitOf = async (change: object, knowledge = market) => {
      const judged = await judge(briefOf(change), knowledge);
      const { candidate } = find(judged, 'plaster-on-furred-lath/eps-2/plywood-box');
      const figures = figuresOf(candidate, judged.assess.partsOf(candidate), judged.context);
      return figures.find(({ id }) => id === 'max-u-factor');
    };
    const recalled = await limitOf({}, withLimitsFromMemory());
    expect(recalled?.note).toBe('from memory, not verified');
    expect(recalled?.source).toEqual([
      'IECC 2021 residential (IRC 2021 Chapter 11), Table R402.1.2 (N1102.1.2)',
      'From memory, no document seen',
    ]);
    const once = await limitOf({ code_edition: '2018' });
    expect(once?.note).toBeUndefined();
    expect(once?.source).toHaveLength(2);
    expect(once?.source[1]).toContain('public data copy of the 2018 residential tables');
    const twice = await limitOf({});
    expect(twice?.note).toBeUndefined();
    expect(twice?.source.slice(1)).toEqual([
      expect.stringContaining('data copy of the frame-wall column of the 2021 residential Table R402.1.2'),
      expect.stringContaining('notes quoting the 2021 residential Table R402.1.2'),
    ]);
  });

  it('names the thinnest market thickness that complies: the next thinner one does not', () => {
    for (const cladding of ['plaster-on-furred-lath', 'insulated-finish'])
      for (const insulation of ['eps', 'polyiso'])
        for (const boards of [1, 2]) {
          const builds = zone5.walls
            .filter(({ candidate: c }) => c.cladding.id === cladding && c.buck.id === 'plywood-box')
            .filter(({ candidate: { build } }) => build.insulation.id === insulation)
            .filter(({ candidate: { build } }) => build.boards_in.length === boards)
            .toSorted((a, b) => a.candidate.build.thickness_in - b.candidate.build.thickness_in);
          const first = builds.findIndex((wall) => wall.verdicts.facts['energy.complies'] === true);
          for (const wall of builds) {
            const { energy } = physicsOf(zone5, wall);
            expect(energy.nearest_compliant_thickness_in).toBe(
              builds[first]?.candidate.build.thickness_in ?? null,
            );
          }
        }
  });

  it('says so where no thickness on the market complies', async () => {
    const cold = await judge(briefOf({ cavity_insulation_r: 0 }), {
      ...market,
      catalogue: {
        ...market.catalogue,
        builds: market.catalogue.builds.filter((b) => b.insulation.id === 'eps' && b.thickness_in === 1),
      },
    });
    const wall = cold.walls[0];
    if (!wall) throw new Error('no wall');
    const { energy } = physicsOf(cold, wall);
    expect([energy.route, energy.nearest_compliant_thickness_in]).toEqual(['none', null]);
    expect(energy.summary).toContain('No market thickness of this insulation in one board meets it');
  });

  it('says which figures are from memory: steel studs in the 2021 edition', async () => {
    const steel = {
      framing: { material: 'steel', depth_in: 6, spacing_in: 16 },
      sheathing: 'gypsum',
      cavity_insulation_r: 19,
    };
    const judged = await judge(briefOf(steel), market);
    const wall = judged.walls.find(({ candidate }) => candidate.build.thickness_in === 4);
    if (!wall) throw new Error('no wall');
    const { energy } = physicsOf(judged, wall);
    expect(energy.from_memory).toBe(true);
    expect(energy.summary).toContain('a limit from memory: check the adopted table');
    expect(energy.summary).toContain('an option from memory: check the adopted table');
  });
});

describe('the parts of a wall’s U-factor', async () => {
  const judged = await judge(briefOf(), market);

  it('add up to the whole wall, with nothing for furring', () => {
    for (const wall of judged.walls) {
      const { thermal } = physicsOf(judged, wall);
      const sum =
        thermal.clear_wall_u_factor +
        thermal.delta_u_fasteners +
        thermal.delta_u_furring +
        thermal.delta_u_bucks +
        thermal.delta_u_steel_brackets;
      // Each is rounded to six decimals.
      expect(thermal.whole_wall_u_factor).toBeCloseTo(sum, 5);
      expect(thermal.delta_u_furring).toBe(0);
      expect(thermal.clear_wall_u_factor + thermal.delta_u_fasteners).toBeCloseTo(
        Number(wall.verdicts.facts['thermal.u_factor']),
        5,
      );
    }
  });

  // By hand: six windows of 36 x 60 in. have a perimeter of 96 ft; 0.017 x 96 / 1800 and 0.1 x 96 / 1800.
  it('tell wood bucks from steel brackets', () => {
    const wood = physicsOf(judged, find(judged, 'plaster-on-furred-lath/eps-4/plywood-box')).thermal;
    const steel = physicsOf(judged, find(judged, 'plaster-on-furred-lath/eps-4/steel-bracket')).thermal;
    expect([wood.delta_u_bucks, wood.delta_u_steel_brackets]).toEqual([0.000907, 0]);
    expect([steel.delta_u_bucks, steel.delta_u_steel_brackets]).toEqual([0, 0.005333]);
    expect(wood.assumptions.opening_perimeter_ft).toBe(96);
  });

  // ISO 6946 annex F (coefficients seen second-hand): level 1 adds 0.01 W/(m²·K) times (R1/RT)², level 0 nothing.
  it('carry the air-gap correction apart: one layer with aligned joints against two with offset joints', () => {
    const one = physicsOf(judged, find(judged, 'plaster-on-furred-lath/eps-4/plywood-box')).thermal;
    const two = physicsOf(judged, find(judged, 'plaster-on-furred-lath/eps-2+2/plywood-box')).thermal;
    const expected = (0.01 / 5.678263) * (16 * one.clear_wall_u_factor) ** 2;
    expect(one.air_gap).toMatchObject({ level: 1, joints: 'aligned' });
    expect(one.air_gap.delta_u).toBeCloseTo(expected, 5);
    expect(expected).toBeGreaterThan(0.0003);
    expect(two.air_gap).toMatchObject({ level: 0, joints: 'offset', delta_u: 0 });
    expect(two.air_gap.delta_u_if_aligned).toBeCloseTo(one.air_gap.delta_u, 6);
    expect(one.clear_wall_u_factor).toBe(two.clear_wall_u_factor);
  });

  it('say what was assumed: framing, films, filling, fasteners', async () => {
    const { thermal } = physicsOf(judged, find(judged, 'plaster-on-furred-lath/eps-4/plywood-box'));
    expect(thermal.assumptions).toMatchObject({
      framing_fraction: 0.25,
      film_inside_r: 0.68,
      film_outside_r: 0.17,
      cavity_labelled_r: 20,
      cavity_installed_r: 20,
      wall_area_ft2: 1800,
      // 0.004 W/K, from memory, in Btu/(h·°F).
      fastener_chi_btu_h_f: 0.00758,
    });
    const notes = thermal.notes.join(' ');
    for (const words of ['25 %', 'R-0.68', 'R-0.17', 'label, R-20', 'furring lies outside', 'from memory'])
      expect(notes).toContain(words);
    const pressed = await judge(briefOf({ cavity_insulation_r: 19 }), market);
    const batt = physicsOf(pressed, find(pressed, 'plaster-on-furred-lath/eps-4/plywood-box')).thermal;
    expect(batt.assumptions).toMatchObject({ cavity_labelled_r: 19, cavity_installed_r: 18 });
    expect(batt.notes.join(' ')).toContain('R-19 batt pressed into 5.5 in.');
  });

  it('say that a finish straight on the board counts and a drained one does not', () => {
    const glued = physicsOf(judged, find(judged, 'insulated-finish/eps-4/plywood-box')).thermal;
    expect(glued.notes.join(' ')).toContain('the finish counts');
    expect(glued.notes.join(' ')).toContain('No furring');
  });

  it('name the materials in both units', () => {
    const { materials } = physicsOf(judged, find(judged, 'plaster-on-furred-lath/eps-4/plywood-box')).thermal;
    const eps = materials.find(({ layer }) => layer === 'exterior insulation');
    // 0.036 W/(m·K): per inch; 21.6 kg/m³: 1.35 lb/ft³ (ASTM C578-10, Type II).
    expect(eps).toMatchObject({ conductivity_w_mk: 0.036, r_per_in: 4.006, density_pcf: 1.35 });
    expect(materials.map(({ layer }) => layer).slice(0, 4)).toEqual([
      'lining',
      'cavity insulation',
      'studs',
      'sheathing',
    ]);
  });
});

describe('heat and moisture in a whole answer', async () => {
  const sites: [string, object][] = [
    ['cold', { place: { state: 'MN', county: 'Stearns' } }],
    ['hot-humid', { place: { state: 'TX', county: 'Harris' }, cavity_insulation_r: 13 }],
  ];
  const answers = new Map<string, RankedAssembly[]>();
  for (const [name, change] of sites) answers.set(name, (await answer(job(change))).ranked);
  const first = (name: string): RankedAssembly => {
    const wall = answers.get(name)?.[0];
    if (!wall) throw new Error(`nothing passes at the ${name} site`);
    return wall;
  };

  it('stand in every ranked wall, rounded, and still add up', () => {
    for (const wall of [...answers.values()].flat()) {
      const months = wall.condensate_by_month ?? [];
      expect(months).toHaveLength(12);
      let held = 0;
      for (const month of months) {
        held += month.condensate_g_m2;
        expect(month.accumulated_g_m2).toBeCloseTo(held, 1);
      }
      const peak = wall.figures.find(({ id }) => id === 'condensate-peak')?.value ?? Number.NaN;
      const highest = Math.max(...months.map((month) => month.accumulated_g_m2));
      // The figure has four significant digits.
      expect(Math.abs(highest - peak)).toBeLessThanOrEqual(0.0005 * peak + 0.001);
      const { winter } = wall.temperature_profile;
      expect(winter?.cavity.length).toBe(wall.layers.length + 2);
      expect(winter?.cavity.slice(1, -1).map(({ after }) => after)).toEqual(
        wall.layers.map(({ label }) => label),
      );
      expect(winter?.cavity.at(-1)?.temp_f).toBe(winter?.outdoor_temp_f);
    }
  });

  it('read sensibly at a cold site: heat and vapour go outward, the sheathing is far colder than the room', () => {
    const { winter, summer } = first('cold').temperature_profile;
    expect(winter?.outdoor_temp_f).toBeLessThan(15);
    expect((winter?.indoor_dew_point_f ?? 0) - (winter?.outdoor_dew_point_f ?? 0)).toBeGreaterThan(30);
    const inner = winter?.cavity.find(({ role }) => role === 'framing')?.temp_f ?? 0;
    expect(inner).toBeGreaterThan((winter?.outdoor_temp_f ?? 0) + 10);
    expect(inner).toBeLessThan(65);
    expect(summer?.outdoor_temp_f).toBeGreaterThan((winter?.outdoor_temp_f ?? 0) + 50);
  });

  it('read sensibly at a hot and humid site: in summer heat and vapour go inward, no water forms by diffusion', () => {
    const { summer } = first('hot-humid').temperature_profile;
    expect(summer?.outdoor_temp_f).toBeGreaterThan(80);
    expect(summer?.outdoor_dew_point_f).toBeGreaterThan((summer?.indoor_dew_point_f ?? 99) + 15);
    expect(first('hot-humid').condensate_by_month?.every((m) => m.accumulated_g_m2 === 0)).toBe(true);
    expect(first('hot-humid').condensate_note).toContain('No water forms');
  });

  it('say what was assumed for the profile', () => {
    const notes = first('cold').temperature_profile.notes.join(' ');
    for (const words of ['no sun', '70 °F in winter and 75 °F in summer, from memory', 'ISO 13788'])
      expect(notes).toContain(words);
  });

  // 2021, zone 6: R-13 between 2x4 studs asks for R-10 outside; 1 in. of EPS has R-4, 3 in. has R-12.
  it('tell a wall that misses the energy code which thickness would meet it', async () => {
    const thin = {
      place: { state: 'MN', county: 'Stearns' },
      framing: { material: 'wood', depth_in: 3.5, spacing_in: 16 },
      cavity_insulation_r: 13,
      max_added_thickness_in: 3,
    };
    const offering = (builds: readonly InsulationBuild[]) => ({
      ...market,
      catalogue: { ...market.catalogue, builds },
    });
    const two = await judge(briefOf(thin), offering([board('eps', 1), board('eps', 3)]));
    for (const { candidate, verdicts } of two.walls) {
      const remedy = energyRemedy(candidate, two.assess.partsOf(candidate), two.context);
      if (verdicts.facts['energy.complies'] === true) expect(remedy).toBeNull();
      else
        expect(remedy?.words).toMatch(
          /same insulation in one board, is 3 in\., by (its U-factor|one of the R-value)/,
        );
    }
    expect(two.walls.some(({ candidate }) => candidate.build.thickness_in === 1)).toBe(true);

    const { ranked, excluded } = await answer(job(thin), offering([board('eps', 1)]));
    const remedies = excluded.flatMap(({ because }) =>
      because.filter(({ rule }) => rule === 'energy.wall-complies').map(({ remedy }) => remedy),
    );
    expect(ranked).toEqual([]);
    expect(remedies.length).toBeGreaterThan(0);
    for (const remedy of remedies) expect(remedy).toContain('No market thickness of this insulation');
  });
});
