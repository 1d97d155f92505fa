import { describe, expect, it } from 'vitest';
import { bucksFor, seatedBucks } from '../../src/assembly/bucks-for.ts';
import { loadCatalogue } from '../../src/assembly/catalogue.ts';
import { flangeSeat } from '../../src/assembly/flange-seat.ts';
import type { InsulationBuild } from '../../src/assembly/insulation-builds.ts';

const { bucks, builds, claddings, sheathings } = loadCatalogue();
const [some] = builds;
if (!some) throw new Error('no builds');
const thick = (thickness_in: number): InsulationBuild => ({
  ...some,
  boards_in: [thickness_in],
  thickness_in,
});
const sheathing = (id: string) => {
  const found = sheathings.find((s) => s.id === id);
  if (!found) throw new Error(`no sheathing ${id}`);
  return found;
};
const AT_BOARDS = flangeSeat('insulation-face', 0, 'nothing-else').place;
const ids = (thickness_in: number, on: string) =>
  bucksFor(thick(thickness_in), sheathing(on), bucks, AT_BOARDS).map(({ id }) => id);

describe('the bucks for a thickness of insulation', () => {
  // A 2x4 is 3-1/2 in. wide. Bearing, it starts at the studs and has the sheathing to cross; on the face it starts at
  // the sheathing. Common practice, no source: a 2x4 buck suits about 3 to 3-1/2 in. of exterior insulation.
  it('counts the sheathing for a bearing 2x4, not for one on the face', () => {
    expect(ids(3, 'osb')).toContain('lumber-2x4-bearing');
    expect(ids(3.5, 'osb')).not.toContain('lumber-2x4-bearing');
    expect(ids(3.5, 'none')).toContain('lumber-2x4-bearing');
    expect(ids(3.5, 'osb')).toContain('lumber-2x4-face');
    expect(ids(3.5, 'osb')).toContain('lumber-2x6-bearing');
  });
  it('offers laminated panels and brackets far out', () => {
    expect(ids(7.5, 'osb')).toEqual(['plywood-double-box', 'laminated-bearing', 'steel-bracket']);
  });
  it('lets the one that reaches furthest stand in where none reaches, so that a rule can speak', () => {
    expect(ids(10, 'osb')).toEqual(['laminated-bearing']);
    expect(bucksFor(thick(10), sheathing('osb'), [], AT_BOARDS)).toEqual([]);
  });
});

describe('the plane of the flange', () => {
  const cladding = (id: string) => claddings.find((one) => one.id === id) ?? expect.unreachable();
  const seated = (
    id: string,
    thickness_in: number,
    wanted: 'insulation-face' | 'furring-face' | null = null,
  ) =>
    new Map(
      seatedBucks(cladding(id), thick(thickness_in), sheathing('osb'), bucks, wanted).map(
        ({ buck, seat }) => [buck.id, seat],
      ),
    );

  it('is the face of the insulation where nothing hangs on furring', () => {
    const seats = [...seated('plaster-on-mat-integral-lath', 2).values()];
    expect(seats.length).toBeGreaterThan(3);
    for (const seat of seats)
      expect(seat).toEqual({
        place: { at: 'insulation-face', beyond_insulation_in: 0 },
        behind_furring_in: 0,
        reason: 'nothing-else',
      });
  });
  // Plaster 7/8 in. thick on furring of 3/4 in.: at the furring 7/8 in. of it lie beside the frame, at the boards 1/4.
  it('goes out to the furring under plaster, where the buck reaches, and stays behind it where not', () => {
    expect(seated('plaster-on-furred-lath', 2.5).get('lumber-2x4-face')).toMatchObject({
      place: { at: 'furring-face', beyond_insulation_in: 0.75 },
      reason: 'joint-beside-frame',
    });
    // 3 and 3/4 in. are past the 3-1/2 in. of a 2x4.
    expect(seated('plaster-on-furred-lath', 3).get('lumber-2x4-face')).toMatchObject({
      place: { at: 'insulation-face' },
      behind_furring_in: 0.75,
      reason: 'buck-too-short',
    });
    // And 3-7/16 in. from the studs become 4-3/16 in.: a 2x6 takes what a 2x4 would have.
    expect(seated('plaster-on-furred-lath', 3).get('lumber-2x6-bearing')?.place.at).toBe('furring-face');
    expect(seated('plaster-on-furred-lath', 1).get('no-buck')?.reason).toBe('flange-on-board');
  });
  it('stays at the insulation under a finish too thin for a joint', () => {
    for (const seat of seated('fibre-cement-panels', 2.5).values())
      expect(seat).toMatchObject({ place: { at: 'insulation-face' }, reason: 'thin-finish' });
  });
  it('is the one asked for, whatever else would be chosen', () => {
    for (const seat of seated('fibre-cement-panels', 2, 'furring-face').values())
      expect(seat).toMatchObject({ place: { at: 'furring-face' }, reason: 'asked' });
    for (const seat of seated('plaster-on-furred-lath', 2, 'insulation-face').values())
      expect(seat).toMatchObject({ place: { at: 'insulation-face' }, reason: 'asked' });
    expect(seated('fibre-cement-panels', 1, 'furring-face').has('no-buck')).toBe(false);
  });
});
