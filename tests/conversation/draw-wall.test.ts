import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { blocksToText } from '../../src/conversation/blocks.ts';
import { PICTURES } from '../../src/conversation/command.ts';
import { drawBuck } from '../../src/conversation/draw-buck.ts';
import { carryingStep, drawFastening } from '../../src/conversation/draw-fastening.ts';
import { fillOf, spansOf } from '../../src/conversation/draw-layers.ts';
import { drawScores } from '../../src/conversation/draw-scores.ts';
import { drawSection, sectionKey } from '../../src/conversation/draw-section.ts';
import { pictureBlocks } from '../../src/conversation/pictures.ts';
import { SAMPLE_OPENINGS } from '../advice/sample-openings.ts';
import { sampleWall } from './sample-advice.ts';

const WALL = {
  ...sampleWall(1, 'Stucco over 3 in. of mineral wool'),
  openings: SAMPLE_OPENINGS,
  added_thickness_in: 4.5,
  layers: [
    { label: 'gypsum board', thickness_in: 0.5, r: 0.45, role: 'lining', provenance: 'verified' },
    { label: 'R-21 between studs', thickness_in: 5.5, r: 21, role: 'framing', provenance: 'given' },
    { label: 'OSB', thickness_in: 0.5, r: 0.62, role: 'sheathing', provenance: 'verified' },
    { label: 'building wrap', thickness_in: 0.02, r: 0, role: 'barrier', provenance: 'memory' },
    { label: 'mineral wool', thickness_in: 3, r: 12.6, role: 'insulation', provenance: 'memory' },
    { label: 'furring', thickness_in: 0.75, r: 0, role: 'furring', provenance: 'computed' },
    { label: 'stucco', thickness_in: 0.75, r: 0, role: 'finish', provenance: 'computed' },
  ],
};

const [FIRST_STEP] = WALL.fastening_schedule.steps;
if (!FIRST_STEP) throw new Error('the sample has a schedule');
/** A 5 in. screw through 3 in. of board and 1/2 in. of sheathing. */
const STEPS = [
  {
    ...FIRST_STEP,
    does: 'carries' as const,
    length_in: 5,
    stack_in: 3.5,
    stack: [
      { label: 'mineral wool', thickness_in: 3 },
      { label: 'OSB sheathing', thickness_in: 0.5 },
    ],
    aim: {
      head_to_stud_in: 3.5,
      stud_face_in: 1.5,
      edge_distance_in: 0.5,
      room_each_side_in: 0.25,
      largest_lean_deg: 4,
      pilot_in: null,
      clearance_in: null,
      how: [],
    },
  },
];

describe('layers at one scale', () => {
  it('take columns by their thickness, sheets one each, without a gap', () => {
    fc.assert(
      fc.property(
        fc.array(
          fc.oneof(fc.constant(0), fc.constant(0.02), fc.double({ min: 0.25, max: 12, noNaN: true })),
          {
            minLength: 1,
            maxLength: 10,
          },
        ),
        fc.integer({ min: 30, max: 90 }),
        (inches, room) => {
          fc.pre(inches.some((one) => one >= 0.25));
          const layers = inches.map((thickness_in) => ({ role: 'insulation', thickness_in }));
          const { spans, columns_per_in } = spansOf(layers, room);
          let at = 0;
          for (const [i, { from, width, isSheet }] of spans.entries()) {
            expect(from).toBe(at);
            expect(width).toBeGreaterThanOrEqual(1);
            at += width;
            // Rounding at both edges: never more than a column off. Sheets are not to scale.
            if (!isSheet && (inches[i] ?? 0) * columns_per_in >= 1) {
              expect(Math.abs(width - (inches[i] ?? 0) * columns_per_in)).toBeLessThanOrEqual(1);
            }
          }
        },
      ),
    );
  });

  it('can be told apart by their pattern alone', () => {
    const roles = [
      'lining',
      'framing',
      'sheathing',
      'barrier',
      'insulation',
      'drainage',
      'furring',
      'lath',
      'finish',
    ];
    const fills = roles.map((role) => fillOf(role, 4, 0) + fillOf(role, 4, 1));
    expect(new Set(fills).size).toBe(roles.length);
    for (const fill of fills) expect(fill).toMatch(/^[ -~]+$/);
  });
});

describe('the wall in section', () => {
  it('has a letter over every layer, the two boards apart, and a list that says what they are', () => {
    const lines = drawSection(WALL, 76);
    const letters = sectionKey(WALL).map(({ label }) => label);
    expect(letters).toEqual(['a', 'b', 'c', 'd', 'e', 'f', 'g', 'h']);
    expect(lines[1]?.replaceAll(' ', '')).toBe('abcdefgh');
    expect(sectionKey(WALL)[4]?.value).toBe('mineral wool, board 1 of 2, 1-1/2 in.');
    expect(sectionKey(WALL)[3]?.value).toBe('building wrap, 0.02 in.');
  });

  it('is to scale: studs of 5.5 in. are eleven times as wide as the lining of 0.5 in.', () => {
    const row = drawSection(WALL, 76)[2] ?? '';
    const [, lining = '', studs = ''] = row.split('|');
    expect((studs.length + 1) / (lining.length + 1)).toBeGreaterThan(9);
    expect((studs.length + 1) / (lining.length + 1)).toBeLessThan(13);
  });

  it.each([76, 58, 44])('fits the %d columns that it is made for', (width) => {
    for (const line of drawSection(WALL, width)) expect(line.length).toBeLessThanOrEqual(width);
    for (const line of drawBuck(WALL, width) ?? []) expect(line.length).toBeLessThanOrEqual(width);
  });

  it('says how far the new layers reach, and the scale', () => {
    const text = drawSection(WALL, 76).join('\n');
    expect(text).toContain('added 4-1/2 in.');
    expect(text).toMatch(/\|-+\| = 1 in\./);
  });
});

describe('the fastener in its wall', () => {
  it('has its head outside, its point in the stud, and as much wood beyond', () => {
    const step = carryingStep(STEPS);
    expect(step).not.toBeNull();
    if (!step) return;
    const lines = drawFastening(step, 76);
    const shank = lines.find((line) => line.includes('<-')) ?? '';
    expect(shank).toMatch(/^ {2}~+<-+\[\]$/);
    expect(shank.indexOf('<')).toBeLessThan(lines[1]?.indexOf('|') ?? 0);
  });
});

describe('the foot of a window', () => {
  it('rests on the sill or hangs on the face, as the answer says', () => {
    const [opening] = WALL.openings;
    if (!opening) throw new Error('the sample has a window');
    const drawn = (support: string) =>
      drawBuck({ ...WALL, openings: [{ ...opening, carried_by: { ...opening.carried_by, support } }] }, 76) ??
      [];
    const bears = drawn('bears-on-sill').find((line) => line.includes('=')) ?? '';
    const hangs = drawn('face-fastened').find((line) => line.includes('=')) ?? '';
    expect(bears.indexOf('=')).toBe(2);
    expect(hangs.indexOf('=')).toBeGreaterThan(20);
    expect(drawn('face-fastened').some((line) => line.includes('<-'))).toBe(true);
    expect(drawn('flange-over-insulation').some((line) => line.includes('=') && !line.includes('|'))).toBe(
      false,
    );
  });

  it('is not drawn where there is none', () => {
    expect(drawBuck({ ...WALL, openings: [] }, 76)).toBeNull();
  });
});

describe('the parts of a score', () => {
  it('stand with their figures, the best first, the bars as long as the figures say', () => {
    const lines = drawScores({ energy: 0.5, cost: 1, moisture_safety: 0 }, 60);
    expect(lines.map((line) => line.trim().split(/ {2,}/)[0])).toEqual([
      'low cost',
      'holding heat',
      'staying dry',
    ]);
    const bar = (line: string | undefined) => /[#.]+$/.exec(line ?? '')?.[0] ?? '';
    expect(bar(lines[0])).toMatch(/^#+$/);
    expect(bar(lines[2])).toMatch(/^\.+$/);
    expect([...bar(lines[1])].filter((mark) => mark === '#').length).toBe(
      Math.round(bar(lines[1]).length / 2),
    );
  });
});

const SHOWN = { ...WALL, fastening_schedule: { ...WALL.fastening_schedule, steps: STEPS } };

describe.each(PICTURES)('the picture "%s"', (picture) => {
  it.each([120, 80, 60, 40])('keeps to %d columns, in ASCII too', (width) => {
    for (const ascii of [false, true]) {
      const text = blocksToText(pictureBlocks(picture, SHOWN), width, { ascii });
      for (const line of text.split('\n')) expect(line.length).toBeLessThanOrEqual(width);
      if (ascii) expect(text).toMatch(/^[\n -~]*$/);
      expect(text.length).toBeGreaterThan(40);
    }
  });

  it('is told in words to who listens', () => {
    const text = blocksToText(pictureBlocks(picture, SHOWN), 80, { spoken: true });
    expect(text).not.toMatch(/[#~%│├]{2}|x x x|\/\\\//);
    expect(text.length).toBeGreaterThan(40);
  });
});
