import fc from 'fast-check';
import stringWidth from 'string-width';
import { describe, expect, it } from 'vitest';
import type { Prompt } from '../../src/conversation/state.ts';
import { EMPTY_LINE, insertText } from '../../src/terminal/line-editor.ts';
import { type LiveView, liveRegion } from '../../src/terminal/live-region.ts';

const PROMPT: Prompt = {
  key: 'sheathing',
  label: 'Sheathing',
  aside: '4 of 15',
  title: 'What covers the outside of the studs now?',
  why: 'it is the layer that gets wet first when the wall is wrong.',
  choices: ['OSB', 'Plywood', 'Exterior gypsum board', 'Fibreboard', 'Solid boards', 'No sheathing'],
  example: 'plywood',
  accepts: 'one of the choices',
};

const OUTLOOK = 'So far: Three-coat stucco over 3 in. of mineral wool; 212 of 18,000 walls still in.';

const draw = (rows: number, columns: number, picked: number | null = null, text = '', prompt = PROMPT) =>
  liveRegion(
    {
      stage: 'asking',
      prompt,
      line: insertText(EMPTY_LINE, text),
      picked,
      outlook: OUTLOOK,
      progress: null,
    },
    { rows, columns },
    false,
  );
const texts = (region: ReturnType<typeof draw>) => region.lines.map((line) => line.text);

describe('the live region', () => {
  it('shows the question, why, choices, example and the line being typed', () => {
    const shown = texts(draw(24, 80, 1, 'ply')).join('\n');
    expect(shown).toContain('4 of 15');
    expect(shown).toContain('What covers the outside');
    expect(shown).toContain('Why: it is the layer');
    expect(shown).toContain('> 2  Plywood');
    expect(shown).toContain('For example: plywood');
    expect(shown.split('\n').at(-1)).toBe('» ply');
  });

  it('puts the cursor behind what was typed, counting wide characters twice', () => {
    const region = draw(24, 80, null, '木造');
    expect(region.cursor).toEqual({ x: 2 + 4, y: region.lines.length - 1 });
  });

  it('is always shorter than the window, and never wider', () => {
    const prompt: fc.Arbitrary<Prompt> = fc.record({
      key: fc.constant('k'),
      label: fc.string({ unit: 'grapheme', maxLength: 90 }),
      aside: fc.option(fc.constant('3 of 15')),
      accepts: fc.string({ maxLength: 90 }),
      title: fc.string({ unit: 'grapheme', maxLength: 400 }),
      why: fc.option(fc.string({ maxLength: 300 })),
      choices: fc.array(fc.string({ unit: 'grapheme', maxLength: 90 }), { maxLength: 25 }),
      example: fc.option(fc.string({ maxLength: 90 })),
    });
    fc.assert(
      fc.property(
        prompt,
        fc.integer({ min: 2, max: 50 }),
        fc.integer({ min: 10, max: 140 }),
        fc.nat({ max: 24 }),
        fc.string({ unit: 'grapheme', maxLength: 200 }),
        (anyPrompt, rows, columns, picked, text) => {
          const region = draw(rows, columns, Math.min(picked, anyPrompt.choices.length - 1), text, anyPrompt);
          expect(region.lines.length).toBeLessThanOrEqual(rows - 1);
          for (const line of region.lines) expect(stringWidth(line.text)).toBeLessThanOrEqual(columns);
          expect(region.cursor?.y).toBeLessThan(rows - 1);
          expect(region.cursor?.x).toBeLessThan(columns);
        },
      ),
    );
  });

  it('keeps the picked choice in sight when there is little room', () => {
    for (let picked = 0; picked < PROMPT.choices.length; picked += 1) {
      expect(texts(draw(7, 80, picked)).join('\n')).toContain(`> ${picked + 1}  ${PROMPT.choices[picked]}`);
    }
  });

  it('wraps a long choice where there is room for all of it, and lets the keys go for it', () => {
    const long = {
      ...PROMPT,
      why: null,
      example: null,
      choices: ['none', 'Class III: latex paint on gypsum board'],
    };
    const wide = texts(draw(24, 40, 1, '', long)).join('\n');
    expect(wide).toContain('> 2  Class III: latex paint on gypsum\n     board');
    const rows = texts(draw(24, 40, 1, '', long)).length;
    const tight = texts(draw(rows, 40, 1, '', long)).join('\n');
    expect(tight).toContain('\n     board');
    expect(tight).not.toContain('Enter sends');
  });

  it('keeps the question and the line to type on when there is hardly any', () => {
    const lines = texts(draw(4, 80));
    expect(lines[0]).toContain('What covers the outside');
    expect(lines.at(-1)).toBe('» ');
  });

  it('says what is being done while nothing is asked', () => {
    const busy = (progress: LiveView['progress']) =>
      liveRegion(
        { stage: 'advising', prompt: null, line: EMPTY_LINE, picked: null, outlook: null, progress },
        { rows: 24, columns: 80 },
        true,
      );
    expect(busy(null)).toEqual({
      lines: [{ text: 'Working it out ... Esc stops.', role: 'quiet' }],
      cursor: null,
    });
    expect(texts(busy({ walls: 18_000, times: 4 }))).toEqual([
      'Working it out ... 18,000 walls judged, 4 times over. Esc stops.',
    ]);
  });

  it('shows the first impression beside the question where there is room, and lets it go before the question', () => {
    expect(texts(draw(24, 100))).toContain(OUTLOOK);
    expect(texts(draw(8, 80)).join('\n')).not.toContain('So far');
    expect(texts(draw(8, 80)).join('\n')).toContain('What covers the outside');
  });
});
