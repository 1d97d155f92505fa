import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { buildRecord } from '../../src/record/build-record.ts';
import { DARK, LIGHT } from '../../src/record/page-style.ts';
import { recordHtml } from '../../src/record/record-html.ts';
import { CREATED, EMPTY_ADVICE, FALLBACK_ADVICE, FULL_ADVICE, SCENARIO } from './fixture-advice.ts';
import { HOSTILE_NAMES } from './hostile-names.ts';
import { checkHtml, type Element } from './html-check.ts';

const recordOf = (advice = FULL_ADVICE, scenario = SCENARIO) =>
  buildRecord({ scenario, advice, created: CREATED, revision: 1 });

function headings(elements: readonly Element[]): string[] {
  return elements.filter(({ tag }) => tag === 'h2').map(({ text }) => text);
}

describe('recordHtml of a full answer', () => {
  let html = '';
  let elements: Element[] = [];
  beforeAll(() => {
    html = recordHtml(recordOf());
    elements = checkHtml(html);
  });

  it('has every section', () => {
    expect(headings(elements)).toEqual([
      'Decision',
      'The situation',
      'Settle before ordering',
      'The wall, inside to outside',
      'Windows, bucks and flashing',
      'Fastening',
      'Temperature and dew point through the wall',
      'Condensate by month',
      'What it costs and weighs',
      'Figures',
      'Alternatives, and what each gives up',
      'Left out, and why',
      'What would change the answer',
      'Cautions',
      'What the rules said',
      'Sign-off',
      'Who has the last word',
      'Notes on the place',
      'Questions and answers',
      'Assumptions',
      'What mattered',
      'How it scores',
      'How temperature and dew point were worked out',
      'Heat and the energy code',
      'Fastening schedule',
      'Window buck and flashing',
      'Dead load',
      'What it asks of the crew',
      'All figures',
      'Alternatives in full',
      'Left out, in full',
      'Rule trace',
      'Rule packs',
    ]);
  });

  it('neither runs nor fetches anything', () => {
    expect(html).not.toMatch(/<script/i);
    expect(html).not.toMatch(/https?:|\/\/|@import|url\((?!#)|javascript:|\bon[a-z]+=/i);
    const fetching = ['src', 'srcset', 'data', 'action', 'poster', 'background', 'style'];
    for (const { attributes } of elements) {
      for (const name of fetching) expect(attributes).not.toHaveProperty(name);
      if (attributes.href !== undefined) expect(attributes.href).toMatch(/^#/);
    }
    expect(elements.filter(({ tag }) => ['link', 'iframe', 'img', 'object', 'form'].includes(tag))).toEqual(
      [],
    );
  });

  it('can be read aloud: language, one h1, no heading level skipped, tables with scoped headers and captions', () => {
    expect(elements[0]).toMatchObject({ tag: 'html', attributes: { lang: 'en' } });
    const levels = elements.flatMap(({ tag }) => (/^h[1-6]$/.test(tag) ? [Number(tag[1])] : []));
    expect(levels[0]).toBe(1);
    expect(levels.filter((level) => level === 1)).toHaveLength(1);
    for (const [i, level] of levels.entries()) {
      if (i > 0) expect(level - (levels[i - 1] ?? 0)).toBeLessThanOrEqual(1);
    }
    for (const { attributes } of elements.filter(({ tag }) => tag === 'th')) {
      expect(['col', 'row']).toContain(attributes.scope);
    }
    const count = (wanted: string) => elements.filter(({ tag }) => tag === wanted).length;
    expect(count('caption')).toBe(count('table'));
    expect(count('title')).toBe(1 + count('svg')); // the page's and each drawing's
    expect(count('svg')).toBe(5); // section, fastening pattern, two profiles, condensate
  });

  it('has unique ids, and every link and label points at one', () => {
    const ids = elements.flatMap(({ attributes }) => attributes.id ?? []);
    expect(new Set(ids).size).toBe(ids.length);
    for (const { attributes } of elements) {
      const targets = [
        attributes.href?.slice(1),
        ...(attributes['aria-labelledby']?.split(' ') ?? []),
        /^url\(#(.+)\)$/.exec(attributes.fill ?? '')?.[1],
      ];
      for (const target of targets) if (target !== undefined) expect(ids).toContain(target);
    }
  });

  it('has no heading without something under it', () => {
    expect(html).not.toMatch(/<\/h2>\s*(<\/section>|<h2)/);
    expect(html).not.toMatch(/<\/h3>\s*(<\/section>|<h[23])/);
  });

  it('shows the wall, the figures with their sources and the lines to sign', () => {
    expect(html).toContain('<svg class="wall"');
    expect(html).toContain('from memory, not verified');
    expect(html).toContain('ISO 13788:2012 clause 6');
    for (const role of ['Owner', 'Builder', 'Designer']) expect(html).toContain(`>${role}</th>`);
    expect(html).toContain(recordOf().digest);
  });
});

describe('recordHtml without a first choice', () => {
  it('has no empty section and says what comes closest', () => {
    const html = recordHtml(recordOf(EMPTY_ADVICE));
    expect(headings(checkHtml(html))).toEqual([
      'Decision',
      'The situation',
      'Settle before ordering',
      'Left out, and why',
      'Cautions',
      'Sign-off',
      'Who has the last word',
      'Notes on the place',
      'Questions and answers',
      'Assumptions',
      'What mattered',
      'Left out, in full',
      'Rule packs',
    ]);
    expect(html).toContain('None of the walls passes every rule');
    expect(html).toContain('What would admit it');
    expect(html).not.toContain('<svg');
  });

  it('shows the fallback in full, and that it is one', () => {
    const html = recordHtml(recordOf(FALLBACK_ADVICE));
    expect(headings(checkHtml(html))).toContain('Fastening schedule (of the fallback)');
    expect(html).toContain('Fallback: Stucco-texture fibre-cement panels');
    expect(html).toContain('<svg');
  });
});

describe('recordHtml of hostile text', () => {
  const advice = (text: string) => {
    const copy = structuredClone(FULL_ADVICE);
    copy.site.place = text;
    copy.answers = [{ field: text, question: text, answer: text }];
    copy.cautions = [{ text, kind: 'fire', rule: text, remedy: text }];
    copy.excluded = [{ title: text, because: [{ rule: text, citation: text, text, remedy: text }] }];
    const first = copy.ranked[0];
    if (first) {
      first.title = text;
      first.layers = first.layers.map((layer) => ({ ...layer, label: text, role: text, provenance: text }));
    }
    return copy;
  };
  const titleOf = (html: string) => checkHtml(html).find(({ tag }) => tag === 'title')?.text;

  it.each(HOSTILE_NAMES)('stays text: %j', (name) => {
    const clean = recordHtml(recordOf(advice('plain'), { ...SCENARIO, name: 'plain' }));
    const html = recordHtml(recordOf(advice(name), { ...SCENARIO, name }));
    const tags = (page: string) => checkHtml(page).map(({ tag }) => tag);
    // The patterns of the drawing depend on the roles, which were overwritten alike.
    expect(tags(html)).toEqual(tags(clean));
    expect(html).not.toMatch(/<script/i);
    expect(html).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u202a-\u202e\u2066-\u2069]/);
  });

  it('is well-formed for any name', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', minLength: 1, maxLength: 60 }), (name) => {
        expect(titleOf(recordHtml(recordOf(FULL_ADVICE, { ...SCENARIO, name })))).toMatch(
          /^Decision record: /,
        );
      }),
      { numRuns: 60 },
    );
  });
});

describe('the colours of the page', () => {
  // WCAG 2.2: relative luminance and contrast ratio as defined in its glossary; 4.5 to 1 for text (1.4.3).
  const luminance = (hex: string) => {
    const [r = 0, g = 0, b = 0] = [1, 3, 5].map((at) => {
      const c = Number.parseInt(hex.slice(at, at + 2), 16) / 255;
      return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
    });
    return 0.2126 * r + 0.7152 * g + 0.0722 * b;
  };
  const contrast = (a: string, b: string) => {
    const [low = 0, high = 0] = [luminance(a), luminance(b)].sort((x, y) => x - y);
    return (high + 0.05) / (low + 0.05);
  };

  it('measures contrast as published: black on white is 21 to 1', () => {
    expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 6);
  });

  it.each([
    ['light', LIGHT],
    ['dark', DARK],
  ])('are readable in the %s page', (_, palette) => {
    for (const text of [palette.ink, palette.quiet, palette.accent]) {
      expect(contrast(text, palette.ground)).toBeGreaterThanOrEqual(4.5);
      expect(contrast(text, palette.panel)).toBeGreaterThanOrEqual(4.5);
    }
  });
});
