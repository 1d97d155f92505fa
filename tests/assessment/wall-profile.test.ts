import psychrolib from 'psychrolib';
import { describe, expect, it } from 'vitest';
import type { Judged } from '../../src/advice/judge-walls.ts';
import type { InsulationBuild } from '../../src/assembly/insulation-builds.ts';
import { type SeasonProfile, wallProfile } from '../../src/assessment/wall-profile.ts';
import { board, briefOf, judge, KNOWLEDGE, withCatalogue } from '../advice/pipeline.ts';

const COLD = { place: { state: 'MN', county: 'Stearns' } };
const HOT_HUMID = { place: { state: 'TX', county: 'Harris' } };
const MARINE = { place: { state: 'WA', county: 'King' } };
const DRY = { place: { state: 'AZ', county: 'Maricopa' } };

const { catalogue } = KNOWLEDGE;

/** Stucco on furring, latex paint, one barrier, one buck: walls that differ in their boards alone. */
function plain(builds: readonly InsulationBuild[], cladding = 'plaster-on-furred-lath') {
  return withCatalogue({
    builds,
    claddings: catalogue.claddings.filter((c) => c.id === cladding),
    retarders: catalogue.retarders.filter((r) => r.id === 'latex-paint'),
    barriers: catalogue.barriers.filter((b) => b.id === 'sealed-permeable'),
    bucks: catalogue.bucks
      .filter((b) => b.id === 'plywood-box')
      .map((b) => ({ ...b, min_projection_in: 0, max_projection_in: 99 })),
  });
}

function onlyProfile({ walls, context }: Judged) {
  const [wall] = walls;
  const found = wall ? wallProfile(wall.candidate, context) : null;
  if (!wall || !found || walls.length !== 1) throw new Error(`one wall with a profile, not ${walls.length}`);
  return { wall, ...found };
}

const profileOf = async (change: object, build: InsulationBuild, cladding?: string) =>
  onlyProfile(await judge(briefOf(change), plain([build], cladding)));

const at = (season: SeasonProfile, role: string) => {
  const plane = season.cavity.find((one) => one.role === role);
  if (!plane) throw new Error(`no ${role}`);
  return plane;
};

/** Twelve months of the user's own: January 10 °F is the coldest, July 82 °F the warmest. */
const OWN_MONTHS = {
  place: {
    monthly_mean_temp_f: [10, 14, 28, 44, 58, 72, 82, 78, 64, 48, 32, 16],
    monthly_precip_in: [1, 1, 2, 3, 4, 5, 4, 4, 3, 2, 2, 1],
  },
};

describe('the temperature profile of a wall', () => {
  // By hand, cavity path: films 0.68 and 0.17, gypsum 0.45, R-20, OSB 0.62, 2 in. of graphite EPS at 4.5 = 9;
  // nothing behind the ventilated space. Total 30.92 in winter; through the stud instead of 20: 17.795.
  it('matches a hand calculation through the cavity and through the stud, in the coldest month', async () => {
    const { winter } = await profileOf(OWN_MONTHS, board('graphite-eps', 2));
    expect([winter.month, winter.indoor_temp_f]).toEqual([1, 70]);
    expect(winter.outdoor_temp_f).toBeCloseTo(10, 9);
    const passed = [0.68, 1.13, 21.13, 21.75, 21.75, 30.75, 30.75, 30.75, 30.75, 30.92];
    expect(winter.cavity).toHaveLength(passed.length);
    for (const [i, r] of passed.entries())
      expect(winter.cavity[i]?.temp_f).toBeCloseTo(70 - (60 * r) / 30.92, 6);
    expect(winter.stud?.[2]?.temp_f).toBeCloseTo(70 - (60 * (1.13 + 6.875)) / 17.795, 6);
  });

  // The same wall in July: 82 °F outdoors, 75 °F indoors (from memory), summer film: total 31.
  it('is drawn for the warmest month with the summer film', async () => {
    const { summer } = await profileOf(OWN_MONTHS, board('graphite-eps', 2));
    expect([summer.month, summer.indoor_temp_f]).toEqual([7, 75]);
    expect(at(summer, 'sheathing').temp_f).toBeCloseTo(75 + (7 * 21.75) / 31, 6);
  });

  it('has no dew point where the humidity of the months is not known', async () => {
    const { winter } = await profileOf(OWN_MONTHS, board('graphite-eps', 2));
    expect(winter.cavity.every((plane) => plane.dew_point_f === null)).toBe(true);
    expect([winter.indoor_dew_point_f, winter.outdoor_dew_point_f]).toEqual([null, null]);
  });

  it('is monotonic and ends at the two air temperatures, in every wall, at four different sites', async () => {
    const market = withCatalogue({
      builds: [board('polyiso', 3), board('xps', 1), board('mineral-wool', 4)],
      bucks: catalogue.bucks.filter((b) => b.id === 'plywood-box'),
    });
    for (const place of [COLD, HOT_HUMID, MARINE, DRY]) {
      const { walls, context } = await judge(briefOf(place), market);
      expect(walls.length).toBeGreaterThan(50);
      for (const { candidate } of walls) {
        const profile = wallProfile(candidate, context);
        if (!profile) throw new Error('no profile');
        for (const season of [profile.winter, profile.summer]) {
          const sense = Math.sign(season.outdoor_temp_f - season.indoor_temp_f);
          for (const path of [season.cavity, season.stud ?? []]) {
            const temps = [season.indoor_temp_f, ...path.map((plane) => plane.temp_f)];
            for (const [i, temp] of temps.slice(1).entries())
              expect(sense * (temp - (temps[i] ?? temp))).toBeGreaterThan(-1e-9);
            expect(temps.at(-1)).toBeCloseTo(season.outdoor_temp_f, 6);
          }
          // Vapour is never above saturation.
          for (const plane of season.cavity)
            if (plane.dew_point_f !== null)
              expect(plane.dew_point_f).toBeLessThanOrEqual(plane.temp_f + 0.01);
        }
      }
    }
  });

  it('has a warmer sheathing behind a stud in winter: the stud insulates less than the filling', async () => {
    const { winter } = await profileOf(COLD, board('eps', 2));
    expect(winter.stud?.[2]?.temp_f).toBeGreaterThan(at(winter, 'framing').temp_f + 5);
  });

  it('has no stud path for steel studs', async () => {
    const steel = {
      ...COLD,
      framing: { material: 'steel', depth_in: 6, spacing_in: 16 },
      cavity_insulation_r: 19,
    };
    const { winter, summer } = await profileOf(steel, board('eps', 2));
    expect([winter.stud, summer.stud]).toEqual([null, null]);
    expect(at(winter, 'framing').after).toContain('steel studs');
  });
});

describe('insulation at its winter temperature', () => {
  // Points of the published measurements: polyiso 4.5, 5.0 and 5.6 per inch at 25, 40 and 75 °F mean.
  const polyisoPerInch = (mean: number) =>
    mean <= 25 ? 4.5 : mean <= 40 ? 4.5 + ((mean - 25) / 15) * 0.5 : 5 + ((mean - 40) / 35) * 0.6;

  it('is what was measured at the mean of the two faces that the profile itself has', async () => {
    for (const place of [COLD, MARINE]) {
      const { winter } = await profileOf(place, board('polyiso', 3));
      const mean = (at(winter, 'barrier').temp_f + at(winter, 'insulation').temp_f) / 2;
      expect(winter.insulation_r).toBeCloseTo(3 * polyisoPerInch(mean), 2);
      expect(winter.insulation_r).toBeLessThan(3 * 5.6 - 0.5);
    }
  });

  it('makes the sheathing colder under polyiso and warmer under XPS than the rated values would', async () => {
    for (const [id, rated, sense] of [
      ['polyiso', 16.8, -1],
      ['xps', 15, 1],
    ] as const) {
      const { winter } = await profileOf(COLD, board(id, 3));
      const total = 0.68 + 0.45 + 20 + 0.62 + rated + 0.17;
      const byRating = 70 - ((70 - winter.outdoor_temp_f) * 21.13) / total;
      expect(sense * (at(winter, 'framing').temp_f - byRating)).toBeGreaterThan(0.2);
    }
  });

  it('is the rated value in summer, and for boards of which no measurement is carried', async () => {
    expect((await profileOf(COLD, board('polyiso', 3))).summer.insulation_r).toBeCloseTo(16.8, 9);
    expect((await profileOf(COLD, board('mineral-wool', 3))).winter.insulation_r).toBeCloseTo(12, 9);
  });

  it('never changes the U-factor held against the code', async () => {
    const { wall } = await profileOf(COLD, board('polyiso', 3));
    const series = 0.68 + 0.45 + 0.62 + 16.8 + 0.17;
    const expected = 0.75 / (series + 20) + 0.25 / (series + 6.875);
    expect(wall.verdicts.facts['thermal.clear_wall_u_factor']).toBeCloseTo(expected, 9);
  });
});

describe('the dew point in the wall', () => {
  it('falls outward in a cold winter and meets the temperature at the sheathing of a thinly insulated wall', async () => {
    const { winter } = await profileOf(COLD, board('eps', 1));
    const inner = at(winter, 'framing');
    expect(inner.dew_point_f).toBeCloseTo(inner.temp_f, 1);
    expect(at(winter, 'lining').dew_point_f).toBeLessThan(winter.indoor_dew_point_f ?? 0);
    expect(at(winter, 'insulation').dew_point_f).toBeLessThan(inner.dew_point_f ?? 0);
  });

  it('rises outward in a hot and damp summer, without meeting the temperature', async () => {
    const { summer } = await profileOf(HOT_HUMID, board('eps', 1.5), 'plaster-on-mat-integral-lath');
    expect(summer.outdoor_temp_f).toBeGreaterThan(summer.indoor_temp_f);
    expect(summer.outdoor_dew_point_f).toBeGreaterThan(70);
    const dews = summer.cavity.map((plane) => plane.dew_point_f ?? Number.NaN);
    for (const [i, dew] of dews.slice(1).entries())
      expect(dew).toBeGreaterThanOrEqual((dews[i] ?? dew) - 1e-6);
    for (const plane of summer.cavity) expect(plane.temp_f - (plane.dew_point_f ?? 999)).toBeGreaterThan(1);
  });

  // PsychroLib 1.1.1 (ASHRAE Fundamentals 2017 ch. 1); the formulas stand within 0.25 % of each other, 0.1 °F here.
  it('of the outdoor air is that of the station’s temperature and humidity', async () => {
    psychrolib.SetUnitSystem(psychrolib.SI);
    const { context, walls } = await judge(briefOf(HOT_HUMID), plain([board('eps', 1.5)]));
    const { summer } = onlyProfile({ context, walls } as Judged);
    const july = context.site.climate?.monthly[summer.month - 1];
    const dew_c = psychrolib.GetTDewPointFromRelHum(july?.temp_c ?? 0, july?.rh ?? 0);
    expect(Math.abs((summer.outdoor_dew_point_f ?? 0) - (dew_c * 1.8 + 32))).toBeLessThan(0.1);
    expect(summer.cavity.at(-1)?.dew_point_f).toBe(summer.outdoor_dew_point_f);
    expect(summer.cavity[0]?.dew_point_f).toBeCloseTo(summer.indoor_dew_point_f ?? 0, 6);
  });

  it('is that of the outdoor air at the board behind a ventilated space, and not behind a drained mat', async () => {
    const ventilated = (await profileOf(COLD, board('eps', 2))).winter;
    expect(at(ventilated, 'insulation').dew_point_f).toBeCloseTo(ventilated.outdoor_dew_point_f ?? 0, 6);
    const drained = (await profileOf(COLD, board('eps', 2), 'plaster-on-mat-integral-lath')).winter;
    expect(at(drained, 'insulation').dew_point_f).toBeGreaterThan((drained.outdoor_dew_point_f ?? 0) + 0.5);
    // The mat itself holds nothing back.
    expect(at(drained, 'drainage').dew_point_f).toBeCloseTo(at(drained, 'insulation').dew_point_f ?? 0, 9);
    expect(at(drained, 'finish').dew_point_f).toBeCloseTo(drained.outdoor_dew_point_f ?? 0, 6);
  });

  it('is not drawn behind a lining that is not known, though both airs are', async () => {
    const unknown = { ...COLD, project: 'retrofit', interior_vapour_retarder: 'unknown' };
    const { winter } = await profileOf(unknown, board('eps', 2));
    expect(winter.cavity.every((plane) => plane.dew_point_f === null)).toBe(true);
    expect(winter.indoor_dew_point_f).not.toBeNull();
  });

  it('drops less across a lining with a denser retarder in front of it', async () => {
    const dewBehind = async (retarder: string) => {
      const one = plain([board('eps', 2)]);
      const { context, walls } = await judge(briefOf(COLD), {
        ...one,
        catalogue: { ...one.catalogue, retarders: catalogue.retarders.filter((r) => r.id === retarder) },
      });
      return at(onlyProfile({ context, walls } as Judged).winter, 'lining').dew_point_f ?? Number.NaN;
    };
    const [open, dense] = [await dewBehind('latex-paint'), await dewBehind('polyethylene')];
    expect(dense).toBeLessThan(open - 2);
  });
});
