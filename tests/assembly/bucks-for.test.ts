import { describe, expect, it } from 'vitest';
import { bucksFor } from '../../src/assembly/bucks-for.ts';
import { loadCatalogue } from '../../src/assembly/catalogue.ts';
import { flangeSeat } from '../../src/assembly/flange-seat.ts';
import type { InsulationBuild } from '../../src/assembly/insulation-builds.ts';

const { bucks, builds, sheathings } = loadCatalogue();
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
    expect(ids(7.5, 'osb')).toEqual(['plywood-double-box', 'steel-bracket']);
  });
  it('lets the one that reaches furthest stand in where none reaches, so that a rule can speak', () => {
    expect(ids(10, 'osb')).toEqual(['steel-bracket']);
    expect(bucksFor(thick(10), sheathing('osb'), [], AT_BOARDS)).toEqual([]);
  });
});
