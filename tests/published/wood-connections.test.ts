import { describe, expect, it } from 'vitest';
import {
  bendingYieldStrength_psi,
  dowelBearingStrength_psi,
  STEEL_SIDE_BEARING_PSI,
} from '../../src/calculators/connections/dowel.ts';
import {
  computeLateral,
  type LateralJoint,
  lateralInputSchema,
  lateralReference,
} from '../../src/calculators/connections/lateral.ts';
import {
  computeWithdrawal,
  withdrawalInputSchema,
  withdrawalReference_lb_per_in,
} from '../../src/calculators/connections/withdrawal.ts';

describe('lag screw withdrawal, NDS Table 12.2A (scanned page in a city permit file)', () => {
  const diameters = [0.25, 0.3125, 0.375, 0.4375, 0.5, 0.625, 0.75, 0.875, 1, 1.125, 1.25];
  const printed: Record<string, number[]> = {
    '0.55': [260, 307, 352, 395, 437, 516, 592, 664, 734, 802, 868],
    '0.50': [225, 266, 305, 342, 378, 447, 513, 576, 636, 695, 752],
    '0.42': [173, 205, 235, 264, 291, 344, 395, 443, 490, 535, 579],
    '0.36': [137, 163, 186, 209, 231, 273, 313, 352, 389, 425, 460],
  };
  const cells = Object.entries(printed).flatMap(([gravity, row]) =>
    row.map((lb, i) => ({ gravity: Number(gravity), d: diameters[i] ?? 0, lb })),
  );
  it('has 44 cells', () => expect(cells).toHaveLength(44));
  it.each(cells)('G $gravity, D $d in.: $lb lb/in', ({ gravity, d, lb }) => {
    expect(Math.abs(withdrawalReference_lb_per_in('lag-screw', d, gravity) - lb)).toBeLessThanOrEqual(1);
  });
});

describe('withdrawal, worked examples of a design association (E2.1a and E2.3, as restated publicly)', () => {
  it('smooth nail 0.131 in. in spruce-pine-fir, 2.395 in. deep: 49.5 lb', () => {
    const answer = computeWithdrawal(
      withdrawalInputSchema.parse({
        fastener: 'smooth-nail',
        diameter_in: 0.131,
        thread_penetration_in: 2.395,
        specific_gravity: 0.42,
      }),
    );
    expect(answer.reference_lb_per_in).toBeCloseTo(20.67, 2);
    expect(answer.allowable_lb).toBeCloseTo(49.5, 1);
  });
  it('lag screw 1/2 in. in southern pine, 2.1875 in. of thread: 955 lb', () => {
    const answer = computeWithdrawal(
      withdrawalInputSchema.parse({
        fastener: 'lag-screw',
        diameter_in: 0.5,
        thread_penetration_in: 2.1875,
        specific_gravity: 0.55,
      }),
    );
    expect(Math.abs(answer.allowable_lb - 955)).toBeLessThan(0.6);
  });
});

describe('smooth nail withdrawal', () => {
  // Forest Products Laboratory Technical Note 236: ultimate 6900 G^2.5 D; the design value is one fifth of it.
  it.each([0.113, 0.131, 0.148, 0.162])(
    'is a fifth of the ultimate value of the laboratory note, D %f',
    (d) => {
      const ultimate = 6900 * 0.42 ** 2.5 * d;
      expect(withdrawalReference_lb_per_in('smooth-nail', d, 0.42)).toBeCloseTo(ultimate / 5, 6);
    },
  );
});

describe('wood screw withdrawal', () => {
  // 2850 × 0.42² × 0.19 by hand = 95.52; engineering handbook chapter giving 2850 G² D per inch.
  it('No. 10 in spruce-pine-fir: 95.5 lb/in', () => {
    expect(withdrawalReference_lb_per_in('wood-screw', 0.19, 0.42)).toBeCloseTo(95.52, 2);
  });
});

describe('single shear of nails, published values', () => {
  const nail = (over: object) =>
    computeLateral(
      lateralInputSchema.parse({
        fastener: 'nail',
        side: { thickness_in: 0.75, specific_gravity: 0.5 },
        main: { penetration_in: 2.25, specific_gravity: 0.5 },
        load_to_grain: 'parallel',
        ...over,
      }),
    ).reference_lb;
  it('0.148 × 3 in. nail, Douglas fir-larch, 3/4 in. side: 105.1 lb (design association example)', () => {
    expect(nail({ diameter_in: 0.148, bending_yield_psi: 90_000 })).toBeCloseTo(105.1, 1);
  });
  it('16d common nail 0.162 in., Douglas fir-larch, 1-1/2 in. side: 141 lb (NDS-2005 Table 11N, quoted by engineers)', () => {
    const z = nail({
      diameter_in: 0.162,
      side: { thickness_in: 1.5, specific_gravity: 0.5 },
      main: { penetration_in: 2, specific_gravity: 0.5 },
    });
    expect(Math.abs(z - 141)).toBeLessThanOrEqual(0.6);
  });
});

describe('wood screw in double shear, design association example E2.4 (bearing values of G 0.55, as a public restatement notes)', () => {
  it('No. 10 × 6 in., 3 in. main, 1-1/2 in. sides: 233.7 lb', () => {
    // The tip-side bearing is 6 − 3 − 1.5 − half the tip of 2 D = 1.31 in.; two shear planes double modes Is, IIIs, IV.
    const { modes_lb } = lateralReference({
      fastener: 'wood-screw',
      diameter_in: 0.19,
      root_diameter_in: 0.152,
      bending_yield_psi: 80_000,
      side: { length_in: 1.31, specific_gravity: 0.55 },
      main: { length_in: 3, specific_gravity: 0.55 },
      gap_in: 0,
      load_to_grain: 'parallel',
    });
    const doubleShear = Math.min(modes_lb.Im, 2 * modes_lb.Is, 2 * modes_lb.IIIs, 2 * modes_lb.IV);
    expect(Math.abs(doubleShear - 233.7)).toBeLessThan(0.15);
  });
});

describe('lag screws with steel side plates, NDS Table 12K (two scanned pages in city permit files; null where illegible)', () => {
  const gravities = [0.67, 0.55, 0.5, 0.49, 0.46, 0.43, 0.42, 0.37, 0.36, 0.35];
  type Cell = number | null;
  // Plate thickness, lag diameter, then parallel and perpendicular value for each gravity; printed to 10 lb.
  const rows: { plate_in: number; d: number; z: Cell[] }[] = [
    {
      plate_in: 0.075,
      d: 0.25,
      z: [170, 130, 160, 120, 150, 110, 150, 110, 150, 100, 140, 100, 140, 100, 130, 90, 130, 90, 130, 90],
    },
    {
      plate_in: 0.075,
      d: 0.3125,
      z: [
        220,
        160,
        200,
        140,
        190,
        130,
        190,
        null,
        190,
        130,
        180,
        120,
        180,
        120,
        170,
        110,
        170,
        110,
        160,
        100,
      ],
    },
    {
      plate_in: 0.075,
      d: 0.375,
      z: [
        220,
        160,
        200,
        140,
        200,
        130,
        190,
        null,
        null,
        120,
        180,
        120,
        180,
        120,
        170,
        110,
        170,
        100,
        170,
        100,
      ],
    },
    {
      plate_in: 0.105,
      d: 0.25,
      z: [180, 140, 170, 130, 160, 120, 160, 120, 160, 110, 150, 110, 150, 110, 140, 100, 140, 100, 140, 90],
    },
    {
      plate_in: 0.105,
      d: 0.3125,
      z: [230, 170, 210, 150, 200, 140, 200, 140, 190, 130, 190, 130, 190, 120, 180, 110, 170, 110, 170, 110],
    },
    {
      plate_in: 0.105,
      d: 0.375,
      z: [230, 160, 210, 140, 200, 140, 200, 130, 200, 130, 190, 120, 190, 120, 180, 110, 180, 110, 170, 110],
    },
    {
      plate_in: 0.12,
      d: 0.25,
      z: [190, 150, 180, 130, 170, 120, 170, 120, 160, 120, 160, 110, 160, 110, 150, 100, 150, 100, 140, 100],
    },
    {
      plate_in: 0.12,
      d: 0.3125,
      z: [230, 170, 210, 150, 210, 140, 200, 140, 200, 140, 190, 130, 190, 130, 180, 120, 180, 120, 180, 110],
    },
    {
      plate_in: 0.12,
      d: 0.375,
      z: [240, 170, 220, 150, 210, 140, 210, 140, 200, 130, 200, 130, 190, 120, 180, 110, 180, 110, 180, 110],
    },
    {
      plate_in: 0.134,
      d: 0.25,
      z: [200, 150, 180, 140, 180, 130, 170, 130, 170, 120, 160, 120, 160, 110, 150, 110, 150, 100, 150, 100],
    },
    {
      plate_in: 0.134,
      d: 0.3125,
      z: [
        240,
        180,
        220,
        160,
        210,
        150,
        210,
        140,
        200,
        140,
        200,
        130,
        200,
        130,
        190,
        120,
        180,
        120,
        null,
        null,
      ],
    },
  ];
  // ANSI/ASME B18.2.1 hex lag screw root diameters (seen on an engineering reference page).
  const roots: Record<number, number> = { 0.25: 0.173, 0.3125: 0.227, 0.375: 0.265 };
  const cells = rows.flatMap(({ plate_in, d, z }) =>
    z.flatMap((printed_lb, i) =>
      printed_lb === null
        ? []
        : [
            {
              plate_in,
              d,
              gravity: gravities[Math.floor(i / 2)] ?? 0,
              grain: i % 2 === 0 ? ('parallel' as const) : ('perpendicular' as const),
              printed_lb,
            },
          ],
    ),
  );
  it('has 215 legible cells', () => expect(cells).toHaveLength(215));
  it.each(cells)('plate $plate_in in., D $d, G $gravity, $grain: $printed_lb lb', (cell) => {
    const joint: LateralJoint = {
      fastener: 'lag-screw',
      diameter_in: cell.d,
      root_diameter_in: roots[cell.d] ?? 0,
      bending_yield_psi: bendingYieldStrength_psi('lag-screw', cell.d),
      side: { length_in: cell.plate_in, bearing_psi: STEEL_SIDE_BEARING_PSI },
      // The table assumes 8 D of penetration.
      main: { length_in: 8 * cell.d, specific_gravity: cell.gravity },
      gap_in: 0,
      load_to_grain: cell.grain,
    };
    // Printed to 10 lb, from bearing strengths printed to 50 psi.
    expect(Math.abs(lateralReference(joint).reference_lb - cell.printed_lb)).toBeLessThanOrEqual(5.5);
  });
});

describe('bending yield strength, NDS Table I1 (public restatement of the nail classes)', () => {
  it.each([
    [0.099, 100_000],
    [0.142, 100_000],
    [0.148, 90_000],
    [0.177, 90_000],
    [0.207, 80_000],
    [0.236, 80_000],
    [0.25, 70_000],
    [0.273, 70_000],
    [0.312, 60_000],
    [0.344, 60_000],
    [0.375, 45_000],
  ])('nail %f in.: %i psi', (d, psi) => expect(bendingYieldStrength_psi('nail', d)).toBe(psi));
});

describe('values from memory', () => {
  it('wood screws, NDS Table 12L, 1/2 in. side, from memory: met within 1 lb on the root diameter, undercut on the nominal', () => {
    const rows = [
      { d: 0.138, root: 0.113, fyb: 100_000, z: [88, 67, 59] },
      { d: 0.164, root: 0.131, fyb: 90_000, z: [107, 82, 73] },
      { d: 0.19, root: 0.152, fyb: 80_000, z: [130, 101, 90] },
      { d: 0.216, root: 0.171, fyb: 80_000, z: [156, 123, 110] },
      { d: 0.242, root: 0.196, fyb: 70_000, z: [168, 133, 120] },
    ];
    for (const row of rows) {
      [0.67, 0.55, 0.5].forEach((gravity, i) => {
        const joint: LateralJoint = {
          fastener: 'wood-screw',
          diameter_in: row.d,
          root_diameter_in: row.root,
          bending_yield_psi: row.fyb,
          side: { length_in: 0.5, specific_gravity: gravity },
          main: { length_in: 10 * row.d, specific_gravity: gravity },
          gap_in: 0,
          load_to_grain: 'parallel',
        };
        const recalled = row.z[i] ?? 0;
        expect(
          Math.abs(lateralReference({ ...joint, reduction_diameter: 'root' }).reference_lb - recalled),
        ).toBeLessThanOrEqual(1);
        expect(lateralReference(joint).reference_lb).toBeLessThanOrEqual(recalled + 1);
      });
    }
  });
  it('dowel bearing strength, NDS Table 12.3.3, from memory: 3350 psi under 1/4 in. in spruce-pine-fir', () => {
    expect(Math.abs(dowelBearingStrength_psi(0.42, 0.131, 'parallel') - 3350)).toBeLessThan(25);
    expect(Math.abs(dowelBearingStrength_psi(0.5, 0.131, 'parallel') - 4650)).toBeLessThan(25);
    expect(Math.abs(dowelBearingStrength_psi(0.5, 0.5, 'parallel') - 5600)).toBeLessThan(25);
    expect(Math.abs(dowelBearingStrength_psi(0.5, 0.5, 'perpendicular') - 3150)).toBeLessThan(25);
  });
});
