import { describe, expect, it } from 'vitest';
import data from '../../src/conversation/data/wide-places.json' with { type: 'json' };
import { widePlace, widePlacesSchema } from '../../src/conversation/understanding/wide-places.ts';
import { Talk } from './talk.ts';

describe('a place that is too wide', () => {
  it('stands in a list that keeps to its form', () => {
    expect(widePlacesSchema.parse(data)).toEqual(data);
  });

  it.each([
    ['Alaska', 'state', 'Alaska'],
    ['northern Minnesota', 'state', 'Minnesota'],
    ['in western north carolina', 'state', 'North Carolina'],
    ['North Dakota', 'state', 'North Dakota'],
    ['the Midwest', 'region', 'Midwest'],
    ['southern Ontario', 'abroad', 'southern Ontario'],
    ['Hamilton, Canada', 'abroad', 'Hamilton, Canada'],
    ['Toronto', 'abroad', 'Toronto'],
  ])('is known by its name: "%s"', (text, kind, name) => {
    expect(widePlace(text)).toEqual({ kind, name });
  });

  it.each(['Boulder, CO', 'Madison Wisconsin', 'north bend', 'District of Columbia', 'Paris, TX'])(
    'is not "%s"',
    (text) => expect(widePlace(text)).toBeNull(),
  );

  it('is said to be that, and asked about again', () => {
    const state = new Talk().say('northern Minnesota');
    expect(state.last()).toContain('"Minnesota" is too wide');
    expect(state.prompt.label).toBe('Place');
    const abroad = new Talk().say('Toronto').last();
    expect(abroad).toContain('in the United States only');
    expect(abroad).toContain('6A: cold and moist');
  });

  it('says of a county found by a town in it which town that is, beside one called the same', () => {
    const places = [
      { state: 'ID', county: 'Boise', title: 'Boise County', zone: '6B', match: 'exact' },
      { state: 'ID', county: 'Ada', title: 'Ada County', zone: '5B', match: 'town', town: 'Boise' },
    ] as const;
    const asked = new Talk().event({ kind: 'places-found', text: 'Boise, Idaho', places });
    expect(asked.prompt.choices.slice(0, 2)).toEqual([
      'Boise County, ID (zone 6B)',
      'Ada County, ID (zone 5B), with the town of Boise',
    ]);
    expect(asked.say('2').state.answers.place).toEqual({ state: 'ID', county: 'Ada' });
  });

  it('offers what is called the same', () => {
    const places = [
      { state: 'NY', county: 'New York', title: 'New York County', zone: '4A', match: 'exact' },
    ] as const;
    const talk = new Talk().event({ kind: 'places-found', text: 'New York', places });
    expect(talk.state.answers.place).toBeUndefined();
    expect(talk.prompt.choices[0]).toContain('New York County, NY');
  });
});

describe('a place beside other words', () => {
  it.each(['boulder co, house from 1955, stone steps', 'old place, boulder colorado, lots of trees'])(
    'is looked up alone: "%s"',
    (line) => {
      const talk = new Talk().say(line);
      expect(talk.state.answers.place).toEqual({ state: 'CO', county: 'Boulder' });
      expect(talk.last(4)).toMatch(/Not understood: "(?:stone steps|lots of trees)"/);
    },
  );

  it('is looked up without its ZIP code, and a ZIP code alone is told what to give instead', () => {
    expect(new Talk().say('Boulder CO 80302').effects[0]).toEqual({
      kind: 'find-places',
      text: 'Boulder CO',
    });
    for (const line of ['80302', 'zip code 80302', '80302-1234']) {
      expect(new Talk().say(line).last()).toContain('I know no ZIP codes. Give the county and the state');
    }
  });
});
