import { describe, expect, it } from 'vitest';
import {
  fieldsWordsWithUnit,
  fieldWords,
  fieldWordsWithUnit,
  valueWords,
} from '../../src/brief/field-words.ts';
import { resolveBrief } from '../../src/brief/resolve-brief.ts';
import { scenarioSchema } from '../../src/brief/scenario.ts';

describe('a length in words', () => {
  it('said in millimetres is given to the hundredth of an inch', () => {
    expect(valueWords('max_added_thickness_in', 3.937)).toBe('3.94 in. at most');
    expect(valueWords('max_added_thickness_in', 5.5)).toBe('5.5 in. at most');
  });
});

describe('what a field is called', () => {
  it.each([
    ['windows[0].weight_lb', 'windows, kind 1: weight, lb'],
    ['windows[1]', 'windows, kind 2'],
    ['windows[2].mounting', 'windows, kind 3: mounting'],
    ['framing.depth_in', 'stud depth, in.'],
    ['wildfire_area', 'wildfire area'],
  ])('%s', (field, words) => {
    expect(fieldWordsWithUnit(field)).toBe(words);
    expect(fieldWords(field)).toBe(words.replace(/, (?:in\.|lb|mph)$/, ''));
  });

  it.each([
    [['wildfire_area'], 'wildfire area'],
    [
      ['windows[0].width_in', 'windows[0].height_in'],
      'windows, kind 1: width, in.; windows, kind 1: height, in.',
    ],
    [
      ['windows[0].width_in', 'windows[0].height_in', 'windows[1].width_in', 'windows[1].height_in'],
      'windows, kinds 1 and 2: width, in.; height, in.',
    ],
    // Kind 2 lacks only one of the two.
    [
      ['windows[0].width_in', 'windows[0].height_in', 'windows[1].width_in'],
      'windows, kind 1: width, in.; windows, kind 1: height, in.; windows, kind 2: width, in.',
    ],
    [['windows[0].width_in', 'exposure'], 'windows, kind 1: width, in.; wind exposure'],
  ])('%j together', (fields, words) => {
    expect(fieldsWordsWithUnit(fields)).toBe(words);
  });
});

describe('a value in words', () => {
  it.each([
    ['sheathing', 'osb', 'OSB'],
    ['framing.spacing_in', 16, '16 in. on center'],
    ['framing.depth_in', 5.5, '5.5 in. (2x6)'],
    ['framing.species_gravity', 0.42, '0.42'],
    ['cavity_insulation_r', 13, 'R-13'],
    ['wall_area_ft2', 1500, '1,500 sq ft'],
    ['budget_usd_per_ft2', 12.5, '$12.50 per square foot'],
    ['basic_wind_speed_mph', 115, '115 mph'],
    ['rough_opening_can_change', false, 'stay as they are'],
    ['windows[0].rough_opening_width_in', 37, '37 in.'],
    ['fire_separation_ft', null, 'left open'],
    ['a_key_of_later', 3, '3'],
  ] as const)('%s %s', (field, value, words) => {
    expect(valueWords(field, value)).toBe(words);
  });
});

describe('every field that may be assumed', () => {
  const place = { climate_zone: '5B' };
  const assumed = (given: object) =>
    resolveBrief(scenarioSchema.parse({ schema: 'cladwright-scenario/1', place, ...given })).assumptions.map(
      ({ field }) => field,
    );
  const fields = new Set([
    ...assumed({ windows: [{}], rough_opening_can_change: false }),
    ...assumed({ project: 'retrofit', framing: { material: 'steel' } }),
    'place.climate',
  ]);

  it.each([...fields])('%s has words without a mark, a unit or a path in them', (field) => {
    expect(fieldWords(field)).not.toMatch(/_|\.|\[|\b(?:ft2|usd|mph|lb|in)\b/);
  });
});
