import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { SCENARIO } from './example-inputs.ts';
import { ROOT, runProgram } from './run-program.ts';

const folder = mkdtempSync(join(tmpdir(), 'cladwright-openings-'));
afterAll(() => rmSync(folder, { recursive: true }));

/** Text on screen and both readable records of a shipped scenario, on one line each. */
async function told(name: string) {
  const into = join(folder, name);
  const { code, stdout, stderr } = await runProgram([
    'advise',
    join(ROOT, 'scenarios', `${name}.json`),
    '--save',
    into,
  ]);
  expect(code, stderr).toBe(0);
  const record = (ending: string) =>
    readFileSync(
      join(
        into,
        readdirSync(into).find((file) => file.endsWith(ending) && !file.includes('build-sheet')) ?? '',
      ),
      'utf8',
    );
  const flat = (text: string) => text.replaceAll('’', "'").replaceAll(/\s+/g, ' ');
  return {
    screen: flat(stdout),
    md: flat(record('.md')),
    html: flat(
      record('.html')
        .replaceAll(/<[^>]+>/g, ' ')
        .replaceAll('&#39;', "'")
        .replaceAll('&quot;', '"'),
    ),
  };
}

const retrofit = await told('retrofit-fixed-openings');
const fresh = await told('new-large-fixed-window');

describe.each(['screen', 'md', 'html'] as const)(
  'six windows of three kinds whose openings stay, in %s',
  (where) => {
    const text = retrofit[where];
    it('are each named, the worst as what decides', () => {
      expect(text).toMatch(/3 of 34 x 58 in\. casement, triple-glazed, flanged \(decides about the buck\)/);
      expect(text).toContain('2 of 30 x 36 in. awning, triple-glazed, flanged');
      expect(text).toContain('1 of 64 x 60 in. fixed, triple-glazed, flanged');
      expect(text).toMatch(/Weighs about \d+ lb \(\d+ to \d+\), worked out from its make-up/);
    });
    it('hang on a joined frame, but for the large unit, whose support is an engineer’s and priced', () => {
      expect(text).toContain(
        'frame of 2x4 ripped to 3 in., on edge, joined at the corners and screwed to the face of the framing',
      );
      expect(text).toContain('not hung on a face-fastened buck without an engineer');
      expect(text).toMatch(/Support of its own: engineered steel angles or brackets/);
      expect(text).toMatch(/Its own support is in the wall's price: about \$550 each/);
      expect(text).toMatch(/Inside corner: Not estimated: steel brackets/);
    });
    it('with screws, bounds and the order of the work', () => {
      expect(text).toMatch(/No\. 10 x 6 in\. structural wood screw, 6 in each jamb, 4 in sill and head each/);
      expect(text).toMatch(
        /The sill piece by itself would be used to \d+ % by the weight, the whole frame to \d+ %/,
      );
      expect(text).toMatch(/Old window and trim out/);
      expect(text).toMatch(/Brackets set and fastened by the engineer's drawing/);
    });
    it('keep their size on the face, and would lose it to a buck inside', () => {
      expect(text).toMatch(
        /taken as 35 x 59 in\. for this unit\): on the face of the wall the unit keeps its size; a buck inside .* would leave a unit of 32-1\/2 x 56-1\/4 in\./,
      );
    });
  },
);

describe.each(['screen', 'md', 'html'] as const)(
  'a fixed triple-glazed unit of 6 x 8 ft in new work, in %s',
  (where) => {
    const text = fresh[where];
    it('bears on the sill on a member thick enough for its blocks', () => {
      expect(text).toContain('1 of 72 x 96 in. fixed, triple-glazed, flanged');
      expect(text).toMatch(
        /1-3\/4 x 9-1\/4 in\. laminated veneer lumber ripped to 8-15\/16 in\., lining the opening, bearing on the rough sill/,
      );
      expect(text).toMatch(/stands on its setting blocks, no further than 4 in\. from the jambs/);
      expect(text).toMatch(/Each jamb as a bracket in its own plane/);
    });
    it('with other screws, another opening and another order of work than the retrofit', () => {
      expect(text).toMatch(/No\. 10 x 3-1\/2 in\. wood screw, 9 in each jamb, 7 in sill and head each/);
      expect(text).toContain('Rough opening needed: 76-1/2 x 100-3/4 in.');
      expect(text).toMatch(/Buck set on the rough sill with full bearing/);
      expect(text).not.toMatch(/Old window and trim out/);
    });
    it('and says why a frame on the face, or a bare flange, is not for it', () => {
      expect(text).toMatch(/would hang on a buck that is only screwed to the face of the wall/);
      expect(text).toMatch(/too large to hang by its flange over insulation \(limit 20 ft² or 150 lb\)/);
    });
  },
);

describe('openings that cannot be', () => {
  const WINDOW = { count: 1, width_in: 36, height_in: 60, weight_lb: 110 };
  const refused = async (change: object) => {
    const { code, stdout, stderr } = await runProgram(['advise', '-'], {
      stdin: JSON.stringify({ ...SCENARIO, ...change }),
    });
    expect({ code, stdout }).toEqual({ code: 2, stdout: '' });
    return stderr;
  };
  it.each([
    [
      'a window larger than its wall',
      { windows: [{ ...WINDOW, width_in: 200, height_in: 120 }], wall_area_ft2: 100 },
      /windows\[0\].*Give a window smaller than the wall/s,
    ],
    [
      'a unit that its kept opening is too small for',
      { rough_opening_can_change: false, windows: [{ ...WINDOW, rough_opening_height_in: 59 }] },
      /windows\[0\]\.rough_opening_height_in.*larger than the unit \(60 in\.\)/s,
    ],
    [
      'no opening at all',
      { windows: [{ ...WINDOW, rough_opening_width_in: 0 }] },
      /rough_opening_width_in.*from 6 to 260/s,
    ],
    [
      'a plane that there is not',
      { flange_plane: 'stucco-face' },
      /flange_plane.*"insulation-face", "furring-face"/s,
    ],
  ])('%s is refused with 2, the field and what would be accepted', async (_, change, words) => {
    expect(await refused(change)).toMatch(words);
  });
});
