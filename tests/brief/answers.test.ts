import { describe, expect, it } from 'vitest';
import { answersOf } from '../../src/brief/answers.ts';
import { COMPLETE, scenario } from './given.ts';

const said = (given: object) =>
  new Map(answersOf(scenario(given)).map(({ field, answer }) => [field, answer]));

describe('what the user said, in words', () => {
  it('leaves out what was not said and what is not known', () => {
    const answers = said({
      schema: 'cladwright-scenario/1',
      place: { state: 'CO', county: 'Boulder' },
      sheathing: 'unknown',
      wall_area_ft2: 900,
    });
    expect([...answers.keys()]).toEqual(['place', 'wall_area_ft2']);
  });

  it('gives figures their units, yes and no for true and false, and plain words for names', () => {
    const answers = said({ ...COMPLETE, interior_vapour_retarder: 'class-iii', wildfire_area: true });
    expect(answers.get('wall_area_ft2')).toBe('900 ft²');
    expect(answers.get('max_added_thickness_in')).toBe('5 in.');
    expect(answers.get('budget_usd_per_ft2')).toMatch(/\$.*31|31.*\$/);
    expect(answers.get('wildfire_area')).toBe('yes');
    expect(answers.get('rough_opening_can_change')).toBe('yes');
    expect(answers.get('interior_vapour_retarder')).toMatch(/^class iii$/i);
  });

  it('tells a crew and several windows of one size so that the words parse', () => {
    const answers = said({ ...COMPLETE, crew_skill: 'exterior-insulation-experienced' });
    expect(answers.get('crew_skill')).toBe('a crew experienced with exterior insulation');
    const windows = [{ count: 3, width_in: 36, height_in: 48, operation: 'hung' }];
    expect(said({ ...COMPLETE, windows }).get('windows')).toBe('3 of 36 x 48 in. hung');
  });

  it('keeps a zero, and says "none" for an empty list of windows', () => {
    const answers = said({ ...COMPLETE, windows: [], fire_separation_ft: 0 });
    expect(answers.get('windows')).toBe('none');
    expect(answers.get('fire_separation_ft')).toBe('0 ft');
  });

  it('asks a question beside every answer, one for each field given', () => {
    const answers = answersOf(scenario(COMPLETE));
    const fields = Object.keys(COMPLETE).filter((key) => key !== 'schema' && key !== 'name');
    expect(answers.map(({ field }) => field).sort()).toEqual(fields.sort());
    for (const { question } of answers) expect(question).toMatch(/\?$/);
  });
});
