import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { onDeeperFurring } from '../../src/assembly/deeper-furring.ts';
import { pricedCatalogue } from '../../src/assembly/price-book.ts';
import { claddingsOnDeeperFurring, onFurring } from '../../src/assessment/on-furring.ts';
import { fasteningPractice } from '../../src/assessment/schedule/fastening-practice.ts';
import { briefOf, judge, KNOWLEDGE, TINY } from '../advice/pipeline.ts';
import { contextOf } from './schedule-walls.ts';

const { catalogue } = KNOWLEDGE;

function cladding(id: string) {
  const found = catalogue.claddings.find((one) => one.id === id);
  if (!found) throw new Error(`no cladding ${id}`);
  return found;
}

const context = await contextOf();
const under = (corner_psf: number) => ({
  ...context,
  outward_wind_psf: corner_psf,
  field_wind_psf: 0.8 * corner_psf,
});

const ON_FURRING = catalogue.claddings.filter(({ attachment }) => attachment === 'furring');

describe('onFurring', () => {
  // A 0.120 in. nail counted as smooth (NDS-2018 12.2.3): 1380 x 0.42^2.5 x 0.12 x 1.6 = 30.29 lb for each inch of strip,
  // 22.7 lb in 3/4 in. At 3-1/2 x 16 in. (0.389 ft²) 60 psf pull with 23.3 lb: 103 %.
  it('finds siding nails too weak in 3/4 in. of furring (hand-worked)', () => {
    const found = onFurring(cladding('wood-siding'), under(60));
    expect(found).toMatchObject({ furring_in: 0.75, holds: false, way: { fastener: 'nail-0.120' } });
    expect(found?.capacity_lb).toBeCloseTo(22.7, 1);
    expect(found?.corner).toMatchObject({ spacing_in: 3.5 });
    expect(found?.wind_utilisation).toBeCloseTo(23.33 / 22.72, 3);
  });

  // The same nail in shear, 3/8 in. of wood over 3/4 in., Fe 3364 psi, Fyb 100,000 psi (NDS-2018 12.3.1): Is 151, II 103,
  // IIIm 136, IIIs 110, IV 152 lb; 103 / Kd 2.2 = 46.8 lb, x 1.6 = 74.8 lb. For nails the shares add up (12.4.2).
  it('adds the weight of what hangs on the strips to the wind (hand-worked)', () => {
    const siding = cladding('wood-siding');
    const hung_psf = siding.layers
      .filter(({ role }) => role !== 'furring')
      .reduce((sum, { weight_psf }) => sum + weight_psf.value, 0);
    const found = onFurring(siding, under(60));
    expect(hung_psf).toBeGreaterThan(1);
    expect(found?.combined_utilisation).toBeCloseTo(23.33 / 22.72 + (hung_psf * 0.3889) / 74.8, 3);
  });

  it('takes the next way where a nail holds the wind, but not with the weight', () => {
    // 58.2 psf on 3-1/2 x 16 in. pull with 22.63 of 22.72 lb.
    const windAlone = onFurring(cladding('wood-siding'), under(58.2));
    expect(windAlone?.wind_utilisation).toBeLessThan(1);
    expect(windAlone?.holds).toBe(false);
    expect(claddingsOnDeeperFurring(under(58.2))).toContain('wood-siding');
  });

  // Twice the wood holds twice as much: 45.4 lb, so 48 psf at 7 in. (37.3 lb) in the field and 60 psf (23.3 lb) at the
  // corners, where 7 in. would be 46.7 lb.
  it('holds them in strips twice as deep, with fewer nails in the field (hand-worked)', () => {
    const deeper = onDeeperFurring(cladding('wood-siding'), catalogue);
    const found = onFurring(deeper, under(60));
    expect(found).toMatchObject({ furring_in: 1.5, holds: true, way: { driven_as: 'nail' } });
    expect(found?.field).toMatchObject({ spacing_in: 7 });
    expect(found?.corner).toMatchObject({ spacing_in: 3.5 });
    expect(found?.wind_utilisation).toBeCloseTo(37.33 / 45.44, 3);
  });

  // A No. 8 screw (NDS-2018 12.2.2): 2850 x 0.42² x 0.164 x 1.5 x 1.6 = 197.9 lb.
  it('takes screws where not even deeper strips hold the nails (hand-worked)', () => {
    const deeper = onDeeperFurring(cladding('wood-siding'), catalogue);
    const found = onFurring(deeper, under(130));
    expect(found).toMatchObject({ holds: true, way: { fastener: 'wood-screw-8' } });
    expect(found?.capacity_lb).toBeCloseTo(197.9, 1);
  });

  it('counts no screw in a strip thinner than six of its diameters', () => {
    const [, screw] = fasteningPractice().on_furring.lap.ways;
    expect(screw?.fastener).toBe('wood-screw-8');
    // 6 x 0.164 = 0.984 in.
    expect(onFurring(cladding('fibre-cement-lap'), under(150))).toMatchObject({
      way: { driven_as: 'nail' },
      holds: false,
    });
  });

  it('says nothing of claddings without furring, and has no figure for one that nobody listed', () => {
    expect(onFurring(cladding('one-coat-plaster-on-lath'), under(30))).toBeNull();
    expect(onFurring({ ...cladding('wood-siding'), id: 'slate' }, under(30))).toMatchObject({
      way: null,
      wind_utilisation: null,
      holds: false,
    });
  });

  it('never falls in use as the wind grows, at one spacing, and never has wider corners than field', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...ON_FURRING),
        fc.double({ min: 5, max: 150, noNaN: true }),
        (one, psf) => {
          for (const asked of [one, onDeeperFurring(one, catalogue)]) {
            const found = onFurring(asked, under(psf));
            expect(found?.corner?.spacing_in ?? 99).toBeLessThanOrEqual(found?.field?.spacing_in ?? 0);
            const windier = onFurring(asked, under(psf + 10));
            if (found?.holds === false) expect(windier?.holds).toBe(false);
          }
        },
      ),
      { numRuns: 100 },
    );
  });
});

describe('deeper furring', () => {
  it('is not drawn for a cladding whose fastening nobody has listed', () => {
    const unlisted = { ...cladding('wood-siding'), id: 'slate' };
    const asked = { ...under(90), catalogue: { ...catalogue, claddings: [unlisted] } };
    expect(claddingsOnDeeperFurring(asked)).toEqual([]);
  });

  it('is drawn only where the wind asks for it', () => {
    expect(claddingsOnDeeperFurring(under(30))).toEqual([]);
    expect(claddingsOnDeeperFurring(under(90))).toEqual(ON_FURRING.map(({ id }) => id));
  });

  it('is thicker, heavier and dearer, and the same object each time', () => {
    const usual = cladding('fibre-cement-panels');
    const deeper = onDeeperFurring(usual, catalogue);
    const { deeper_furring: furring } = catalogue;
    expect(onDeeperFurring(usual, catalogue)).toBe(deeper);
    expect(deeper.id).toBe(usual.id);
    expect(deeper.label).toContain('2x4 furring');
    expect(deeper.drainage.gap_in).toBe(1.5);
    expect(deeper.layers[0]).toMatchObject({ thickness_in: 1.5, weight_psf: { value: 1 } });
    expect(deeper.cost.usd_per_ft2.likely).toBeCloseTo(
      usual.cost.usd_per_ft2.likely + furring.cost.usd_per_ft2.likely,
      9,
    );
    expect(onDeeperFurring(cladding('adhered-veneer'), catalogue)).toBe(cladding('adhered-veneer'));
  });

  it('is priced by the region of a price book', () => {
    const dearer = pricedCatalogue(catalogue, { region_factor: 1.5 });
    expect(dearer.deeper_furring.cost.usd_per_ft2.likely).toBeCloseTo(
      1.5 * catalogue.deeper_furring.cost.usd_per_ft2.likely,
      9,
    );
  });
});

describe('walls in a hurricane wind', async () => {
  const storm = { basic_wind_speed_mph: 180, exposure: 'D', mean_roof_height_ft: 15 };
  const judged = await judge(briefOf(storm), TINY);
  const onStrips = judged.walls.filter(({ candidate }) => candidate.cladding.attachment === 'furring');

  it('hang on strips that hold it, or are forbidden', () => {
    expect(onStrips.length).toBeGreaterThan(0);
    for (const wall of onStrips.filter((_, i) => i % 7 === 0)) {
      const use = wall.parts.fastening.on_furring?.wind_utilisation ?? 9;
      const against = wall.verdicts.verdictOf('structure.on-furring-wind-use');
      expect(against).toBe(use > 1 ? 'forbid' : 'pass');
      expect(wall.verdicts.facts['fastening.furring_in']).toBe(1.5);
    }
  });

  it('score by the weakest link: never better than what holds the cladding to its strips allows', () => {
    const permitted = onStrips.filter(({ parts }) => parts.fastening.schedule?.verdict === 'permitted');
    expect(permitted.length).toBeGreaterThan(0);
    for (const { parts, scores } of permitted.filter((_, i) => i % 7 === 0)) {
      const use = parts.fastening.on_furring?.wind_utilisation ?? 9;
      // 0.8 for a fastener used up, 1 for one used to 0.3 or less; 0.65 of the score, the buck is the rest.
      const most = 0.65 * (0.8 + 0.2 * (1 - Math.min(1, Math.max(0, (use - 0.3) / 0.7)))) + 0.35;
      expect(scores.structure).toBeLessThanOrEqual(most + 1e-9);
    }
  });
});
