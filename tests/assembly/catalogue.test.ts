import { describe, expect, it } from 'vitest';
import { type Catalogue, loadCatalogue } from '../../src/assembly/catalogue.ts';
import { fasteningPractice } from '../../src/assessment/schedule/fastening-practice.ts';
import { FASTENERS } from '../../src/calculators/fastening/fastening-tables.ts';

const catalogue = loadCatalogue();
const LISTS = ['insulations', 'claddings', 'retarders', 'barriers', 'bucks', 'sheathings'] as const;
type Entry = Catalogue[(typeof LISTS)[number]][number];
const entries: { list: string; entry: Entry }[] = LISTS.flatMap((list) =>
  catalogue[list].map((entry: Entry) => ({ list, entry })),
);

const PROVENANCES = ['verified', 'two-sources', 'computed', 'memory', 'proposal', 'common-practice'];

/** Every object inside with a key, with the way to it. */
function withKey(
  key: string,
  value: unknown,
  path = '',
): { path: string; object: Record<string, unknown> }[] {
  if (typeof value !== 'object' || value === null) return [];
  const own = Object.hasOwn(value, key) ? [{ path, object: value as Record<string, unknown> }] : [];
  return [...own, ...Object.entries(value).flatMap(([k, inner]) => withKey(key, inner, `${path}.${k}`))];
}

describe('the catalogue', () => {
  // Net width of nominal 1x lumber, American Softwood Lumber Standard PS 20 (from memory).
  it('names one furring for a cladding wherever it speaks of it, of one width and weight', () => {
    const net_in = new Map([
      ['1x3', 2.5],
      ['1x4', 3.5],
    ]);
    const weights = new Map<string, number>();
    for (const { id, attachment, attachment_label, lath_or_furring, layers } of catalogue.claddings) {
      const strips = layers.filter(({ role }) => role === 'furring');
      expect(strips, id).toHaveLength(attachment === 'furring' ? 1 : 0);
      for (const { label, weight_psf } of strips) {
        const [nominal = 'none'] = label.match(/\dx\d/) ?? [];
        expect(lath_or_furring, id).toContain(`${nominal} `);
        for (const named of `${attachment_label} ${lath_or_furring}`.match(/\dx\d/g) ?? [])
          expect(named, id).toBe(nominal);
        expect(net_in.get(nominal), id).toBe(fasteningPractice().furring_strip_in.value);
        expect(weight_psf.value, id).toBe(weights.get(nominal) ?? weight_psf.value);
        weights.set(nominal, weight_psf.value);
      }
    }
  });

  it('loads once, and is the same for everybody', () => {
    expect(loadCatalogue()).toBe(catalogue);
  });

  it('offers claddings, boards and thicknesses enough to choose from', () => {
    expect(catalogue.claddings.length).toBeGreaterThanOrEqual(9);
    expect(catalogue.insulations).toHaveLength(6);
    expect(Math.max(...catalogue.builds.map((b) => b.thickness_in))).toBe(8);
    expect(Math.min(...catalogue.builds.map((b) => b.thickness_in))).toBeLessThanOrEqual(1);
    expect([...new Set(catalogue.builds.map((b) => b.boards_in.length))].sort()).toEqual([1, 2, 3]);
    for (const kind of ['cement-stucco', 'stucco-look', 'other'])
      expect(catalogue.claddings.filter((c) => c.finish_kind === kind).length).toBeGreaterThanOrEqual(2);
    for (const material of ['wood', 'steel'] as const)
      expect(catalogue.claddings.some((c) => c.works_with.framing.includes(material))).toBe(true);
  });

  it.each(LISTS)('gives each of the %s an id and a name of its own', (list) => {
    const ids = catalogue[list].map((entry: Entry) => entry.id);
    expect(new Set(ids).size).toBe(ids.length);
    const labels = catalogue[list].map((entry: Entry) => entry.label);
    expect(new Set(labels).size).toBe(labels.length);
  });

  it('tells the source of every figure, and how sure it is', () => {
    for (const { list, entry } of entries) {
      const figures = withKey('provenance', entry, `${list}.${entry.id}`);
      expect([entry.id, figures.length]).not.toEqual([entry.id, 0]);
      for (const { path, object } of figures) {
        expect([path, PROVENANCES.includes(String(object.provenance))]).toEqual([path, true]);
        expect([path, String(object.source ?? '').length > 2]).toEqual([path, true]);
      }
      for (const { path, object } of withKey('value', entry, `${list}.${entry.id}`))
        expect([path, Object.hasOwn(object, 'provenance')]).toEqual([path, true]);
    }
  });

  it('calls a source recalled wherever it calls a figure verified from none, and never the other way round', () => {
    for (const { list, entry } of entries) {
      for (const { path, object } of withKey('provenance', entry, `${list}.${entry.id}`)) {
        const source = String(object.source ?? '');
        if (/from memory|recalled$/.test(source))
          expect([path, source, object.provenance]).toEqual([path, source, 'memory']);
      }
    }
  });

  it('gives ranges in order, and every value inside its range', () => {
    for (const { list, entry } of entries) {
      for (const { path, object } of withKey('value', entry, `${list}.${entry.id}`)) {
        const value = Number(object.value);
        const low = Number(object.low ?? value);
        const high = Number(object.high ?? value);
        expect([path, low <= value && value <= high]).toEqual([path, true]);
      }
      for (const { path, object } of withKey('likely', entry, `${list}.${entry.id}`)) {
        const { low, likely, high } = object;
        expect([path, Number(low) <= Number(likely) && Number(likely) <= Number(high)]).toEqual([path, true]);
      }
    }
  });

  it('names no insulation, fastener or barrier that it does not hold', () => {
    const insulations = new Set<string>(catalogue.insulations.map((i) => i.id));
    for (const cladding of catalogue.claddings) {
      for (const id of cladding.works_with.insulations) expect(insulations).toContain(id);
      for (const { fastener, framing } of cladding.fastenings) {
        expect(FASTENERS).toContain(fastener);
        expect(fastener.startsWith('steel-')).toBe(framing === 'steel');
      }
      expect(catalogue.barriers.some((b) => b.behind.includes(cladding.attachment))).toBe(true);
      const canFasten = cladding.attachment === 'adhered' || cladding.fastenings.length > 0;
      expect([cladding.id, canFasten]).toEqual([cladding.id, true]);
    }
  });

  it('describes each cladding without contradiction', () => {
    for (const c of catalogue.claddings) {
      expect([c.id, c.is_cement_stucco]).toEqual([c.id, c.finish_kind === 'cement-stucco']);
      if (c.is_cement_stucco) expect([c.id, c.lath]).not.toEqual([c.id, 'none']);
      if (c.attachment === 'furring') expect([c.id, c.drainage.kind]).toEqual([c.id, 'furring-gap']);
      if (c.drainage.is_ventilated) expect(c.drainage.gap_in).toBeGreaterThan(0);
      expect(c.gives_up.length).toBeGreaterThan(0);
      expect(c.gains.length).toBeGreaterThan(0);
    }
  });

  it('says the length of a screw as it is', () => {
    for (const { id, screw } of catalogue.bucks) {
      const said = /x (\d+)(?:-(\d+)\/(\d+))? in\./.exec(screw?.label ?? '');
      if (!screw || !said) continue;
      const length = Number(said[1]) + (said[2] ? Number(said[2]) / Number(said[3]) : 0);
      expect([id, length]).toEqual([id, screw.length_in]);
    }
  });
});

describe('the board builds', () => {
  it('are boards from the market, all of one thickness, that add up', () => {
    for (const { insulation, boards_in, thickness_in, r } of catalogue.builds) {
      expect(insulation.market_thicknesses_in).toContain(boards_in[0]);
      expect(new Set(boards_in).size).toBe(1);
      expect(boards_in.length).toBeLessThanOrEqual(insulation.max_layers);
      expect(thickness_in).toBeCloseTo((boards_in[0] ?? 0) * boards_in.length, 10);
      expect(r).toBeCloseTo(thickness_in * insulation.r_per_in.value, 10);
      expect(thickness_in).toBeLessThanOrEqual(8);
    }
  });

  it('never come twice', () => {
    const keys = catalogue.builds.map((b) => `${b.insulation.id} ${b.boards_in.join('+')}`);
    expect(new Set(keys).size).toBe(keys.length);
  });

  it('reach 4 in. and more with every insulation', () => {
    for (const insulation of catalogue.insulations) {
      const own = catalogue.builds.filter((b) => b.insulation === insulation);
      expect(Math.max(...own.map((b) => b.thickness_in))).toBeGreaterThanOrEqual(6);
    }
  });
});
