import { describe, expect, it } from 'vitest';
import { loadCatalogue } from '../../src/assembly/catalogue.ts';
import { materialSchema } from '../../src/assembly/material-schema.ts';
import { layerUses } from '../../src/assessment/layer-materials.ts';
import { LINING } from '../../src/assessment/wall-layers.ts';
import { briefOf, judge, KNOWLEDGE, withCatalogue } from '../advice/pipeline.ts';

const catalogue = loadCatalogue();
const { materials } = catalogue;

/** One h·ft²·°F/Btu in m²·K/W (NIST SP 811) and one inch in metres. */
const M2KW = 0.1761102;
const INCH_M = 0.0254;

const materialOf = (use: string) => {
  const found = materials.filter((material) => material.used_for.includes(use));
  if (found.length !== 1) throw new Error(`${found.length} materials for ${use}`);
  return found[0];
};

/** Layers whose R in the wall differs from thickness over conductivity, and why. */
const EXCEPTIONS: Readonly<Record<string, string>> = {
  'finish/fibre-cement-panels': 'trade figure R-0.15; behind a ventilated space nothing is counted anyway',
  'finish/fibre-cement-lap': 'lapped boards: 0.4 in. is the depth of the lap, not of the board; not counted',
  'finish/adhered-veneer': 'units, bed and joints together, R-0.2 from memory; outside the mat, not counted',
  'finish/insulated-finish': 'recalled as R-0.03 where 0.72 W/(m·K) gives R-0.04; the smaller one is kept',
  'furring/plaster-on-furred-lath': 'strips with air between them: nothing is counted',
  'furring/fibre-cement-panels': 'strips with air between them: nothing is counted',
  'furring/fibre-cement-lap': 'strips with air between them: nothing is counted',
  'furring/wood-siding': 'strips with air between them: nothing is counted',
};

type Counted = { readonly use: string; readonly thickness_in: number; readonly r: number };

/** Every layer of the other catalogues that carries an R of its own. */
const counted: Counted[] = [
  { use: 'lining', thickness_in: LINING.thickness_in, r: LINING.r },
  ...catalogue.sheathings
    .filter((s) => s.thickness_in > 0)
    .map((s) => ({ use: `sheathing/${s.id}`, thickness_in: s.thickness_in, r: s.r.value })),
  ...catalogue.insulations.map((i) => ({ use: `insulation/${i.id}`, thickness_in: 1, r: i.r_per_in.value })),
  ...catalogue.claddings.flatMap((c) =>
    c.layers.map((l) => ({ use: `${l.role}/${c.id}`, thickness_in: l.thickness_in, r: l.r.value })),
  ),
];

/** Half of the last figure that is printed: 0.16 may be anything from 0.155 to 0.165. */
const halfDigit = (value: number) => 0.5 * 10 ** -(String(value).split('.')[1]?.length ?? 0);

/** The R of a layer by its material, and how far the printed figures may be off through rounding. */
function byMaterial({ use, thickness_in }: Counted): { r: number; slack: number } {
  const material = materialOf(use);
  const k = material?.conductivity_w_mk?.value;
  if (k === undefined) return { r: material?.r?.value ?? Number.NaN, slack: 0.005 };
  const r = (thickness_in * INCH_M) / k / M2KW;
  return { r, slack: 0.005 + (r * halfDigit(k)) / k };
}

describe('the materials catalogue', () => {
  it('agrees with the R of every sheathing, lining, board and finish, but for the exceptions named here', () => {
    const off = counted.filter((layer) => {
      const { r, slack } = byMaterial(layer);
      return !(Math.abs(r - layer.r) <= slack + 1e-9);
    });
    expect(off.map(({ use }) => use).sort()).toEqual(Object.keys(EXCEPTIONS).sort());
  });

  it('is on the safe side where it differs: the wall counts less than the material would give', () => {
    for (const layer of counted.filter(({ use }) => Object.hasOwn(EXCEPTIONS, use)))
      expect(layer.r).toBeLessThanOrEqual(byMaterial(layer).r);
  });

  it('agrees with the density of every board', () => {
    for (const { id, density_pcf } of catalogue.insulations) {
      const density = materialOf(`insulation/${id}`)?.density_kg_m3?.value ?? Number.NaN;
      // NIST SP 811: 1 lb/ft³ = 16.01846 kg/m³; both are printed to three figures.
      expect(Math.abs(density / (density_pcf.value * 16.01846) - 1)).toBeLessThan(0.005);
    }
  });

  it('knows what every layer of every wall is made of, once', async () => {
    const { builds } = KNOWLEDGE.catalogue;
    const one = builds.filter((b, i) => builds.findIndex((c) => c.insulation.id === b.insulation.id) === i);
    const uses = new Set<string>();
    for (const sheathing of catalogue.sheathings.map((s) => s.id)) {
      const { walls } = await judge(briefOf({ sheathing }), withCatalogue({ builds: one }));
      for (const { candidate } of walls)
        for (const material of ['wood', 'steel'] as const)
          for (const { use } of layerUses(candidate, material, true)) uses.add(use);
    }
    // Paint is no layer of its own.
    const painted = ['retarder/latex-paint', 'retarder/retarder-primer', 'retarder/no-lining-retarder'];
    const unknown = [...uses].filter((use) => !materials.some((m) => m.used_for.includes(use)));
    expect(unknown.filter((use) => !painted.includes(use))).toEqual([]);
    const all = materials.flatMap((material) => material.used_for);
    expect(new Set(all).size).toBe(all.length);
    expect(uses.size).toBeGreaterThan(25);
  });

  it('has ids of its own, and a source and a provenance for every figure', () => {
    expect(new Set(materials.map(({ id }) => id)).size).toBe(materials.length);
    for (const material of materials) {
      const figures = [
        material.conductivity_w_mk,
        material.r,
        material.density_kg_m3,
        ...material.also_published,
      ].filter((figure) => figure !== null);
      expect(figures.length).toBeGreaterThan(0);
      for (const { source, provenance } of figures) {
        expect(source.length).toBeGreaterThan(3);
        if (provenance === 'verified') expect(source).not.toContain('from memory');
      }
    }
  });

  it('wants either a conductivity or a resistance of the whole layer', () => {
    const figure = { value: 0.1, source: 'a handbook', provenance: 'verified' };
    const entry = {
      id: 'thing',
      label: 'a thing',
      density_kg_m3: null,
      also_published: [],
      used_for: ['lining'],
    };
    const parses = (conductivity_w_mk: unknown, r: unknown) =>
      materialSchema.safeParse({ ...entry, conductivity_w_mk, r }).success;
    expect([parses(figure, null), parses(null, figure)]).toEqual([true, true]);
    expect([parses(figure, figure), parses(null, null)]).toEqual([false, false]);
    expect(parses({ ...figure, value: 0 }, null)).toBe(false);
  });
});

describe('published design values', () => {
  // ASHRAE Handbook Fundamentals 2005, ch. 25 table 4 and ch. 30, as seen in an open building-simulation data set.
  it.each([
    ['gypsum-board', 0.16, 800],
    ['plywood', 0.12, 540],
    ['fibreboard', 0.055, 290],
    ['cement-plaster', 0.72, 1856],
    ['veneer-units', 0.785, 1600],
    ['steel', 45.28, 7824],
  ])('%s has %d W/(m·K) and %d kg/m³', (id, conductivity, density) => {
    const material = materials.find((one) => one.id === id);
    expect(material?.conductivity_w_mk?.value).toBe(conductivity);
    expect(material?.density_kg_m3?.value).toBe(density);
  });

  it('of one kind of material differ by no more than a factor of two, and are kept beside the one taken', () => {
    const others = materials.flatMap(({ id, conductivity_w_mk, also_published }) =>
      also_published.map((other) => ({
        id,
        ratio: other.conductivity_w_mk / (conductivity_w_mk?.value ?? Number.NaN),
      })),
    );
    expect(others.length).toBeGreaterThan(15);
    for (const { id, ratio } of others) expect([id, ratio > 0.5 && ratio < 2]).toEqual([id, true]);
  });
});
