import { describe, expect, it } from 'vitest';
import type { RankedAssembly } from '../../../src/advice/advice-schema.ts';
import { sitePractice } from '../../../src/record/build-sheet/site-practice.ts';
import { takeOff } from '../../../src/record/build-sheet/take-off.ts';
import { toOrder } from '../../../src/record/build-sheet/take-off-line.ts';
import { SAMPLE_OPENINGS } from '../../advice/sample-openings.ts';
import { FULL_ADVICE } from '../fixture-advice.ts';

const [first] = FULL_ADVICE.ranked;
const [sample] = SAMPLE_OPENINGS;
if (!first || !sample) throw new Error('the fixture has a wall and a window');

/** Two windows of 36 x 60 in. in 1,000 ft² of wall, boxed with 3/4 in. plywood, rough openings 39 x 62 in. */
const wall: RankedAssembly = {
  ...first,
  openings: [
    {
      ...sample,
      count: 2,
      width_in: 36,
      height_in: 60,
      rough_opening_needed_in: { width_in: 39, height_in: 62 },
      carried_by: {
        id: 'plywood-box',
        label: 'box of 3/4 in. plywood ripped to 8-15/16 in.',
        support: 'bears-on-sill',
        depth_in: 8.9375,
      },
      flange_plane: { ...sample.flange_plane, outside_framing_in: 3.4375 },
      room: { ...sample.room, joint_width_in: 0.5, joint_depth_in: 0.375 },
    },
  ],
};
const lines = takeOff({ wall, wall_area_ft2: 1000, practice: sitePractice() });
const line = (words: RegExp) => {
  const found = lines.find(({ item }) => words.test(item));
  if (!found) throw new Error(`no line for ${words}`);
  return { net: found.net, order: found.order };
};

// Each worked by hand; 1,000 ft² of wall, openings not taken off.
describe('takeOff against hand-worked examples', () => {
  it.each([
    // Fluid barrier: 1,000 x 1.15 = 1,150 ft².
    ['the barrier', /^fluid-applied membrane/, 1000, 1150],
    // Mineral wool boards are 2 x 4 ft = 8 ft²: 1,100 / 8 = 137.5; joints offset: 1,120 / 8 = 140.
    ['the inner boards', /layer 1$/, 1000, 138],
    ['the outer boards with offset joints', /layer 2$/, 1000, 140],
    // Mat: 1,100 ft².
    ['the mat', /^drainage mat/, 1000, 1100],
    // 1,000 x 0.375 / 12 = 31.25 ft³, x 1.15 = 35.94; finish 10.42, x 1.15 = 11.98.
    ['the scratch coat', /scratch coat/, 31.25, 36],
    ['the brown coat', /brown coat/, 31.25, 36],
    ['the finish coat', /plaster, finish coat/, 10.42, 12],
    // Rough openings: 2 x 2 x (39 + 62) / 12 = 33.667 ft by 5.5 + 0.4375 + 3 = 8.9375 in. of studs, sheathing and boards:
    // 25.07 ft²; x 1.15 / 32 = 0.9.
    ['plywood for the bucks', /^buck:/, 25.07, 1],
    // 2 x 2 x 96 x (3.4375 + 6) / 144 = 25.17 ft², x 1.15 = 28.9.
    ['the skin', /^liquid-applied flashing/, 25.17, 29],
    // 2 x (36 + 12) / 12 = 8 ft, x 1.1 = 8.8; 2 x (36 + 6) / 12 = 7 ft, x 1.1 = 7.7.
    ['sill pans', /^sill pan/, 8, 9],
    ['head flashing', /^head flashing/, 7, 8],
    // 2 x 2 x 96 / 12 = 32 ft, x 1.1 / 10 = 3.52 pieces.
    ['casing bead', /^casing bead/, 32, 4],
    // Jambs 2 x 2 x 60 / 12 = 20 ft and 32 ft inside: 52, x 1.1 = 57.2.
    ['backer rod', /^backer rod/, 52, 58],
    // 52 x 12 x 0.5 x 0.375 = 117 in³, x 1.2 / 18.2 = 7.71 cartridges.
    ['sealant', /^sealant/, 117, 8],
  ])('counts %s', (_, words, net, order) => {
    expect(line(words)).toEqual({ net, order });
  });

  it('takes fasteners as the schedule counts them', () => {
    expect(line(/^No\. 10 wood screw, 4 in\./)).toEqual({ net: 675, order: 743 });
  });

  it('asks for 7 panels of 144 ft² and leaves what only the site can tell to be measured', () => {
    // 1,000 / 144 = 6.94.
    expect(line(/^control joints: at least 7 panels/)).toEqual({ net: null, order: null });
    expect(line(/^weep screed/)).toEqual({ net: null, order: null });
  });

  it('counts furring by the stud: 1,000 ft² at 16 in. is 750 ft, and 32 ft round the openings', () => {
    const furred: RankedAssembly = {
      ...wall,
      layers: [{ label: '1x4 furring', role: 'furring', thickness_in: 0.75, r: 0, provenance: 'computed' }],
    };
    const found = takeOff({ wall: furred, wall_area_ft2: 1000, practice: sitePractice() });
    // 782 x 1.1 / 8 = 107.5 pieces.
    expect(found.find(({ item }) => item === '1x4 furring')).toMatchObject({ net: 782, order: 108 });
  });

  it('needs nothing for windows where there are none', () => {
    const blind = takeOff({ wall: { ...wall, openings: [] }, wall_area_ft2: 100, practice: sitePractice() });
    expect(blind.filter(({ group }) => group === 'windows')).toEqual([]);
  });
});

describe('toOrder', () => {
  it('rounds up to whole pieces, but buys none for binary noise', () => {
    expect(toOrder(100, 10)).toBe(110);
    expect(toOrder(100, 10, 32)).toBe(4);
    expect(toOrder(0.1 + 0.2, 0, 0.1)).toBe(3);
    expect(toOrder(0, 10)).toBe(0);
  });
});
