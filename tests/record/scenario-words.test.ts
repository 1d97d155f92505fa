import { describe, expect, it } from 'vitest';
import { fieldsWords, fieldWords } from '../../src/record/sections/scenario-words.ts';

describe('what a field is called', () => {
  it.each([
    ['windows[0].weight_lb', 'windows, kind 1: weight, lb'],
    ['windows[2].mounting', 'windows, kind 3: mounting'],
    ['framing.depth_in', 'stud depth, in.'],
    ['wildfire_area', 'wildfire area'],
  ])('%s', (field, words) => {
    expect(fieldWords(field)).toBe(words);
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
    expect(fieldsWords(fields)).toBe(words);
  });
});
