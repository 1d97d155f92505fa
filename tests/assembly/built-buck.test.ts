import { describe, expect, it } from 'vitest';
import { loadBuckStock } from '../../src/assembly/buck-stock.ts';
import { builtBuck } from '../../src/assembly/built-buck.ts';
import { loadCatalogue } from '../../src/assembly/catalogue.ts';
import { flangeSeat } from '../../src/assembly/flange-seat.ts';

const { bucks, builds, sheathings } = loadCatalogue();

function built(id: string, board_in: number, studs_in: number, sheathing_id = 'osb') {
  const buck = bucks.find((one) => one.id === id);
  const build = builds.find(
    ({ thickness_in, boards_in }) => thickness_in === board_in && boards_in.length === 1,
  );
  const sheathing = sheathings.find((one) => one.id === sheathing_id);
  if (!buck || !build || !sheathing) throw new Error('the catalogue has them');
  const { place } = flangeSeat('insulation-face', 0, 'nothing-else');
  return builtBuck({ buck, build, sheathing, place }, studs_in);
}

describe('a buck as built', () => {
  // Net sizes of nominal lumber, public size tables: 2x4 3-1/2, 2x6 5-1/2, 2x8 7-1/4, 2x10 9-1/4, 2x12 11-1/4 in.
  it('in the opening is as deep as the studs, the sheathing and the boards, cut from the next size sold', () => {
    // 5-1/2 + 7/16 + 2-1/2 in.
    expect(built('lumber-2x4-bearing', 2.5, 5.5)).toEqual({
      label: '2x10 ripped to 8-7/16 in., lining the opening, bearing on the rough sill',
      piece: { depth_in: 8.4375, thickness_in: 1.5, is_built_up: false },
    });
    // 3-1/2 + 7/16 + 2-1/2 in.
    expect(built('lumber-2x4-bearing', 2.5, 3.5).label).toContain('2x8 ripped to 6-7/16 in.');
    expect(built('plywood-box', 2.5, 5.5).label).toContain('box of 3/4 in. plywood ripped to 8-7/16 in.');
    expect(built('laminated-bearing', 4, 5.5).label).toContain(
      '1-3/4 x 11-1/4 in. laminated veneer lumber ripped to 9-15/16 in.',
    );
  });

  it('is not ripped where a size fits as it is', () => {
    // Open studs: 5-1/2 + 0 + 2 in. is no size; 3-1/2 + 2 in. is a 2x6.
    expect(built('lumber-2x4-bearing', 2, 3.5, 'none').label).toMatch(/^2x6, lining/);
    expect(built('lumber-2x4-bearing', 2, 5.5, 'none').label).toContain('2x10 ripped to 7-1/2 in.');
  });

  it('says that it is built up where nothing is sold so deep', () => {
    // 7-1/4 + 7/16 + 4 in.
    expect(built('lumber-2x6-bearing', 4, 7.25)).toMatchObject({
      label: expect.stringContaining('1-1/2 in. lumber built up to 11-11/16 in.'),
      piece: { is_built_up: true },
    });
  });

  it('on the face of the wall is as deep as its reach, and flat lumber as thick', () => {
    expect(built('lumber-2x4-face', 3, 5.5).label).toContain('frame of 2x4 ripped to 3 in., on edge');
    expect(built('lumber-frame-flat', 1.5, 5.5).label).toContain('frame of 2x4, laid flat');
    expect(built('lumber-frame-flat', 1, 5.5).label).toContain('frame of 5/4x4, laid flat');
  });

  it('has no pieces where it is none of wood', () => {
    for (const id of ['no-buck', 'steel-bracket'])
      expect(built(id, 4, 5.5)).toEqual({ label: bucks.find((one) => one.id === id)?.label, piece: null });
  });

  it('is cut from sizes that are listed from the smallest up', () => {
    for (const { sizes } of loadBuckStock()) {
      const listed = sizes.map(({ size_in }) => size_in);
      expect(listed).toEqual([...listed].sort((a, b) => a - b));
    }
  });
});
