import { describe, expect, it } from 'vitest';
import type { RankedAssembly } from '../../../src/advice/advice-schema.ts';
import { fasteningElevation } from '../../../src/record/drawing/fastening-elevation.ts';
import { fasteningElevationSvg } from '../../../src/record/drawing/fastening-elevation-svg.ts';
import { openingDetail, PLACES } from '../../../src/record/drawing/opening-detail.ts';
import { openingDetailSvg } from '../../../src/record/drawing/opening-detail-svg.ts';
import { KEY_RADIUS } from '../../../src/record/drawing/svg-parts.ts';
import { SAMPLE_OPENINGS } from '../../advice/sample-openings.ts';
import { FULL_ADVICE } from '../fixture-advice.ts';
import { checkHtml } from '../html-check.ts';

const [wall] = FULL_ADVICE.ranked;
const [sample] = SAMPLE_OPENINGS;
if (!wall || !sample) throw new Error('the fixture has a wall and a window');

const SUPPORTS = [
  { id: 'plywood-box', label: 'plywood box', support: 'bears-on-sill' },
  { id: 'lumber-2x4-face', label: 'frame on the face', support: 'face-fastened' },
  { id: 'no-buck', label: 'no buck', support: 'flange-over-insulation' },
  { id: 'steel-bracket', label: 'steel brackets', support: 'steel-bracket' },
];
const cases = SUPPORTS.flatMap((carried_by) =>
  PLACES.map((place) => ({ place, support: carried_by.support, opening: { ...sample, carried_by } })),
);

describe('a window in section', () => {
  it.each(cases)('draws each layer as wide as it is thick: $place, $support', ({ place, opening }) => {
    const detail = openingDetail(wall, opening, place);
    const strips = (detail?.shapes ?? []).filter(({ pattern }) => pattern !== undefined);
    const thick = wall.layers.filter(({ thickness_in }) => thickness_in > 0.05);
    expect(strips).toHaveLength(thick.length);
    strips.forEach(({ points }, i) => {
      const xs = points.map(({ x }) => x);
      const drawn_in = (Math.max(...xs) - Math.min(...xs)) / (detail?.scale ?? 1);
      expect(drawn_in).toBeCloseTo(thick[i]?.thickness_in ?? 0, 6);
    });
  });

  it.each(cases)('keeps keys apart and everything inside: $place, $support', ({ place, opening }) => {
    const detail = openingDetail(wall, opening, place);
    if (!detail) throw new Error('nothing drawn');
    detail.keys.forEach(({ at }, i) => {
      for (const other of detail.keys.slice(i + 1)) {
        expect(Math.hypot(at.x - other.at.x, at.y - other.at.y)).toBeGreaterThanOrEqual(2 * KEY_RADIUS);
      }
    });
    const points = [
      ...detail.shapes.flatMap((shape) => shape.points),
      ...detail.keys.flatMap(({ at, target }) => [at, target]),
    ];
    for (const { x, y } of points) {
      expect(x).toBeGreaterThanOrEqual(0);
      expect(x).toBeLessThanOrEqual(detail.width);
      expect(y).toBeGreaterThanOrEqual(0);
      expect(y).toBeLessThanOrEqual(detail.height);
    }
  });

  it('turns the head over: the wall is above, the opening below', () => {
    const middle = (place: 'sill' | 'head') => {
      const detail = openingDetail(wall, sample, place);
      const frame = detail?.shapes.find(({ className }) => className === 'frame')?.points ?? [];
      const strip = detail?.shapes.find(({ pattern }) => pattern === 'insulation')?.points ?? [];
      return { frame: frame[0]?.y ?? 0, wall: strip[0]?.y ?? 0 };
    };
    expect(middle('sill').frame).toBeLessThan(middle('sill').wall);
    expect(middle('head').frame).toBeGreaterThan(middle('head').wall);
  });

  it('draws the sill pan at the sill alone and the head flashing at the head alone', () => {
    const numbers = (place: (typeof PLACES)[number]) =>
      openingDetail(wall, sample, place)?.keys.map(({ number }) => number) ?? [];
    expect(numbers('sill')).toContain(8);
    expect(numbers('head')).toContain(9);
    expect(numbers('jamb')).not.toEqual(expect.arrayContaining([8]));
    expect(numbers('jamb')).not.toEqual(expect.arrayContaining([9]));
  });

  it('is well formed, told in words, and harmless with a hostile label', () => {
    const opening = {
      ...sample,
      window: '"><script>alert(1)</script>',
      carried_by: { ...sample.carried_by, label: '</desc><b>' },
    };
    const svg = openingDetailSvg(wall, opening, 'sill') ?? '';
    const tags = checkHtml(`<!DOCTYPE html>\n${svg}`).map(({ tag }) => tag);
    expect(tags).not.toContain('script');
    expect(tags).not.toContain('b');
    expect(svg).toContain('sill pan, sloped outward, with back dam');
  });

  it('draws nothing for a wall without framing or insulation', () => {
    expect(openingDetail({ ...wall, layers: [] }, sample, 'sill')).toBeNull();
  });
});

describe('the fastening pattern', () => {
  const drawn = fasteningElevation(wall);
  if (!drawn) throw new Error('nothing drawn');

  it('sets fasteners as far apart as the schedule says, on studs as far apart as they stand', () => {
    const [main] = drawn.lines;
    const [a = 0, b = 0] = drawn.studs;
    expect((b - a) / drawn.scale).toBeCloseTo(wall.fastening.stud_spacing_in, 6);
    const column = (main?.points ?? []).filter(({ x }) => x === main?.points[0]?.x).map(({ y }) => y);
    // The sample's line has 8 in. in both zones.
    column.slice(1).forEach((y, i) => {
      expect(((column[i] ?? 0) - y) / drawn.scale).toBeCloseTo(8, 6);
    });
  });

  it('is closer at the corner than in the field where the schedule is', () => {
    const steps = wall.fastening_schedule.steps.map((step) => ({
      ...step,
      zones: step.zones.map((zone) => ({ ...zone, spacing_along_in: zone.zone === 'corner' ? 4 : 8 })),
    }));
    const closer = fasteningElevation({ ...wall, fastening_schedule: { ...wall.fastening_schedule, steps } });
    const points = closer?.lines[0]?.points ?? [];
    const end = closer?.corner_end ?? 0;
    const perStud = (corner: boolean) => {
      const here = points.filter(({ x }) => x < end === corner);
      return here.length / new Set(here.map(({ x }) => x)).size;
    };
    // 52 in. high, from 3 in. up: 13 at 4 in., 7 at 8 in.
    expect([perStud(true), perStud(false)]).toEqual([13, 7]);
  });

  it('keeps every fastener on the wall, and the corner zone as wide as it is said', () => {
    for (const { points } of drawn.lines) {
      for (const { x, y } of points) {
        expect(x).toBeGreaterThanOrEqual(drawn.wall.left);
        expect(x).toBeLessThanOrEqual(drawn.wall.right);
        expect(y).toBeGreaterThanOrEqual(drawn.wall.top);
        expect(y).toBeLessThanOrEqual(drawn.wall.bottom);
      }
    }
    const width_in = (drawn.corner_end - drawn.wall.left) / drawn.scale;
    expect(width_in).toBeCloseTo(12 * wall.fastening_schedule.corner_zone.corner_width_ft, 6);
  });

  it('is well formed, and drawn for nothing glued', () => {
    checkHtml(`<!DOCTYPE html>\n${fasteningElevationSvg(wall)}`);
    const glued: RankedAssembly = { ...wall, fastening_schedule: { ...wall.fastening_schedule, steps: [] } };
    expect(fasteningElevationSvg(glued)).toBeNull();
  });
});
