import stringWidth from 'string-width';
import { describe, expect, it } from 'vitest';
import type { TemperatureProfile } from '../../src/advice/wall-physics-schema.ts';
import { blocksToText } from '../../src/conversation/blocks.ts';
import { physicsBlocks, seasonsToDraw } from '../../src/conversation/tell-physics.ts';
import { SAMPLE_PHYSICS, SAMPLE_SUMMER, SAMPLE_WINTER } from '../advice/sample-physics.ts';
import { sampleWall } from './sample-advice.ts';

const wall = sampleWall(1, 'A wall');
const told = (change: object = {}, width = 400, ascii = false) =>
  blocksToText(physicsBlocks({ ...wall, ...change }), width, { ascii });

describe('telling heat and moisture', () => {
  it('says the energy route and the parts of the U-factor', () => {
    const text = told();
    expect(text).toContain('meets the energy code in zone 5B by its U-factor and by an R-value option.');
    expect(text).toContain(
      '0.0398 clear wall, 0.0012 for the fasteners, nothing for furring, 0.0013 for the window bucks: 0.0423 for the whole wall',
    );
    expect(text).toContain('25 % framing, air films R-0.68 and R-0.17, cavity R-21 as labelled');
    expect(text).toContain('joints offset');
  });

  it('names steel brackets, a pressed batt, steel studs and aligned joints where there are some', () => {
    const { thermal } = SAMPLE_PHYSICS;
    const text = told({
      thermal: {
        ...thermal,
        delta_u_bucks: 0,
        delta_u_steel_brackets: 0.0053,
        air_gap: { level: 1, joints: 'aligned', delta_u: 0.0004, delta_u_if_aligned: 0.0004 },
        assumptions: {
          ...thermal.assumptions,
          framing_fraction: null,
          cavity_labelled_r: 19,
          cavity_installed_r: 18,
        },
      },
    });
    for (const words of [
      '0.0053 for the steel brackets',
      'R-18 for a label of R-19',
      'steel studs and cavity insulation together',
      'ISO 6946 would add 0.0004 (not counted)',
    ])
      expect(text).toContain(words);
  });

  it('draws the profile with its legend, and what is behind a stud', () => {
    const text = told();
    expect(text).toContain('Coldest month, January: 70 °F indoors, 10 °F outdoors');
    expect(text).toContain('X where they meet: water can form');
    expect(text).toMatch(/cavity fill +31\.0 +31\.0 │ +X─+ +│/);
    expect(text).toContain('The inner face of the sheathing is 31 °F there and 31 °F at a stud.');
  });

  it('says when the insulation is taken at its winter temperature', () => {
    expect(told({ insulation: { ...wall.insulation, r: 13.5 } })).toContain(
      'taken at its own temperature: R-12 against its rated R-13.5',
    );
    expect(told({ insulation: { ...wall.insulation, r: 12 } })).not.toContain('own temperature');
  });

  it('draws the condensate, and says where it sits', () => {
    const text = told();
    expect(text).toMatch(/Feb +\+30\.0 +140\.0 │█+/);
    expect(text).toContain('Water sits between the cavity insulation and the sheathing (140.0 g/m²).');
  });

  it('draws no bars for a wall that stays dry, and says why there are none where it is not known', () => {
    const dry = { condensate_by_month: null, condensate_planes: [], condensate_note: 'Not known.' };
    expect(told(dry)).not.toContain('█');
    expect(told(dry)).toContain('Not known.');
  });

  it.each([80, 76, 60, 40, 24])('keeps to %d columns, in ASCII too', (width) => {
    for (const ascii of [false, true]) {
      const text = told({}, width, ascii);
      for (const line of text.split('\n')) expect(stringWidth(line)).toBeLessThanOrEqual(width);
      if (ascii) expect(text).toMatch(/^[\x20-\x7e\n]*$/);
      // A chart only where it fits; its figures always.
      expect(text.includes(ascii ? '#' : '█')).toBe(width >= 60);
      expect(text).toContain('140.0');
    }
  });
});

describe('which seasons are drawn', () => {
  const profile: TemperatureProfile = { winter: SAMPLE_WINTER, summer: SAMPLE_SUMMER, notes: [] };

  it('winter alone at a cold place, summer too where heat and vapour go inward', () => {
    expect(seasonsToDraw(profile)).toEqual([SAMPLE_WINTER, SAMPLE_SUMMER]);
    const dry = { ...SAMPLE_SUMMER, outdoor_dew_point_f: 40 };
    expect(seasonsToDraw({ ...profile, summer: dry })).toEqual([SAMPLE_WINTER]);
    const mild = { ...SAMPLE_SUMMER, outdoor_temp_f: 70 };
    expect(seasonsToDraw({ ...profile, summer: mild })).toEqual([SAMPLE_WINTER]);
  });

  it('summer alone where there is no winter to speak of', () => {
    const winter = { ...SAMPLE_WINTER, outdoor_temp_f: 68 };
    expect(seasonsToDraw({ ...profile, winter })).toEqual([SAMPLE_SUMMER]);
  });

  it('none without the months of the site: the note says so', () => {
    expect(seasonsToDraw({ winter: null, summer: null, notes: [] })).toEqual([]);
    const text = blocksToText(
      physicsBlocks({
        ...wall,
        temperature_profile: { winter: null, summer: null, notes: ['The months are not known.'] },
      }),
      80,
    );
    expect(text).toContain('The months are not known.');
  });
});
