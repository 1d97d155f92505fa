import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { ProfileSeason } from '../../src/advice/wall-physics-schema.ts';
import { buildRecord } from '../../src/record/build-record.ts';
import { condensateChartSvg } from '../../src/record/condensate-chart-svg.ts';
import { profileChart } from '../../src/record/profile-chart.ts';
import { profileChartSvg } from '../../src/record/profile-chart-svg.ts';
import { recordHtml } from '../../src/record/record-html.ts';
import { recordMarkdown } from '../../src/record/record-markdown.ts';
import { recordText } from '../../src/record/record-text.ts';
import { SAMPLE_MONTHS, SAMPLE_PHYSICS, SAMPLE_WINTER } from '../advice/sample-physics.ts';
import { CREATED, FULL_ADVICE, SCENARIO } from './fixture-advice.ts';
import { checkHtml } from './html-check.ts';

/** Seven layers as thick as those of the sample profile could be. */
const LAYERS = [0.5, 5.5, 0.5, 0.02, 3, 0.375, 0.875].map((thickness_in, i) => ({
  label: `layer ${i + 1}`,
  thickness_in,
  r: 1,
  role: 'insulation',
  provenance: 'verified',
}));

const wellFormed = (svg: string) => checkHtml(`<!DOCTYPE html>\n<html>${svg}</html>`);
const pointsOf = (svg: string, kind: string) =>
  (svg.match(new RegExp(`<polyline class="${kind}" points="([^"]*)"`))?.[1] ?? '')
    .split(' ')
    .filter((pair) => pair !== '')
    .map((pair) => {
      const [x = Number.NaN, y = Number.NaN] = pair.split(',').map(Number);
      return { x, y };
    });

describe('the chart of a profile', () => {
  const drawn = {
    kind: 'profile',
    id: 'winter',
    title: 'Coldest month',
    season: SAMPLE_WINTER,
    layers: LAYERS,
  } as const;
  const svg = profileChartSvg(drawn) ?? '';

  it('is well formed and says in words what it shows', () => {
    const elements = wellFormed(svg);
    expect(elements.find(({ tag }) => tag === 'svg')?.attributes).toMatchObject({
      role: 'img',
      'aria-labelledby': 'winter-title winter-desc',
    });
    expect(elements.find(({ tag }) => tag === 'title')?.text).toBe('Coldest month');
    expect(elements.find(({ tag }) => tag === 'desc')?.text).toContain('They meet where a ring is drawn');
  });

  it('draws temperature, stud and dew point from the indoor to the outdoor air', () => {
    for (const kind of ['temperature', 'stud', 'dew-point']) {
      const points = pointsOf(svg, kind);
      // Indoor air, seven layers between eight planes, outdoor air.
      expect(points).toHaveLength(10);
      const xs = points.map(({ x }) => x);
      expect(xs).toEqual(xs.toSorted((a, b) => a - b));
    }
    const ys = pointsOf(svg, 'temperature').map(({ y }) => y);
    expect(ys).toEqual(ys.toSorted((a, b) => a - b));
  });

  it('gives the layers their thickness to scale and numbers all but sheets', () => {
    const chart = profileChart(SAMPLE_WINTER, LAYERS);
    if (!chart) throw new Error('no chart');
    const total = LAYERS.reduce((sum, { thickness_in }) => sum + thickness_in, 0);
    const first = chart.boundaries[0] ?? 0;
    const perInch = ((chart.boundaries.at(-1) ?? 0) - first) / total;
    let passed = 0;
    for (const [i, { thickness_in }] of LAYERS.entries()) {
      passed += thickness_in;
      expect(chart.boundaries[i + 1]).toBeCloseTo(first + passed * perInch, 6);
    }
    expect(chart.keys.map(({ key }) => key)).toEqual([1, 2, 3, 5, 6, 7]);
  });

  it('puts the figures where the scale says', () => {
    const chart = profileChart(SAMPLE_WINTER, LAYERS);
    const yOf = (temp_f: number) => chart?.ticks.find((tick) => tick.temp_f === temp_f)?.y ?? Number.NaN;
    expect(chart?.temperature.at(-1)?.y).toBeCloseTo(yOf(10), 6);
    expect(chart?.temperature[0]?.y).toBeCloseTo(yOf(70), 6);
  });

  it('rings the one plane where temperature and dew point meet', () => {
    expect(svg.match(/<circle class="meeting" cx="[\d.]+" cy="[\d.]+" r="6"\/>\n/g)).toHaveLength(1);
    const chart = profileChart(SAMPLE_WINTER, LAYERS);
    expect(chart?.meeting).toEqual([chart?.temperature[3]]);
  });

  it('leaves out what is not known: the dew point, the stud', () => {
    const season: ProfileSeason = {
      ...SAMPLE_WINTER,
      stud: null,
      cavity: SAMPLE_WINTER.cavity.map((plane) => ({ ...plane, dew_point_f: null })),
    };
    const bare = profileChartSvg({ ...drawn, season }) ?? '';
    wellFormed(bare);
    expect(bare).toContain('class="temperature"');
    expect(bare).not.toMatch(/class="(stud|dew-point|meeting)"/);
  });

  it('spreads the planes evenly where layers and planes do not match, and draws nothing without planes', () => {
    const chart = profileChart(SAMPLE_WINTER, LAYERS.slice(0, 2));
    const gaps = (chart?.boundaries ?? []).slice(1).map((x, i) => x - (chart?.boundaries[i] ?? 0));
    for (const gap of gaps) expect(gap).toBeCloseTo(gaps[0] ?? 0, 6);
    expect(profileChartSvg({ ...drawn, season: { ...SAMPLE_WINTER, cavity: [] } })).toBeNull();
  });

  it('stays inside its frame, whatever the weather', () => {
    const temp = fc.double({ min: -50, max: 120, noNaN: true });
    fc.assert(
      fc.property(temp, temp, (indoor, outdoor) => {
        const season: ProfileSeason = {
          ...SAMPLE_WINTER,
          indoor_temp_f: indoor,
          outdoor_temp_f: outdoor,
          indoor_dew_point_f: indoor - 30,
          stud: null,
          cavity: SAMPLE_WINTER.cavity.map((plane, i, all) => {
            const temp_f = indoor + ((outdoor - indoor) * (i + 1)) / all.length;
            return { ...plane, temp_f, dew_point_f: temp_f - 30 };
          }),
        };
        const chart = profileChart(season, LAYERS);
        if (!chart) throw new Error('no chart');
        for (const { x, y } of [...chart.temperature, ...(chart.dewPoint ?? [])]) {
          expect(x).toBeGreaterThanOrEqual(chart.left);
          expect(x).toBeLessThanOrEqual(chart.right);
          expect(y).toBeGreaterThanOrEqual(chart.top - 1e-9);
          expect(y).toBeLessThanOrEqual(chart.bottom + 1e-9);
        }
        expect(chart.ticks.length).toBeGreaterThanOrEqual(2);
        expect(chart.ticks.length).toBeLessThanOrEqual(9);
      }),
    );
  });
});

describe('the chart of the condensate', () => {
  const drawn = { kind: 'condensate', id: 'water', title: 'Water held', months: SAMPLE_MONTHS } as const;
  const svg = condensateChartSvg(drawn) ?? '';
  const bars = [
    ...svg.matchAll(/<rect class="bar" x="[\d.]+" y="([\d.]+)" width="[\d.]+" height="([\d.]+)"/g),
  ];

  it('is well formed and says in words what it shows', () => {
    const elements = wellFormed(svg);
    const text = elements.find(({ tag }) => tag === 'desc')?.text ?? '';
    expect(text).toContain('from November on');
    expect(text).toContain('The most is 140.0 g/m² in February; nothing is left after twelve months.');
    const names = elements.filter(({ tag }) => tag === 'text').map((element) => element.text);
    expect(names.slice(-13, -1)).toEqual('Nov Dec Jan Feb Mar Apr May Jun Jul Aug Sep Oct'.split(' '));
  });

  it('has a bar for each month that holds water, as high as the water', () => {
    const heights = bars.map(([, , height]) => Number(height));
    expect(heights).toHaveLength(6);
    for (const [i, held] of [10, 50, 110, 140, 120, 30].entries())
      expect((heights[i] ?? 0) / (heights[3] ?? 1)).toBeCloseTo(held / 140, 2);
    // All stand on the same floor.
    expect(new Set(bars.map(([, y, height]) => (Number(y) + Number(height)).toFixed(1))).size).toBe(1);
  });

  it('says what is left when the wall does not dry', () => {
    const months = SAMPLE_MONTHS.map((month) => ({ ...month, accumulated_g_m2: 20 }));
    expect(condensateChartSvg({ ...drawn, months })).toContain('20.0 g/m² are left after twelve months');
  });

  it('draws nothing for a wall that stays dry', () => {
    const months = SAMPLE_MONTHS.map((month) => ({ ...month, accumulated_g_m2: 0 }));
    expect(condensateChartSvg({ ...drawn, months })).toBeNull();
  });
});

describe('heat and moisture in the record', () => {
  const record = buildRecord({ scenario: SCENARIO, advice: FULL_ADVICE, created: CREATED, revision: 1 });
  const html = recordHtml(record);
  const pages = [html, recordMarkdown(record), recordText(record, 100)];

  it('stands in every form: energy route, parts of U in both units, profile, months, materials', () => {
    for (const page of pages) {
      const text = page.replace(/\s+/g, ' ');
      expect(text).toContain('meets the energy code in zone 5B by its U-factor and by an R-value option');
      // 0.0423 Btu/(h·ft²·°F) is 0.240 W/(m²·K) (NIST SP 811: 5.678263).
      expect(text).toMatch(/Whole wall\D+0\.0423\D+0\.240/);
      expect(text).toMatch(/Furring\D+0\.0000/);
      expect(text).toMatch(/Coldest month, January: 70 °F indoors, 10 °F outdoors/);
      expect(text).toMatch(/February\D+30\.0\D+140\.0/);
      expect(text).toMatch(/gypsum board\D+0\.16\D+0\.901\D+800\D+49\.94/);
      expect(text).toContain('all of it dries again within the year');
      const words = text.replace(/<[^>]+>/g, ' ');
      expect(words).toMatch(/The U-factor limit is\W+from memory, not verified/);
      expect(words).toMatch(/The R-value option is\W+R-20 \+ R-5 continuous: two sources agree/);
    }
  });

  it('has a table for every chart', () => {
    checkHtml(html);
    expect(html.match(/<svg class="chart"/g)).toHaveLength(3);
    expect(html.match(/Outer face of/g)).toHaveLength(2);
    const ids = [...html.matchAll(/ id="([^"]+)"/g)].map(([, id]) => id);
    expect(new Set(ids).size).toBe(ids.length);
  });

  it('says what is not known instead of drawing it', () => {
    const [first, ...others] = FULL_ADVICE.ranked;
    if (!first) throw new Error('no first choice');
    const unknown = {
      ...first,
      temperature_profile: { winter: null, summer: null, notes: ['The months are not known.'] },
      condensate_by_month: null,
      condensate_planes: [],
      condensate_note: 'The interior vapour retarder is not known.',
      energy: { ...SAMPLE_PHYSICS.energy, nearest_compliant_thickness_in: null, u_margin_percent: -8 },
    };
    const page = recordHtml(
      buildRecord({
        scenario: SCENARIO,
        advice: { ...FULL_ADVICE, ranked: [unknown, ...others] },
        created: CREATED,
        revision: 1,
      }),
    );
    checkHtml(page);
    expect(page).not.toContain('<svg class="chart"');
    for (const words of [
      'The months are not known.',
      'The interior vapour retarder is not known.',
      'no market thickness does',
      '8 % above the 0.045 allowed',
    ])
      expect(page).toContain(words);
  });
});
