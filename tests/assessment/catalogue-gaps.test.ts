import { describe, expect, it } from 'vitest';
import { loadCatalogue } from '../../src/assembly/catalogue.ts';
import { catalogueGaps } from '../../src/assessment/catalogue-gaps.ts';
import { fasteningPractice } from '../../src/assessment/schedule/fastening-practice.ts';

const CATALOGUE = loadCatalogue();
const { on_furring } = fasteningPractice();
const SIDING = CATALOGUE.claddings.find(({ id }) => id === 'wood-siding') ?? expect.fail();

/** The shipped catalogue and one more cladding, like wood siding but for what is given. */
const withCladding = (change: object) => ({
  ...CATALOGUE,
  claddings: [...CATALOGUE.claddings, { ...SIDING, id: 'cedar-shakes', ...change }],
});
const told = (...args: Parameters<typeof catalogueGaps>) =>
  catalogueGaps(...args).map(({ field, value, accepted }) => `${field}: ${value} ${accepted}`);

describe('what a product needs beside its own entry', () => {
  it('is there for everything that is shipped', () => {
    expect(told(CATALOGUE, on_furring)).toEqual([]);
  });

  it('is a way to fix it and a material for each layer, named with id and file, for a cladding on furring', () => {
    const gaps = told(withCladding({}), on_furring);
    expect(gaps).toHaveLength(1 + SIDING.layers.length);
    expect(gaps[0]).toMatch(/"cedar-shakes".*fastening-practice\.json.*lath, panel, lap/);
    for (const { role } of SIDING.layers) {
      expect(gaps.filter((gap) => gap.includes(`"${role}/cedar-shakes"`))).toHaveLength(1);
    }
    expect(gaps.slice(1).every((gap) => gap.includes('materials.json'))).toBe(true);
  });

  it('is no way to fix it where it hangs on no furring', () => {
    const gaps = told(withCladding({ attachment: 'direct' }), on_furring);
    expect(gaps.filter((gap) => gap.includes('fastening-practice.json'))).toEqual([]);
  });

  it('is no way to fix what is not in the catalogue', () => {
    const claddings = CATALOGUE.claddings.filter(({ id }) => id !== 'wood-siding');
    expect(told({ ...CATALOGUE, claddings }, on_furring)).toEqual([
      expect.stringMatching(/^fastening-practice\.json: on_furring: "wood-siding"/),
    ]);
  });

  it.each(['insulation/xps', 'barrier/one-layer-wrap', 'sheathing/osb'])('is a material: %s', (use) => {
    const materials = CATALOGUE.materials.map((material) => ({
      ...material,
      used_for: material.used_for.filter((one) => one !== use),
    }));
    expect(told({ ...CATALOGUE, materials }, on_furring)).toEqual([expect.stringContaining(`"${use}"`)]);
  });

  it('is an insulation that exists for every one that a cladding works with', () => {
    const claddings = CATALOGUE.claddings.map((cladding) =>
      cladding === SIDING
        ? { ...cladding, works_with: { ...cladding.works_with, insulations: ['xps', 'cork'] } }
        : cladding,
    );
    expect(told({ ...CATALOGUE, claddings }, on_furring)).toEqual([expect.stringContaining('"cork"')]);
  });
});
