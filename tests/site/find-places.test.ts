import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { countiesOf, loadCounties } from '../../src/site/county-data.ts';
import { findCounty } from '../../src/site/county-lookup.ts';
import { findPlaces } from '../../src/site/find-places.ts';

const shown = async (text: string) =>
  (await findPlaces(text)).map(({ state, county, match }) => `${county} ${state} ${match}`);

describe('free text for a place', () => {
  it.each([
    ['boulder co', 'Boulder CO exact'],
    ['Boulder, CO', 'Boulder CO exact'],
    ['BOULDER COUNTY, COLORADO', 'Boulder CO exact'],
    ['Boulder Co., Colo.', 'Boulder CO exact'],
    ['Colorado, Boulder', 'Boulder CO exact'],
    ["we're in boulder colorado, usa", 'Boulder CO exact'],
    ['my house is in boulder county co', 'Boulder CO exact'],
    ['jefferson co', 'Jefferson CO exact'],
    ['St. Louis county MO', 'St. Louis County MO exact'],
    ['saint louis city missouri', 'St. Louis city MO exact'],
    ['city of st louis, mo', 'St. Louis city MO exact'],
    ['st louis mn', 'St. Louis MN exact'],
    ['dona ana nm', 'Doña Ana NM exact'],
    ['Doña Ana County', 'Doña Ana NM exact'],
    ['orleans parish louisiana', 'Orleans LA exact'],
    ['la salle parish', 'La Salle LA exact'],
    ['franklin parish', 'Franklin LA exact'],
    ['lasalle il', 'LaSalle IL exact'],
    ['de kalb county, ga', 'DeKalb GA exact'],
    ['la porte in', 'LaPorte IN exact'],
    ['marion county in', 'Marion IN exact'],
    ['prince georges county md', "Prince George's MD exact"],
    ["o'brien iowa", "O'Brien IA exact"],
    ['lewis & clark mt', 'Lewis and Clark MT exact'],
    ['virginia beach', 'Virginia Beach VA exact'],
    ['james city county virginia', 'James City VA exact'],
    ['carson city nevada', 'Carson City NV exact'],
    ['washington dc', 'District of Columbia DC exact'],
    ['new york new york', 'New York NY exact'],
    ['texas county ok', 'Texas OK exact'],
    ['oregon county mo', 'Oregon MO exact'],
    ['wyoming, west virginia', 'Wyoming WV exact'],
    ['fairbanks north star borough alaska', 'Fairbanks North Star AK exact'],
    ['juneau city and borough ak', 'Juneau AK exact'],
    ['nome census area', 'Nome AK exact'],
    ['brooklyn ny', 'Kings NY exact'],
    ['dade county florida', 'Miami-Dade FL exact'],
    ['shannon county sd', 'Oglala Lakota SD exact'],
    ['  hennepin   ,  MN ', 'Hennepin MN exact'],
    ['duluth minnesota', 'St. Louis MN town'],
    ['bozeman county mt', 'Gallatin MT town'],
    ['seattle', 'King WA town'],
    ['iowa city', 'Johnson IA town'],
    ['charleston west virginia', 'Kanawha WV town'],
    ['kansas city mo', 'Jackson MO town'],
    ['hennipen mn', 'Hennepin MN close'],
    ['okanagan county wa', 'Okanogan WA close'],
    ['bolder colorado', 'Boulder CO close'],
    ['cuyahogga', 'Cuyahoga OH close'],
    ['missoulla mt', 'Missoula MT close'],
    ['boulder tx', 'Boulder CO close'],
    ['bolder colarado', 'Boulder CO close'],
    ['stearns county minnesotta', 'Stearns MN close'],
    ['duluth minesota', 'St. Louis MN town'],
  ])('%s → %s', async (text, expected) => {
    expect((await shown(text))[0]).toBe(expected);
  });

  it('gives both where two fit, the county first', async () => {
    expect(await shown('baltimore md')).toEqual(['Baltimore County MD exact', 'Baltimore city MD exact']);
    expect(await shown('baltimore county md')).toEqual(['Baltimore County MD exact']);
    expect(await shown('roanoke city va')).toEqual(['Roanoke city VA exact']);
    expect(await shown('fairfx va')).toHaveLength(2);
  });
  it('gives at most six, each once', async () => {
    const found = await shown('washington');
    expect(found).toHaveLength(6);
    expect(new Set(found).size).toBe(6);
  });
  it('keeps to the state that was named when it has the name', async () => {
    expect(await shown('orange county california')).toEqual(['Orange CA exact']);
  });
  it.each(['', '   ', '?!', 'xyzzyxyzzy', 'i do not know'])('gives nothing for %j', async (text) => {
    expect(await findPlaces(text)).toEqual([]);
  });
  it('takes any text without failing', async () => {
    await fc.assert(
      fc.asyncProperty(fc.string({ unit: 'grapheme', maxLength: 60 }), async (text) => {
        expect((await findPlaces(text)).length).toBeLessThanOrEqual(6);
      }),
      { numRuns: 40 },
    );
  });
});

describe('what a county is called', () => {
  it.each([
    ['Duluth, MN', 'St. Louis County'],
    ['New Orleans, LA', 'Orleans Parish'],
    ['Fairbanks, AK', 'Fairbanks North Star Borough'],
    ['Bethel, AK', 'Bethel Census Area'],
    ['Carson City, NV', 'Carson City'],
    ['Washington, DC', 'District of Columbia'],
  ])('says of %s what kind it is: %s', async (text, title) => {
    expect((await findPlaces(text))[0]?.title).toBe(title);
  });
});

describe('every county of the table', () => {
  it('is found again from the very text that a suggestion shows, and from a lower-case one with its kind', async () => {
    const data = await loadCounties();
    for (const state of ['VA', 'MD', 'MO', 'LA', 'AK', 'NV', 'NM', 'IN', 'DC']) {
      for (const county of countiesOf(data, state)) {
        const kind = county.kind === 'district' ? '' : ` ${county.kind}`;
        const found = await findCounty(state, `${county.name}${kind}`.toLowerCase());
        expect(found.county).toEqual(county);
        const [first] = await findPlaces(`${county.name}${kind}, ${state}`);
        expect(first?.match).toBe('exact');
        expect((await findCounty(state, first?.county ?? '')).county).toEqual(county);
      }
    }
  });
});
