import { type Advice, adviceSchema, type RankedAssembly } from '../../src/advice/advice-schema.ts';
import { type Scenario, scenarioSchema } from '../../src/brief/scenario.ts';
import { SAMPLE_LOADS, SAMPLE_WIND } from '../advice/sample-loads.ts';
import { SAMPLE_PHYSICS } from '../advice/sample-physics.ts';

/** An invented project and an invented answer to it, complete in every field. No figure here was computed. */
export const SCENARIO: Scenario = scenarioSchema.parse({
  schema: 'cladwright-scenario/1',
  name: 'Quarry Lane duplex, north wall',
  place: { state: 'CO', county: 'Boulder' },
  project: 'retrofit',
  code_edition: '2021',
  framing: { material: 'wood', depth_in: 5.5, spacing_in: 16, species_gravity: 0.42 },
  sheathing: 'osb',
  cavity_insulation_r: 21,
  interior_vapour_retarder: 'unknown',
  windows: [
    {
      count: 6,
      width_in: 36,
      height_in: 60,
      glazing: 'triple',
      mounting: 'flanged',
      operation: 'casement',
      weight_lb: 130,
    },
  ],
  rough_opening_can_change: false,
  finish: 'cement-stucco',
  budget_usd_per_ft2: 32,
  crew_skill: 'general',
  wall_area_ft2: 1800,
  basic_wind_speed_mph: 115,
  exposure: 'B',
  mean_roof_height_ft: 22,
  fire_separation_ft: 12,
  wildfire_area: false,
  max_added_thickness_in: 6,
  priorities: { cost: 1, moisture_safety: 2, energy: 1, ease: 1, carbon: 0.5 },
});

const stuccoOnMat: RankedAssembly = {
  rank: 1,
  id: 'plaster-on-mat-integral-lath/mineral-wool/1.5+1.5',
  title:
    'Three-coat cement stucco on a drainage mat with integral lath over 3 in. mineral wool board (two layers of 1-1/2 in.)',
  score: 0.81,
  cladding: 'three-coat cement stucco on a drainage mat with integral lath',
  attachment: 'long fasteners with plate washers through mat and insulation into the studs',
  insulation: {
    id: 'mineral-wool',
    material: 'mineral wool board',
    layers: 2,
    board_thicknesses_in: [1.5, 1.5],
    thickness_in: 3,
    r: 12.6,
  },
  interior_vapour_retarder: 'as it stands, not known: find out before ordering',
  water_resistive_barrier: 'fluid-applied membrane on the sheathing',
  openings: [],
  buck: {
    id: 'lumber-face',
    support: 'face-fastened',
    label: 'lumber frame fastened to the face of the rough opening',
    projection_in: 3,
    verdict: 'engineer',
    utilisation: 0.42,
    screws_per_side: 5,
    min_screw_length_in: 5.125,
    why: 'The frame carries the window, but lumber standing out past the framing bends across its grain',
    flashing_sequence: [
      'Slope the sill of the buck outward.',
      'Lap the membrane over the buck, sill first.',
      'Set the window on blocks, leave the sill flange unsealed.',
    ],
  },
  fastening: {
    fastener: 'No. 10 wood screw',
    support: 'direct',
    length_in: 5,
    spacing_along_stud_in: 8,
    stud_spacing_in: 16,
    washer: 'plate washer, 1-3/4 in.',
    lath_or_furring: 'self-furring lath bonded to the mat',
    count_per_100_ft2: 113,
    table_verdict: 'permitted',
    max_insulation_in: 3.2,
    gravity_load_lb: 9.4,
    wind_load_lb: 21.3,
    wind_capacity_lb: 118,
    combined_utilisation: 0.42,
    on_furring: null,
    weakest_link: null,
    why: 'The cell for the next heavier cladding was used',
  },
  layers: [
    {
      label: 'gypsum board, 1/2 in., retarder not known',
      thickness_in: 0.5,
      r: 0.45,
      role: 'lining',
      provenance: 'two-sources',
    },
    { label: '2x6 studs with cavity fill', thickness_in: 5.5, r: 21, role: 'framing', provenance: 'given' },
    { label: 'OSB, 7/16 in.', thickness_in: 0.4375, r: 0.62, role: 'sheathing', provenance: 'verified' },
    {
      label: 'fluid-applied membrane',
      thickness_in: 0.02,
      r: 0,
      role: 'barrier',
      provenance: 'common-practice',
    },
    {
      label: 'mineral wool board, inner layer',
      thickness_in: 1.5,
      r: 6.3,
      role: 'insulation',
      provenance: 'verified',
    },
    {
      label: 'mineral wool board, outer layer, joints offset',
      thickness_in: 1.5,
      r: 6.3,
      role: 'insulation',
      provenance: 'verified',
    },
    {
      label: 'drainage mat with bonded lath',
      thickness_in: 0.375,
      r: 0,
      role: 'drainage',
      provenance: 'computed',
    },
    {
      label: 'three-coat cement plaster, 7/8 in.',
      thickness_in: 0.875,
      r: 0,
      role: 'finish',
      provenance: 'memory',
    },
  ],
  u_factor: 0.041,
  r_effective: 24.4,
  added_thickness_in: 4.27,
  weight_psf: 12.1,
  installed_cost_usd_per_ft2: { low: 24, likely: 29, high: 37 },
  cost_parts: [
    { part: 'cladding', label: 'cladding in place', usd_per_ft2: { low: 16, likely: 19, high: 24 } },
    {
      part: 'insulation',
      label: 'boards laid and taped',
      usd_per_ft2: { low: 8, likely: 10, high: 13 },
    },
  ],
  crew: {
    needed: 'a plasterer with lath-and-plaster experience',
    steps: [
      'Membrane and bucks',
      'Two layers of board, joints offset',
      'Mat, lath and screws',
      'Three coats',
    ],
    trades: ['carpenter', 'plasterer'],
  },
  scores: { energy: 0.9, cost: 0.62, ease: 0.44, moisture_safety: 0.88 },
  reasons: [
    {
      text: 'U 0.041 is below the 0.060 that the energy code allows',
      rule: 'energy.wall-maximum-u',
    },
    { text: 'The mat drains and the board dries outward at 14 perm', rule: 'rain.drainage-space' },
    { text: 'A hard mineral face that takes knocks' },
  ],
  gains: [],
  gives_up: ['Slow: three coats with curing between them.'],
  cautions: [
    {
      text: 'Lumber past the framing bends across its grain; no design value exists',
      kind: 'structural',
      rule: 'openings.buck-projection',
      remedy: 'Have the buck designed',
    },
    {
      text: 'Plaster cures badly below 40 °F',
      kind: 'practice',
      rule: 'stucco.cold-weather',
      remedy: 'Heat and tent, or wait',
    },
  ],
  verdicts: [
    {
      rule: 'energy.wall-maximum-u',
      title: 'The wall keeps the maximum U-factor',
      concern: 'energy',
      verdict: 'pass',
      citation: 'Energy code 2021, table of maximum U-factors',
      provenance: 'memory',
      text: 'U 0.041 against 0.060.',
      facts: { 'wall.u_factor': 0.041, 'energy.max_u_factor': 0.06 },
    },
    {
      rule: 'rain.drainage-space',
      title: 'A drained space behind the plaster',
      concern: 'rain',
      verdict: 'prefer',
      citation: 'common practice, no source',
      provenance: 'common-practice',
      text: 'The mat leaves 3/8 in.',
      facts: { 'drainage.gap_in': 0.375 },
    },
    {
      rule: 'openings.buck-projection',
      title: 'Lumber past the framing',
      concern: 'openings',
      verdict: 'caution',
      citation: 'Own statics',
      provenance: 'proposal',
      text: 'The buck stands 3 in. past the framing.',
      facts: { 'buck.projection_in': 3 },
    },
    {
      rule: 'vapour.class-i-both-sides',
      title: 'Vapour barriers on both sides need an approved design',
      concern: 'vapour',
      verdict: 'undecided',
      citation: 'Residential code 2021, R702.7',
      provenance: 'verified',
      text: 'The retarder in the wall is not known.',
      facts: { 'retarder.class': null },
    },
    {
      rule: 'structure.soft-foam',
      title: 'Foam softer than the table supposes',
      concern: 'structure',
      verdict: 'pass',
      citation: 'Building code 2018, footnote d of the furring table',
      provenance: 'verified',
      text: 'Foam softer than the table supposes: kept.',
      facts: { 'insulation.is_soft': false },
    },
  ],
  figures: [
    {
      id: 'u-factor',
      what: 'Wall U-factor, fasteners included',
      value: 0.0412,
      unit: 'Btu/(h·ft²·°F)',
      method: 'parallel paths, framing fraction 0.25',
      source: ['Handbook of fundamentals, parallel-path method', 'ISO 6946 annex F'],
      note: 'The point transmittance of a long screw is from memory, not verified',
    },
    {
      id: 'condensate',
      what: 'Peak condensate in the year',
      value: null,
      unit: 'g/m²',
      method: 'monthly diffusion method',
      source: ['ISO 13788:2012 clause 6'],
      note: 'Could not be computed: the inside retarder is not known',
    },
  ],
  ...SAMPLE_PHYSICS,
  ...SAMPLE_LOADS,
};

const panels: RankedAssembly = {
  ...stuccoOnMat,
  rank: 2,
  id: 'panels-on-furring/mineral-wool/3',
  title: 'Stucco-texture fibre-cement panels on furring over 3 in. mineral wool board',
  score: 0.74,
  cladding: 'stucco-texture fibre-cement panels on furring',
  attachment: 'furring screwed through the insulation into the studs',
  insulation: { ...stuccoOnMat.insulation, layers: 1, board_thicknesses_in: [3] },
  u_factor: 0.042,
  weight_psf: 4.2,
  installed_cost_usd_per_ft2: { low: 15, likely: 19.5, high: 25 },
  scores: { energy: 0.89, cost: 0.85, ease: 0.7, moisture_safety: 0.6 },
  reasons: [
    { text: 'U 0.042 is below the 0.060 that the energy code allows', rule: 'energy.wall-maximum-u' },
    { text: 'Two thirds of the price', rule: 'budget.within-budget' },
  ],
  gains: [],
  gives_up: ['Joints show; it is not true plaster.'],
  cautions: [
    ...stuccoOnMat.cautions,
    { text: 'Silica dust when cutting', kind: 'health', rule: 'safety.fibre-cement-dust' },
  ],
  verdicts: [],
  figures: [],
};

const lap: RankedAssembly = {
  ...panels,
  rank: 3,
  id: 'lap-on-furring/wood-fibre/2.5',
  title: 'Fibre-cement lap siding on furring over 2-1/2 in. wood fibre board',
  score: 0.7,
  cladding: 'fibre-cement lap siding on furring',
  insulation: {
    id: 'wood-fibre',
    material: 'wood fibre board',
    layers: 1,
    board_thicknesses_in: [2.5],
    thickness_in: 2.5,
    r: 9,
  },
  added_thickness_in: 3.6,
  gains: [],
  gives_up: ['Not the look of stucco.'],
  reasons: [{ text: 'Lowest carbon of the three' }],
  cautions: [],
};

/** A full answer: a first choice, two alternatives, exclusions, everything open that can be open. */
export const FULL_ADVICE: Advice = adviceSchema.parse({
  schema: 'cladwright-advice/1',
  tool_version: '0.1.0',
  name: 'Quarry Lane duplex, north wall',
  code_edition: '2021',
  wind: SAMPLE_WIND,
  site: {
    climate_zone: '5B',
    place: 'Boulder County, CO',
    zone_source: 'county table of the 2021 energy code',
    moisture_regime: 'B',
    winter_mean_temp_f: 33.2,
    climate_source: 'typical-year weather data, a station 9 miles away',
    annual_precip_in: 20.7,
    notes: ['The station lies 240 ft lower than the county seat.'],
  },
  answers: [
    { field: 'place', question: 'Where does the house stand?', answer: 'Boulder County, CO' },
    { field: 'finish', question: 'What should the face be?', answer: 'true cement stucco' },
  ],
  assumptions: [
    {
      field: 'termite_area',
      value: null,
      why: 'Not said; see the termite map of the residential code.',
      could_change_answer: false,
    },
    {
      field: 'interior_vapour_retarder',
      value: null,
      why: 'Not said what is behind the lining; look behind an outlet plate.',
      could_change_answer: true,
    },
  ],
  considered: { candidates: 4212, admitted: 318 },
  ranked: [stuccoOnMat, panels, lap],
  comparison: null,
  fallback: null,
  excluded: [
    {
      title: 'One-coat stucco over 4 in. foil-faced board',
      id: 'one-coat/polyiso/4',
      because: [
        {
          rule: 'vapour.class-i-both-sides',
          citation: 'Residential code 2021, R702.7',
          text: 'Foil outside and perhaps polyethylene inside: water that gets in cannot get out.',
          remedy: 'Look what is behind the lining, or choose an open board.',
        },
      ],
    },
    ...['Wood siding on furring', 'Adhered veneer on a drainage mat'].map((title) => ({
      title,
      because: [
        {
          rule: 'buildability.finish-wanted',
          citation: 'The wish as it was given',
          text: 'Only true cement stucco was asked for.',
          remedy: 'Say that any finish will do.',
        },
      ],
    })),
  ],
  would_change_the_answer: [
    { if: 'the budget falls to $20 a square foot', then: 'the panels come first' },
    { if: 'there is polyethylene behind the lining', then: 'only open boards stay in the running' },
  ],
  cautions: [
    { text: 'A licensed design professional checks the structure', kind: 'professional' },
    { text: 'Falls from scaffolds kill: guard rails, ties, daily checks', kind: 'site-work' },
    { text: 'Paint before 1978 may hold lead', kind: 'health', rule: 'safety.lead-and-asbestos' },
    { text: 'Prices move: get quotes', kind: 'cost' },
  ],
  rules: {
    packs: [
      { name: 'wall-limits', version: '1.0.0', sha256: 'a'.repeat(64) },
      { name: 'drying', version: '1.2.0', sha256: 'b'.repeat(64) },
    ],
  },
});

/** An answer in which no wall passes. */
export const EMPTY_ADVICE: Advice = adviceSchema.parse({
  ...FULL_ADVICE,
  considered: { candidates: 4212, admitted: 0 },
  ranked: [],
  would_change_the_answer: [],
});

/** No wall passes as asked, but one does when the look of stucco is enough. */
export const FALLBACK_ADVICE: Advice = adviceSchema.parse({
  ...EMPTY_ADVICE,
  fallback: {
    why: 'True cement stucco does not pass here. If the look of stucco is enough, this wall does.',
    assembly: { ...panels, rank: 1 },
  },
});

export const CREATED = new Date('2026-03-14T15:09:26.000Z');
