import { describe, expect, it } from 'vitest';
import { loadCatalogue } from '../../src/assembly/catalogue.ts';
import { insulationPermeance, LINING } from '../../src/assessment/wall-layers.ts';

const catalogue = loadCatalogue();

function byId<T extends { readonly id: string }>(list: readonly T[], id: string): T {
  const found = list.find((entry) => entry.id === id);
  if (!found) throw new Error(`the catalogue holds no ${id}`);
  return found;
}
const insulation = (id: string) => byId(catalogue.insulations, id);
const sheathing = (id: string) => byId(catalogue.sheathings, id);
const retarder = (id: string) => byId(catalogue.retarders, id);

// ASTM C578-10 property table by type, reprinted in a foam maker's bulletin of 2011: minimum R at 75 °F for 1 in.,
// maximum permeance at 1 in., minimum density, minimum compressive resistance (104 kPa and 173 kPa).
describe('polystyrene against ASTM C578-10', () => {
  it('EPS is Type II: R-4.00 per inch, 1.35 lb/ft³, at most 3.5 perm at 1 in., 15 psi', () => {
    const eps = insulation('eps');
    expect(eps.label).toMatch(/Type II\b/);
    expect(eps.r_per_in.value).toBe(4.0);
    expect(eps.density_pcf.value).toBe(1.35);
    expect(eps.permeability_perm_in?.value).toBe(3.5);
    expect(eps.compressive_psi.value).toBe(15);
  });

  it('XPS is Type IV: R-5.00 per inch, at least 1.55 lb/ft³, not above 1.5 perm at 1 in., 25 psi', () => {
    const xps = insulation('xps');
    expect(xps.r_per_in.value).toBe(5.0);
    expect(xps.density_pcf.value).toBeGreaterThanOrEqual(1.55);
    expect(xps.permeability_perm_in?.value).toBeLessThanOrEqual(1.5);
    expect(xps.permeability_perm_in?.high).toBe(1.5);
    expect(xps.compressive_psi.value).toBe(25);
  });

  it('every foam is as firm as the code’s fastening tables suppose: 15 psi (IBC 2018 Table 2603.13.2, note d)', () => {
    for (const foam of catalogue.insulations.filter((i) => i.is_foam_plastic))
      expect([foam.id, foam.compressive_psi.value >= 15]).toEqual([foam.id, true]);
  });
});

describe('insulation against other published figures', () => {
  // A public guide to insulating sheathing: 1.1 perm at 1 in., 0.55 at 2 in.
  it('2 in. of XPS is about 0.55 perm', () => {
    expect(insulationPermeance(insulation('xps'), 1, 1)).toBeCloseTo(1.1, 10);
    expect(insulationPermeance(insulation('xps'), 2, 1)).toBeCloseTo(0.55, 10);
  });

  // The same guide: the facers decide, whatever the thickness; foil faces are Class I, 0.1 perm or less.
  it('foil-faced polyisocyanurate is a vapour barrier at any thickness', () => {
    const polyiso = insulation('polyiso');
    expect(insulationPermeance(polyiso, 1, 1)).toBe(insulationPermeance(polyiso, 4, 1));
    expect(insulationPermeance(polyiso, 1, 1)).toBeLessThanOrEqual(0.1);
  });

  // School R-value chart of 2010: 5.6 to 6.3; roofing association tests of 2010 and 2014: means 5.7 and 5.555.
  it('polyisocyanurate is rated at the low end of its published aged values', () => {
    expect(Math.abs(insulation('polyiso').r_per_in.value - 5.6)).toBeLessThan(0.05);
  });

  // 0.040 W/(m·K) at 200 kg/m³ (a building-simulation library), 0.049 at 250 kg/m³ (a project page); 0.1442 = 1 in. in SI.
  it('wood fibre lies between its two published conductivities', () => {
    const r = insulation('wood-fibre').r_per_in.value;
    expect(r).toBeGreaterThan(0.1442 / 0.049);
    expect(r).toBeLessThan(0.1442 / 0.04);
  });

  // ASHRAE Handbook Fundamentals ch. 26.
  it('mineral wool is R-4.0 to 4.3 per inch and 100 to 120 perm-in. (from memory)', () => {
    const wool = insulation('mineral-wool');
    expect(wool.r_per_in.value).toBeGreaterThanOrEqual(4.0);
    expect(wool.r_per_in.value).toBeLessThanOrEqual(4.3);
    expect(wool.permeability_perm_in?.value).toBeGreaterThanOrEqual(100);
    expect(wool.permeability_perm_in?.value).toBeLessThanOrEqual(120);
  });

  it('graphite polystyrene is R-4.5 to 5.0 per inch, the low end taken (from memory)', () => {
    expect(insulation('graphite-eps').r_per_in.value).toBe(4.5);
  });
});

describe('sheathings and lining against published R-values', () => {
  // California 2019 Joint Appendix JA4; state energy-office table with worked wall: 0.45.
  it('1/2 in. gypsum board is R-0.45, inside and as sheathing', () => {
    expect(LINING.r).toBe(0.45);
    expect(LINING.thickness_in).toBe(0.5);
    expect(sheathing('gypsum').r.value).toBe(0.45);
  });

  // Trade-magazine article on 90.1 and IECC wall arithmetic.
  it('7/16 in. OSB is R-0.62', () => {
    expect(sheathing('osb')).toMatchObject({ thickness_in: 0.4375, r: { value: 0.62 } });
  });

  // California JA4; state energy-office table. A second table has 0.62, handbooks since 2009 0.79 (from memory).
  it('1/2 in. plywood is R-0.63', () => {
    expect(sheathing('plywood')).toMatchObject({ thickness_in: 0.5, r: { value: 0.63 } });
  });

  // Softwood per inch: JA4 has for 4 in., a trade article for 5.5 in.
  it('3/4 in. boards are softwood at R-1.25 per inch', () => {
    expect(sheathing('boards').r.value).toBeCloseTo(0.75 * 1.25, 2);
  });

  // ASHRAE Fundamentals 1997 ch. 24 as quoted in a secondary table.
  it('1/2 in. fibreboard is R-1.32', () => {
    expect(sheathing('fibreboard').r.value).toBe(1.32);
  });

  // A panel association (national-standards research): about 1 perm at 50 % RH, up to ten times that when wet.
  it('plywood opens about tenfold when wet, OSB less', () => {
    const opening = (id: string) => sheathing(id).wet_cup_perm.value / sheathing(id).dry_cup_perm.value;
    expect(opening('plywood')).toBeGreaterThan(8);
    expect(opening('plywood')).toBeLessThan(13);
    expect(opening('osb')).toBeLessThan(opening('plywood'));
  });
});

// IRC 2021 Table R702.7(1): Class I 0.1 perm or less, II above 0.1 to 1.0, III above 1.0 to 10 (dry cup, ASTM E96 A).
describe('interior retarders against the classes of IRC 2021 Table R702.7(1)', () => {
  const LIMITS = { 'class-i': [0, 0.1], 'class-ii': [0.1, 1], 'class-iii': [1, 10] } as const;

  it.each(catalogue.retarders.map((r) => [r.id, r] as const))(
    '%s lies in the class that it names',
    (_, r) => {
      const perm = r.dry_cup_perm.value;
      if (r.class === 'none') expect(perm).toBeGreaterThan(10);
      // IRC 2021, responsive: Class I or II by the dry cup, above 1 perm by the wet cup.
      else if (r.class === 'responsive') {
        expect(perm).toBeLessThanOrEqual(1);
        expect(r.wet_cup_perm.value).toBeGreaterThan(1);
      } else {
        const [above, upTo] = LIMITS[r.class];
        expect(perm).toBeGreaterThan(above);
        expect(perm).toBeLessThanOrEqual(upTo);
      }
      expect(r.wet_cup_perm.value).toBeGreaterThanOrEqual(perm);
    },
  );

  // A construction magazine and a house-building book.
  it('6 mil polyethylene is 0.06 perm, wet or dry', () => {
    expect(retarder('polyethylene')).toMatchObject({
      dry_cup_perm: { value: 0.06 },
      wet_cup_perm: { value: 0.06 },
    });
  });
  // Encyclopaedia article on vapour barriers.
  it('kraft facing is 0.40 perm dry', () => {
    expect(retarder('kraft-facing').dry_cup_perm.value).toBe(0.4);
  });
  // Construction magazine: 0.45 to 0.8 perm.
  it('retarder primer lies in its published range', () => {
    expect(retarder('retarder-primer').dry_cup_perm).toMatchObject({ low: 0.45, high: 0.8 });
  });
  // Paint-trade table: latex semigloss 4.98 perm; a contractor's page: 5.
  it('latex paint is about 5 perm', () => {
    expect(retarder('latex-paint').dry_cup_perm.value).toBe(5);
  });
  // Architect's note: unpainted 1/2 in. gypsum board 50 perm.
  it('bare gypsum board is 50 perm', () => {
    expect(LINING.bare_perm).toBe(50);
  });
});

describe('barriers and claddings', () => {
  it('an impermeable membrane is a vapour barrier, 0.1 perm or less; the others are open (from memory)', () => {
    expect(byId(catalogue.barriers, 'adhered-impermeable').permeance_perm.value).toBeLessThanOrEqual(0.1);
    for (const barrier of catalogue.barriers.filter((b) => b.id !== 'adhered-impermeable'))
      expect([barrier.id, barrier.permeance_perm.value >= 5]).toEqual([barrier.id, true]);
  });

  // House-building book: Grade D building paper about 5 perm.
  it('two plies of building paper are about 5 perm', () => {
    expect(byId(catalogue.barriers, 'two-layer-paper').permeance_perm.value).toBe(5);
  });

  const finish = (id: string) =>
    byId(
      byId(catalogue.claddings, id).layers.map((l) => ({ ...l, id: l.role })),
      'finish',
    );

  // Older IRC Table R702.1(1) and ASTM C926: three coats on metal lath, 7/8 in.
  it('three-coat stucco is 7/8 in. thick', () => {
    for (const { id, layers } of catalogue.claddings.filter((c) => c.is_cement_stucco && !c.is_one_coat))
      expect([id, layers.find((l) => l.role === 'finish')?.thickness_in]).toEqual([id, 0.875]);
  });

  // US housing department, Structural Design Loads for One- and Two-Family Dwellings: a 2x4 wall is 6 psf bare,
  // 15 psf with 7/8 in. stucco, 8 psf with lap wood siding. Whole pounds; the heavier reading is the safe one.
  it('stucco weighs 9 to 10 psf, wood lap siding 2', () => {
    expect(finish('plaster-on-furred-lath').weight_psf.value).toBeGreaterThanOrEqual(15 - 6);
    expect(finish('plaster-on-furred-lath').weight_psf.value).toBeLessThanOrEqual(10);
    expect(finish('wood-siding').weight_psf.value).toBe(8 - 6);
  });

  // JA4: for 7/8 in. of stucco; two R-value charts: 0.20 per inch.
  it('7/8 in. of stucco is R-0.18 where it counts at all', () => {
    expect(finish('plaster-on-furred-lath').r.value).toBeCloseTo(0.2 * 0.875, 2);
  });

  // IBC 2021 2510.6.2: a space of 3/16 in. outside the barrier in moist and marine zones.
  it('every stucco has the drainage space of 3/16 in. that moist zones ask for', () => {
    for (const cladding of catalogue.claddings.filter((c) => c.is_cement_stucco))
      expect([cladding.id, cladding.drainage.gap_in >= 3 / 16]).toEqual([cladding.id, true]);
  });

  // IRC 2018 R703.7.1 (6 in.) and ASTM C1063-18b as adopted by a city (7 in.): lath fasteners on every stud.
  it('lath that is screwed straight through is fastened every 6 in. or closer', () => {
    for (const cladding of catalogue.claddings.filter((c) => c.lath !== 'none' && c.attachment === 'direct'))
      expect(Math.max(...cladding.fastenings.flatMap((f) => f.spacings_in))).toBeLessThanOrEqual(6);
  });

  // NDS 2018 Appendix L: No. 10 wood screw 0.190 in., root 0.152 in.; Table I1: 80,000 psi above 0.177 in. (from memory)
  it('buck screws called No. 10 have the measures of a No. 10 screw (from memory)', () => {
    const tens = catalogue.bucks.filter(({ screw }) => screw?.label.includes('No. 10'));
    expect(tens.length).toBeGreaterThan(0);
    for (const { screw } of tens)
      expect(screw).toMatchObject({ diameter_in: 0.19, root_diameter_in: 0.152, bending_yield_psi: 80_000 });
  });
});
