import { describe, expect, it } from 'vitest';
import { type EnergyQuery, energyRequirement } from '../../src/calculators/energy-code.ts';
import { steelCavity } from '../../src/calculators/thermal/steel-frame.ts';
import { energyTable, thermalTable } from '../calculators/thermal/read-table.ts';

type Pair = readonly [cavity_r: number, ci_r: number];

const ask = (edition: string, climate_zone: EnergyQuery['climate_zone'], wall: EnergyQuery['wall']) =>
  energyRequirement(energyTable, { edition, climate_zone, wall });
const pairsOf = (edition: string, zone: EnergyQuery['climate_zone'], wall: EnergyQuery['wall']): Pair[] =>
  ask(edition, zone, wall).options.map((option) => [option.cavity_r, option.ci_r]);

const ZONE_2018 = [
  ['1A', [[13, 0]], [3, 4]],
  ['2B', [[13, 0]], [4, 6]],
  [
    '3A',
    [
      [20, 0],
      [13, 5],
    ],
    [8, 13],
  ],
  [
    '4A',
    [
      [20, 0],
      [13, 5],
    ],
    [8, 13],
  ],
  [
    '4C',
    [
      [20, 0],
      [13, 5],
    ],
    [13, 17],
  ],
  [
    '5B',
    [
      [20, 0],
      [13, 5],
    ],
    [13, 17],
  ],
  [
    '6A',
    [
      [20, 5],
      [13, 10],
    ],
    [15, 20],
  ],
  [
    '7',
    [
      [20, 5],
      [13, 10],
    ],
    [19, 21],
  ],
  [
    '8',
    [
      [20, 5],
      [13, 10],
    ],
    [19, 21],
  ],
] as const;

// Table N1102.1.2 in a city reprint, and a national-laboratory comparison of the 2009 to 2021 editions.
describe('IECC 2018, R-values seen in two documents', () => {
  it.each(ZONE_2018)('zone %s, wood-frame options', (zone, options) => {
    expect(pairsOf('2018', zone, 'wood-frame')).toEqual(options);
  });
  it.each(ZONE_2018)('zone %s, mass wall', (zone, _, [outside, inside]) => {
    expect(pairsOf('2018', zone, 'mass')).toEqual([
      [0, outside],
      [inside, 0],
    ]);
  });
  // A town ordinance quotes the 2018 model row of zone 4 that it replaces: 20 or 13+5, U 0.060.
  it('zone 4, maximum U 0.060', () => {
    expect(ask('2018', '4A', 'wood-frame').max_u_factor).toBe(0.06);
  });
});

// Public data copy of Tables R402.1.2 and R402.1.4 as program data; no code page seen.
describe('IECC 2018, U-factors of a public data copy', () => {
  it.each([
    ['1A', 0.084, 0.197, 0.17],
    ['2A', 0.084, 0.165, 0.14],
    ['3B', 0.06, 0.098, 0.12],
    ['4B', 0.06, 0.098, 0.087],
    ['4C', 0.06, 0.082, 0.065],
    ['5A', 0.06, 0.082, 0.065],
    ['6B', 0.045, 0.06, 0.057],
    ['7', 0.045, 0.057, 0.057],
    ['8', 0.045, 0.057, 0.057],
  ] as const)('zone %s: wood %f, mass %f, mass insulated inside %f', (zone, wood, mass, inside) => {
    expect(ask('2018', zone, 'wood-frame').max_u_factor).toBe(wood);
    expect(ask('2018', zone, 'mass').max_u_factor).toBe(mass);
    expect(ask('2018', zone, 'mass').max_u_factor_interior_insulation).toBe(inside);
  });
});

const FOUR: readonly Pair[] = [
  [30, 0],
  [20, 5],
  [13, 10],
  [0, 20],
];
const ZONE_2021 = [
  [
    '1A',
    [
      [13, 0],
      [0, 10],
    ],
    [3, 4],
  ],
  [
    '2A',
    [
      [13, 0],
      [0, 10],
    ],
    [4, 6],
  ],
  [
    '3C',
    [
      [20, 0],
      [13, 5],
      [0, 15],
    ],
    [8, 13],
  ],
  ['4A', FOUR, [8, 13]],
  ['4C', FOUR, [13, 17]],
  ['5B', FOUR, [13, 17]],
  ['6A', FOUR, [15, 20]],
  ['7', FOUR, [19, 21]],
  ['8', FOUR, [19, 21]],
] as const;

// National-laboratory comparison of the 2009 to 2021 editions (every cell), a requirement sheet for zone 1A, trade
// articles, and forum questions for zones 5 and 6.
describe('IECC 2021, R-values seen in one document or more', () => {
  it.each(ZONE_2021)('zone %s, wood-frame options', (zone, options) => {
    expect(pairsOf('2021', zone, 'wood-frame')).toEqual(options);
  });
  it.each(ZONE_2021)('zone %s, mass wall', (zone, _, [outside, inside]) => {
    expect(pairsOf('2021', zone, 'mass')).toEqual([
      [0, outside],
      [inside, 0],
    ]);
  });
  it('marine zone 4 asks the same as zone 5, for wood and for mass', () => {
    expect(pairsOf('2021', '4C', 'wood-frame')).toEqual(pairsOf('2021', '5A', 'wood-frame'));
    expect(pairsOf('2021', '4C', 'mass')).toEqual(pairsOf('2021', '5A', 'mass'));
    expect(ask('2021', '4C', 'mass').max_u_factor).toBe(ask('2021', '5A', 'mass').max_u_factor);
  });
});

const U_2021 = [
  ['0A', 0.084, 0.197],
  ['1A', 0.084, 0.197],
  ['2A', 0.084, 0.165],
  ['3A', 0.06, 0.098],
  ['4A', 0.045, 0.098],
  ['4C', 0.045, 0.082],
  ['5A', 0.045, 0.082],
  ['6A', 0.045, 0.06],
  ['7', 0.045, 0.057],
  ['8', 0.045, 0.057],
] as const;

// The column of Table R402.1.2 in a public data copy as program data (zones 1 to 8) and in public notes quoting it as
// adopted in Connecticut (zones 5 to 8, marine 4).
describe('IECC 2021, maximum U-factors of wood walls, public data copy and a state’s adoption', () => {
  it.each([
    ['1A', 0.084, 'verified'],
    ['2B', 0.084, 'verified'],
    ['3A', 0.06, 'verified'],
    ['4A', 0.045, 'verified'],
    ['4C', 0.045, 'verified'],
    ['5B', 0.045, 'two-sources'],
    ['6A', 0.045, 'two-sources'],
    ['7', 0.045, 'two-sources'],
    ['8', 0.045, 'two-sources'],
  ] as const)('zone %s: %f, %s', (zone, u, provenance) => {
    const requirement = ask('2021', zone, 'wood-frame');
    expect(requirement.max_u_factor).toBe(u);
    expect(requirement.provenance.max_u_factor).toBe(provenance);
  });
});

// New York's energy code of 2025, which amends this edition, quoted in public notes; the model's own rows were not seen.
describe('IECC 2024, wood walls of zones 4 to 6, as in a state code built on it', () => {
  it.each(['4A', '5A', '6A'] as const)('zone %s: U 0.045, or R-30, 20 + 5, 13 + 10, 0 + 20', (zone) => {
    expect(ask('2024', zone, 'wood-frame').max_u_factor).toBe(0.045);
    expect(pairsOf('2024', zone, 'wood-frame')).toEqual([
      [30, 0],
      [20, 5],
      [13, 10],
      [0, 20],
    ]);
    expect(ask('2024', zone, 'wood-frame').provenance.max_u_factor).toBe('memory');
  });
});

describe('IECC 2021 and 2024, figures from memory', () => {
  it.each(U_2021)('from memory: 2021 zone %s, maximum U of mass walls', (zone, _wood, mass) => {
    expect(ask('2021', zone, 'mass').max_u_factor).toBe(mass);
  });
  it('from memory: 2021 zone 0, maximum U of wood 0.084', () => {
    expect(ask('2021', '0A', 'wood-frame').max_u_factor).toBe(0.084);
  });
  it.each(U_2021)('from memory: 2024 zone %s, maximum U of wood %f and mass walls %f', (zone, wood, mass) => {
    expect(ask('2024', zone, 'wood-frame').max_u_factor).toBe(wood);
    expect(ask('2024', zone, 'mass').max_u_factor).toBe(mass);
  });
  it('from memory: 2021 zone 0 has the options of zone 1', () => {
    expect(pairsOf('2021', '0A', 'wood-frame')).toEqual(pairsOf('2021', '1A', 'wood-frame'));
  });
  it.each(ZONE_2021)(
    'from memory: 2024 zone %s has the wood-frame options and mass walls of 2021',
    (zone, options, [outside, inside]) => {
      expect(pairsOf('2024', zone, 'wood-frame')).toEqual(options);
      expect(pairsOf('2024', zone, 'mass')).toEqual([
        [0, outside],
        [inside, 0],
      ]);
    },
  );
  // Walls of two federal reference homes in a national-laboratory data set, believed to follow the 2021 edition.
  it.each([
    ['1A', 0.084],
    ['2B', 0.084],
    ['3A', 0.06],
    ['4A', 0.045],
    ['4C', 0.045],
    ['5B', 0.045],
    ['6A', 0.045],
    ['7', 0.045],
    ['8', 0.045],
  ] as const)('from memory, but as in the federal reference homes: 2021 zone %s, U %f', (zone, u) => {
    expect(ask('2021', zone, 'wood-frame').max_u_factor).toBe(u);
  });
});

// Table R402.2.6 of 2018 in a public data copy as program data.
describe('steel-frame equivalents, public data copy of Table R402.2.6', () => {
  const rows: readonly (readonly [string, 16 | 24, readonly Pair[]])[] = [
    [
      '13+0',
      24,
      [
        [0, 9.3],
        [13, 3],
        [15, 2.4],
      ],
    ],
    [
      '13+3',
      16,
      [
        [0, 11.2],
        [13, 6.1],
        [15, 5.7],
        [19, 5],
        [21, 4.7],
      ],
    ],
    [
      '13+3',
      24,
      [
        [0, 11.2],
        [13, 4.9],
        [15, 4.3],
        [19, 3.5],
        [21, 3.1],
      ],
    ],
    [
      '20+0',
      16,
      [
        [0, 14],
        [13, 8.9],
        [15, 8.5],
        [19, 7.8],
        [21, 7.5],
      ],
    ],
    [
      '20+0',
      24,
      [
        [0, 14],
        [13, 7.7],
        [15, 7.1],
        [19, 6.3],
        [21, 5.9],
      ],
    ],
    [
      '20+5',
      16,
      [
        [13, 12.7],
        [15, 12.3],
        [19, 11.6],
        [21, 11.3],
        [25, 10.9],
      ],
    ],
    [
      '20+5',
      24,
      [
        [13, 11.5],
        [15, 10.9],
        [19, 10.1],
        [21, 9.7],
        [25, 9.1],
      ],
    ],
    [
      '21+0',
      16,
      [
        [0, 14.6],
        [13, 9.5],
        [15, 9.1],
        [19, 8.4],
        [21, 8.1],
        [25, 7.7],
      ],
    ],
    [
      '21+0',
      24,
      [
        [0, 14.6],
        [13, 8.3],
        [15, 7.7],
        [19, 6.9],
        [21, 6.5],
        [25, 5.9],
      ],
    ],
  ];
  const rowOf = (wood: string, spacing: number) =>
    energyTable.steel_frame.rows.find(
      (row) => `${row.wood.cavity_r}+${row.wood.ci_r}` === wood && row.stud_spacing_in === spacing,
    );
  it.each(rows)('wood R-%s, studs at %d in.', (wood, spacing, options) => {
    expect(rowOf(wood, spacing)?.options.map((o) => [o.cavity_r, o.ci_r])).toEqual(options);
  });
  it('wood R-13 at 16 in. as printed, but R-3.1 with R-19 where printings disagree', () => {
    expect(rowOf('13+0', 16)?.options.map((o) => [o.cavity_r, o.ci_r])).toEqual([
      [0, 9.3],
      [13, 4.2],
      [15, 3.8],
      [19, 3.1],
      [21, 3.1],
    ]);
  });

  // The table makes all options of a row equal in resistance: the effective resistance of studs and cavity (another
  // standard's table) plus the continuous insulation. That holds to the printed 0.1 for every insulated cavity.
  const insulated = energyTable.steel_frame.rows.flatMap((row) =>
    row.options
      .filter((o) => o.cavity_r > 0 && o.provenance === 'verified')
      .map(
        (o) => [`${row.wood.cavity_r}+${row.wood.ci_r}`, row.stud_spacing_in, o.cavity_r, o.ci_r] as const,
      ),
  );
  const sums: Readonly<Record<string, number>> = {
    '13+0': 10.2,
    '13+3': 12.1,
    '20+0': 14.9,
    '20+5': 18.7,
    '21+0': 15.5,
  };
  const depthOf = (cavity_r: number) => (cavity_r === 25 ? 8 : cavity_r >= 19 ? 6 : 3.5);
  it.each(
    insulated.filter(([wood, spacing, cavity_r]) => !(wood === '13+0' && spacing === 16 && cavity_r === 21)),
  )(
    'wood R-%s at %d in.: R-%d + R-%f has the resistance of its row',
    (wood, spacing_in, insulation_r, ci_r) => {
      const { effective_r } = steelCavity(thermalTable.steel_cavities, {
        depth_in: depthOf(insulation_r),
        spacing_in,
        insulation_r,
      });
      expect(Math.abs(effective_r + ci_r - (sums[wood] ?? 0))).toBeLessThan(0.051);
    },
  );
});

// Open national-laboratory data set of 90.1-2019 envelope maxima (nonresidential, residential).
describe('ASHRAE 90.1-2019 Tables 5.5, walls above grade', () => {
  const maxima = (zone: EnergyQuery['climate_zone'], wall: EnergyQuery['wall']) =>
    (['nonresidential', 'residential'] as const).map(
      (space) =>
        energyRequirement(energyTable, { edition: '90.1-2019', climate_zone: zone, wall, space })
          .max_u_factor,
    );
  it.each([
    ['0A', [0.089, 0.089], [0.124, 0.124]],
    ['1A', [0.089, 0.089], [0.124, 0.124]],
    ['2A', [0.089, 0.089], [0.084, 0.064]],
    ['3A', [0.089, 0.064], [0.077, 0.064]],
    ['4A', [0.064, 0.064], [0.064, 0.064]],
    ['4C', [0.064, 0.064], [0.064, 0.064]],
    ['5A', [0.051, 0.051], [0.055, 0.055]],
    ['6A', [0.051, 0.051], [0.049, 0.049]],
    ['7', [0.051, 0.051], [0.049, 0.042]],
    ['8', [0.032, 0.032], [0.037, 0.037]],
  ] as const)('zone %s, wood and steel frames', (zone, wood, steel) => {
    expect(maxima(zone, 'wood-frame')).toEqual(wood);
    expect(maxima(zone, 'steel-frame')).toEqual(steel);
  });
  it.each([
    ['2A', [0.151, 0.123]],
    ['3A', [0.123, 0.104]],
    ['4A', [0.104, 0.09]],
    ['6A', [0.08, 0.071]],
    ['7', [0.071, 0.071]],
    ['8', [0.048, 0.048]],
  ] as const)('zone %s, mass walls', (zone, mass) => {
    expect(maxima(zone, 'mass')).toEqual(mass);
  });
  it.each([
    ['0A', [0.58, 0.151]],
    ['1A', [0.58, 0.151]],
    ['5A', [0.09, 0.08]],
  ] as const)('from memory: zone %s, mass walls', (zone, mass) => {
    expect(maxima(zone, 'mass')).toEqual(mass);
  });
});
