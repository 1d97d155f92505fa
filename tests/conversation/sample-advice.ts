import type { Advice, RankedAssembly } from '../../src/advice/advice-schema.ts';
import type { Scenario } from '../../src/brief/scenario.ts';
import { SAMPLE_LOADS, SAMPLE_WIND } from '../advice/sample-loads.ts';
import { SAMPLE_PHYSICS } from '../advice/sample-physics.ts';

/** An invented answer, shaped like a real one; its figures mean nothing. */
export function sampleAdvice(scenario: Scenario, change: Partial<Advice> = {}): Advice {
  const place = scenario.place;
  return {
    schema: 'cladwright-advice/1',
    tool_version: '0.0.0-test',
    name: scenario.name ?? 'Unnamed wall',
    code_edition: '2021',
    wind: SAMPLE_WIND,
    site: {
      climate_zone: 'climate_zone' in place ? place.climate_zone : '5B',
      place: 'county' in place ? `${place.county}, ${place.state}` : 'a place',
      zone_source: 'county table, 2021 edition',
      moisture_regime: 'B',
      winter_mean_temp_f: 34,
      climate_source: 'invented',
      annual_precip_in: 20,
      notes: [],
    },
    answers: [],
    assumptions: [
      {
        field: 'sheathing',
        value: 'osb',
        why: 'Not said; the harder case for drying.',
        could_change_answer: true,
      },
      { field: 'fire_separation_ft', value: null, why: 'Not said.', could_change_answer: false },
    ],
    considered: { candidates: 4321, admitted: 87 },
    ranked: [
      sampleWall(1, 'Three-coat stucco over 3 in. of mineral wool'),
      sampleWall(2, 'Stucco-look panels on furring over 2 in. of wood fibre'),
      sampleWall(3, 'Wood siding on furring over 4 in. of EPS'),
    ],
    comparison: null,
    fallback: null,
    excluded: [
      {
        title: 'Adhered veneer over 6 in. of XPS',
        because: [
          {
            rule: 'structure.too-heavy',
            citation: 'an invented table, row 3',
            text: 'Twice the load its screws can carry.',
            remedy: 'Thinner insulation.',
          },
        ],
      },
    ],
    would_change_the_answer: [{ if: 'the budget falls below $20', then: 'panels come first' }],
    cautions: [{ text: 'Local code and a licensed professional decide.', kind: 'professional' }],
    rules: { packs: [{ name: 'sample', version: '1.0.0', sha256: '00' }] },
    ...change,
  };
}

export function sampleWall(rank: number, title: string): RankedAssembly {
  return {
    rank,
    id: `wall-${rank}`,
    title,
    score: 0.9 - rank / 10,
    cladding: 'a cladding',
    attachment: 'screwed through the insulation',
    insulation: {
      id: 'mineral-wool',
      material: 'mineral wool',
      layers: 2,
      board_thicknesses_in: [1.5, 1.5],
      thickness_in: 3,
      r: 12.6,
    },
    interior_vapour_retarder: 'latex paint',
    water_resistive_barrier: 'two layers of building paper',
    openings: [],
    buck: {
      id: 'buck',
      support: 'bears-on-sill',
      label: '2x buck in the rough opening',
      projection_in: 3,
      verdict: 'fits',
      utilisation: 0.3,
      screws_per_side: 4,
      min_screw_length_in: 3,
      why: 'It bears on the sill.',
      flashing_sequence: ['Pan the sill', 'Set the window', 'Tape jambs, then head'],
    },
    fastening: {
      fastener: 'No. 10 wood screw',
      support: 'direct',
      length_in: 5,
      spacing_along_stud_in: 12,
      stud_spacing_in: 16,
      washer: '1 in. washer',
      lath_or_furring: 'metal lath',
      count_per_100_ft2: 80,
      table_verdict: 'permitted',
      max_insulation_in: 3,
      gravity_load_lb: 12,
      wind_load_lb: 20,
      wind_capacity_lb: 80,
      combined_utilisation: 0.42,
      on_furring: null,
      weakest_link: null,
      why: 'The table carries it.',
    },
    layers: [
      { label: 'gypsum board', thickness_in: 0.5, r: 0.45, role: 'lining', provenance: 'verified' },
      { label: 'mineral wool', thickness_in: 3, r: 12.6, role: 'insulation', provenance: 'memory' },
    ],
    u_factor: 0.0412,
    r_effective: 24.3,
    added_thickness_in: 4.6,
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
      needed: 'A crew with a plasterer',
      steps: ['Hang the boards', 'Fix the lath'],
      trades: ['plasterer'],
    },
    scores: { energy: 0.9 },
    reasons: [
      { text: 'The sheathing stays warm: 12.6 of 24.3.', rule: 'vapour.ratio' },
      { text: 'Within the budget.' },
    ],
    gains: [],
    gives_up: rank === 1 ? [] : ['the sound of real plaster'],
    cautions: [{ text: 'Have the fastening checked.', kind: 'structural', rule: 'structure.engineer' }],
    verdicts: [
      {
        rule: 'vapour.ratio',
        title: 'Ratio outside the studs',
        concern: 'vapour',
        verdict: 'pass',
        citation: 'an invented code, table 1 (from memory, not verified)',
        provenance: 'memory',
        text: 'Kept.',
        facts: {},
      },
      {
        rule: 'fire.lot-line',
        title: 'Fire rating near the lot line',
        concern: 'fire',
        verdict: 'undecided',
        citation: 'an invented code, table 2',
        provenance: 'verified',
        text: 'The distance to the lot line is not known.',
        facts: {},
      },
    ],
    figures: [],
    ...SAMPLE_PHYSICS,
    ...SAMPLE_LOADS,
  };
}
