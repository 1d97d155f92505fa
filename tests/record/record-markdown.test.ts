import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { buildRecord } from '../../src/record/build-record.ts';
import { cleanText } from '../../src/record/clean-text.ts';
import { escapeMarkdown, recordMarkdown } from '../../src/record/record-markdown.ts';
import { CREATED, EMPTY_ADVICE, FALLBACK_ADVICE, FULL_ADVICE, SCENARIO } from './fixture-advice.ts';
import { HOSTILE_NAMES } from './hostile-names.ts';

const markdownOf = (advice = FULL_ADVICE, scenario = SCENARIO) =>
  recordMarkdown(buildRecord({ scenario, advice, created: CREATED, revision: 2 }));

const headings = (markdown: string) => [...markdown.matchAll(/^## (.+)$/gm)].map((m) => m[1]);

describe('recordMarkdown of a full answer', () => {
  const markdown = markdownOf();

  it('has every section in reading order', () => {
    expect(markdown).toMatch(/^# Decision record: Quarry Lane duplex, north wall\n/);
    expect(headings(markdown)).toEqual([
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

  it.each([
    ['status and date', '- **Status:** proposed, not yet accepted\n- **Date:** 2026-03-14, 15:09 UTC'],
    ['the revision', '- **Revision:** 2'],
    ['the place', '- **Place:** Boulder County, CO'],
    ['the windows', '6: triple-glazed, flanged, casement, 36 x 60 in., 130 lb each'],
    ['an answer', '| What should the face be? | true cement stucco |'],
    [
      'an assumption that could change the answer, first',
      '| --- | --- | --- | --- |\n| interior vapour retarder | not known |',
    ],
    ['the priorities, heaviest first', '| ---: |\n| safety against moisture | 2 |\n| low cost | 1 |'],
    ['the first choice', '**First choice: Three-coat cement stucco on a drainage mat'],
    ['a reason with its rule', '(energy.wall-maximum-u)'],
    ['what it gives up', '### What it gives up\n\n- Slow: three coats'],
    ['what is undecided', '### Still open: what no rule could decide'],
    [
      'a layer',
      '| 8 | three-coat cement plaster, 7/8 in. | finish | 7/8 | 0.00 | from memory, not verified |',
    ],
    ['the spacing', '8 in. along each stud, studs 16 in. on center'],
    ['the code table', 'permitted by the code table, insulation up to 3.2 in.'],
    ['the flashing sequence', '1. Slope the sill of the buck outward.\n2. Lap the membrane'],
    ['the cost', '$29 per ft² (from $24 to $37)'],
    // 1,800 ft² at 29, 24 and 37 dollars
    ['the cost of all of it', 'about $52,200 (from $43,200 to $66,600)'],
    ['the weight', '12.1 psf'],
    ['the crew', '- **Crew needed:** a plasterer with lath-and-plaster experience'],
    ['a figure that is not known', '| Peak condensate in the year | not known |'],
    [
      'why an alternative is not first',
      'it scores 0.74, the first choice 0.81; it is behind in moisture safety',
    ],
    ['what would admit an excluded wall', '**What would admit it:** Look what is behind the lining'],
    ['what would change the answer', '**If the budget falls to $20 a square foot:** the panels come first.'],
    [
      'the undecided rule on top of the trace',
      '| --- | --- | --- | --- |\n| vapour.class-i-both-sides | undecided |',
    ],
    ['a remembered citation', 'table of maximum U-factors (from memory, not verified)'],
    ['a rule pack with its digest', `| drying | 1.2.0 | ${'b'.repeat(64)} |`],
    ['a line to sign', '| Owner | must sign: pays for it and lives with it |  |  |  |'],
    ['who decides', 'The building official has the last word.'],
  ])('says %s', (_, text) => {
    expect(markdown).toContain(text);
  });

  it('tells of an alternative only what sets it apart from the first choice', () => {
    const second = markdown.slice(markdown.indexOf('### Choice 2'), markdown.indexOf('### Choice 3'));
    expect(second).toContain('**For it:** Two thirds of the price. (budget.within-budget)');
    expect(second).toContain('**Caution:** Silica dust when cutting. (safety.fibre-cement-dust)');
    expect(second).not.toContain('energy.wall-maximum-u');
    expect(second).not.toContain('stucco.cold-weather');
  });

  it('puts walls that are out for the same reason together', () => {
    expect(markdown).toContain(
      '### 2 for the same reason\n\n- **Left out:** Wood siding on furring.\n- **Left out:** Adhered veneer on a drainage mat.\n- **Because:** Only true cement stucco was asked for. (buildability.finish-wanted; The wish as it was given)\n- **What would admit it:** Say that any finish will do.\n',
    );
  });

  it('lists rules that found nothing apart from those that spoke', () => {
    const [spoke = '', silent = ''] = markdown
      .slice(markdown.indexOf('## Rule trace'), markdown.indexOf('## Rule packs'))
      .split('| Rule | About | Citation |');
    expect(spoke).toContain('| energy.wall-maximum-u | passes | U 0.041 against 0.060. |');
    expect(spoke).not.toContain('structure.soft-foam');
    expect(silent).toContain(
      '| structure.soft-foam | Foam softer than the table supposes | Building code 2018, footnote d of the furring table |',
    );
  });

  it('puts the cautions about people and structure before those about money', () => {
    const cautions = markdown.slice(
      markdown.indexOf('## Cautions'),
      markdown.indexOf('## What the rules said'),
    );
    const order = [...cautions.matchAll(/^### (.+)$/gm)].map((m) => m[1]);
    expect(order).toEqual(['Who decides', 'Structure', 'Health', 'Work on site', 'Cost', 'Practice']);
  });

  it('has no heading without something under it', () => {
    expect(markdown).not.toMatch(/^#+ .+\n+(?:##? |$(?![\s\S]))/m);
    for (const [, level, next] of markdown.matchAll(/^(#+) .+\n\n(#*)/gm)) {
      if (next !== '') expect(next?.length).toBeGreaterThan(level?.length ?? 0);
    }
  });
});

describe('recordMarkdown of other answers', () => {
  it('says that nothing passes, what comes closest and what would admit it', () => {
    const markdown = markdownOf(EMPTY_ADVICE);
    expect(markdown).toContain('**None of the walls passes every rule.');
    expect(markdown).toMatch(
      /### What comes closest\n\n- \*\*One-coat stucco[^\n]+\n\n### What would admit it\n\n- Look what/,
    );
    expect(headings(markdown)).not.toContain('Fastening schedule');
    expect(headings(markdown)).not.toContain('Alternatives, and what each gives up');
  });

  it('describes the fallback, and calls it one', () => {
    const markdown = markdownOf(FALLBACK_ADVICE);
    expect(markdown).toContain('**Fallback: Stucco-texture fibre-cement panels on furring');
    expect(headings(markdown)).toContain('The wall, inside to outside (of the fallback)');
  });

  it('stands with next to nothing said', () => {
    const scenario = { schema: 'cladwright-scenario/1', place: { climate_zone: '5B' } } as const;
    const advice = {
      ...EMPTY_ADVICE,
      answers: [],
      assumptions: [
        {
          field: 'priorities',
          value: 'equal, carbon at half weight',
          why: 'Not said.',
          could_change_answer: false,
        },
      ],
      excluded: [],
      cautions: [],
      rules: { packs: [] },
    };
    const markdown = markdownOf(advice, scenario);
    expect(markdown).toContain('No weights were given. Taken as: equal, carbon at half weight.');
    expect(headings(markdown)).toEqual([
      'Decision',
      'The situation',
      'Sign-off',
      'Who has the last word',
      'Notes on the place',
      'Assumptions',
      'What mattered',
    ]);
  });

  it('says that a limit is from memory though its source is cut short', () => {
    const advice = structuredClone(FULL_ADVICE);
    advice.ranked[0]?.figures.push({
      id: 'max-u-factor',
      what: 'highest U-factor allowed',
      value: 0.045,
      unit: 'Btu/(h·ft²·°F)',
      method: 'code table',
      source: [
        'Energy code 2021 residential (house code 2021 chapter 11), Table R402.1.2 (N1102.1.2)',
        'From memory, no document seen',
      ],
      note: 'from memory, not verified',
    });
    expect(markdownOf(advice)).toMatch(
      /Highest U-factor allowed \| 0\.045[^|]*\|[^|]*\|[^|]* … \(from memory\)/,
    );
  });

  it('names a glued cladding as glued, without a spacing', () => {
    const advice = structuredClone(FULL_ADVICE);
    const first = advice.ranked[0];
    if (first) first.fastening = { ...first.fastening, fastener: 'none: glued', support: 'adhered' };
    const markdown = markdownOf(advice);
    expect(markdown).toContain('- **Fastener:** none: glued');
    expect(markdown).not.toContain('along each stud');
  });
});

/** What a CommonMark reader makes of escaped text: backslash before punctuation and the three entities go. */
function unescaped(text: string): string {
  return text
    .replace(/\\([!-/:-@[-`{-~])/g, '$1')
    .replace(/&lt;/g, '<')
    .replace(/&gt;/g, '>')
    .replace(/&amp;/g, '&');
}

describe('escapeMarkdown', () => {
  it('reads as the text that went in, on one line', () => {
    fc.assert(
      fc.property(fc.oneof(fc.string({ unit: 'binary' }), fc.constantFrom(...HOSTILE_NAMES)), (text) => {
        const escaped = escapeMarkdown(text);
        expect(escaped).not.toContain('\n');
        expect(unescaped(escaped)).toBe(cleanText(text));
      }),
    );
  });

  it('leaves nothing that could act as markup', () => {
    fc.assert(
      fc.property(fc.oneof(fc.string({ unit: 'binary' }), fc.constantFrom(...HOSTILE_NAMES)), (text) => {
        const bare = escapeMarkdown(text).replace(/\\[!-/:-@[-`{-~]/g, '');
        expect(bare).not.toMatch(/[<>`*[\]|~\\]/);
        expect(bare).not.toMatch(/^(#{1,6}(\s|$)|[-+](\s|$)|\d{1,9}[.)](\s|$)|(-|=){2,}\s*$)/);
        expect(bare).not.toMatch(/(^|[^A-Za-z0-9])_|_([^A-Za-z0-9]|$)/);
      }),
    );
  });

  it('leaves ordinary figures, ids and money readable', () => {
    for (const text of ['wall.u_factor', '$24 to $37', '-5 °F', '1-1/2 in.', 'R-12.6 (2 layers)', 'A & B']) {
      expect(escapeMarkdown(text)).toBe(text);
    }
  });

  it.each(HOSTILE_NAMES)('keeps tables and headings whole: %j', (name) => {
    const advice = structuredClone(FULL_ADVICE);
    advice.answers = [{ field: 'name', question: name, answer: name }];
    const markdown = markdownOf(advice, { ...SCENARIO, name });
    expect(headings(markdown)).toEqual(headings(markdownOf()));
    expect(markdown).not.toContain('<');
    const start = markdown.indexOf('| Question | Answer |');
    const row = markdown.slice(start).split('\n')[2] ?? '';
    expect(row.replace(/\\[!-/:-@[-`{-~]/g, '').match(/\|/g)).toHaveLength(3);
  });
});
