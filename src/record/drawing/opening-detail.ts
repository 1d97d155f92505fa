import type { RankedAssembly } from '../../advice/advice-schema.ts';
import type { Opening } from '../../advice/openings-schema.ts';
import { inches } from '../../base/inches.ts';
import { spreadKeys } from '../spread-keys.ts';
import { type OpeningPlanes, type OpeningReach, openingPlanes, openingReach } from './opening-parts.ts';
import { KEY_RADIUS, type Point } from './svg-parts.ts';

export const PLACES = ['sill', 'jamb', 'head'] as const;
export type DetailPlace = (typeof PLACES)[number];

export type DetailShape = {
  readonly className: string;
  readonly points: readonly Point[];
  readonly isClosed: boolean;
  /** Layer pattern to fill it with. */
  readonly pattern?: string;
};

/** A section through a wall at the edge of a window, in drawing units; inside on the left. */
export type OpeningDetail = {
  readonly place: DetailPlace;
  readonly width: number;
  readonly height: number;
  /** Drawing units to an inch. */
  readonly scale: number;
  readonly shapes: readonly DetailShape[];
  readonly keys: readonly { readonly number: number; readonly at: Point; readonly target: Point }[];
  readonly dimensions: readonly {
    readonly from: number;
    readonly to: number;
    readonly y: number;
    readonly words: string;
  }[];
};

/** What the numbers in all three drawings name. */
export const DETAIL_PARTS = {
  1: 'framing: rough sill, trimmer or header',
  2: 'buck',
  3: 'water-resistive barrier',
  4: 'flashing skin over buck and back onto the barrier',
  5: 'exterior insulation',
  6: 'window frame',
  7: 'flange: jambs first, head last; the bottom one stays open to drain',
  8: 'sill pan, sloped outward, with back dam; setting blocks on it',
  9: 'head flashing with end dams, back leg behind the drainage space',
  10: 'casing bead: the finish ends here, clear of the frame',
  11: 'sealant joint over backer rod',
  12: 'air seal inside, all round',
  13: 'drainage space and finish',
} as const;

const SCALE = 20;
const WALL_IN = 6.5;
const OPENING_IN = 6;
const KEY_COLUMN = 40;
const KEY_GAP = 2 * KEY_RADIUS + 4;
const TOP = 22;
const BELOW = 56;
const FRAME_HEIGHT_IN = 2.4;
const PANE_GAP_IN = 0.55;

/** @returns null where the wall's layers can't be drawn */
export function openingDetail(
  wall: RankedAssembly,
  opening: Opening,
  place: DetailPlace,
): OpeningDetail | null {
  const planes = openingPlanes(wall, opening);
  if (!planes) return null;
  const reach = openingReach(opening, planes);
  const left = KEY_COLUMN;
  const right = Math.max(planes.face, planes.frame_out) + 0.5;
  const width = left + right * SCALE + KEY_COLUMN;
  const bottom = TOP + (WALL_IN + OPENING_IN) * SCALE;
  const edge = place === 'head' ? TOP + WALL_IN * SCALE : TOP + OPENING_IN * SCALE;
  const at = (x: number, y: number): Point => ({
    x: left + x * SCALE,
    y: place === 'head' ? edge + y * SCALE : edge - y * SCALE,
  });
  const shape = (className: string, corners: readonly (readonly [number, number])[], isClosed = false) => ({
    className,
    isClosed,
    points: corners.map(([x, y]) => at(x, y)),
  });
  const box = (className: string, [x1, x2]: readonly [number, number], [y1, y2]: readonly [number, number]) =>
    shape(
      className,
      [
        [x1, y1],
        [x2, y1],
        [x2, y2],
        [x1, y2],
      ],
      true,
    );
  const job: Job = { wall, opening, place, planes, reach, shape, box };
  return {
    place,
    width,
    height: bottom + BELOW,
    scale: SCALE,
    shapes: [...wallShapes(job), ...windowShapes(job), ...waterShapes(job)],
    keys: placedKeys(targets(job), { at, width, bottom }),
    dimensions: dimensionsOf(job, at, bottom),
  };
}

type Corners = readonly (readonly [number, number])[];
type Job = {
  readonly wall: RankedAssembly;
  readonly opening: Opening;
  readonly place: DetailPlace;
  readonly planes: OpeningPlanes;
  readonly reach: OpeningReach;
  readonly shape: (className: string, corners: Corners, isClosed?: boolean) => DetailShape;
  readonly box: (
    className: string,
    x: readonly [number, number],
    y: readonly [number, number],
  ) => DetailShape;
};

const OUTER: ReadonlySet<string> = new Set(['drainage', 'furring', 'lath', 'finish']);

function wallShapes({ planes, reach, opening, box, shape }: Job): DetailShape[] {
  const strips = planes.strips
    .filter(({ from, to }) => to - from > 0.05)
    .map(({ role, from, to }) => ({
      ...box('layer', [from, to], [-WALL_IN, OUTER.has(role) ? reach.finish : 0]),
      pattern: role,
    }));
  const { framing_in, framing_out, barrier, flange } = planes;
  const lumber = [
    box('wood', [framing_in, framing_out], [-1.5, 0]),
    shape('thin', [
      [framing_in, -1.5],
      [framing_out, 0],
    ]),
    shape('thin', [
      [framing_in, 0],
      [framing_out, -1.5],
    ]),
  ];
  const { buck } = reach;
  const start = opening.carried_by.support === 'bears-on-sill' ? framing_in : barrier;
  const bucks = buck
    ? [
        box('buck', [start, flange], [buck.from, buck.to]),
        shape('thin', [
          [start, buck.from],
          [flange, buck.to],
        ]),
        shape('thin', [
          [start, buck.to],
          [flange, buck.from],
        ]),
      ]
    : opening.carried_by.support === 'steel-bracket'
      ? [
          shape('steel', [
            [barrier + 0.1, -3.5],
            [barrier + 0.1, -0.15],
            [flange, -0.15],
          ]),
        ]
      : [];
  return [...strips, ...lumber, ...bucks];
}

function windowShapes({ planes, reach, opening, place, box, shape }: Job): DetailShape[] {
  const { frame_in, frame_out, flange } = planes;
  const top = reach.frame + FRAME_HEIGHT_IN;
  const panes = opening.glazing === 'triple' ? 3 : 2;
  const middle = (frame_in + frame_out) / 2;
  return [
    box('frame', [frame_in, frame_out], [reach.frame, top]),
    ...Array.from({ length: panes }, (_, i) => {
      const x = middle + (i - (panes - 1) / 2) * PANE_GAP_IN;
      return shape('glass', [
        [x, top - 0.6],
        [x, OPENING_IN],
      ]);
    }),
    ...(opening.mounting === 'flanged'
      ? [
          shape('flange', [
            [flange, reach.frame + 0.6],
            [flange, reach.flange],
          ]),
        ]
      : []),
    ...(place === 'sill'
      ? [box('block', [middle - 0.8, middle + 0.8], [reach.frame - 0.3, reach.frame])]
      : []),
  ];
}

/** Everything that keeps water and air out. */
function waterShapes(job: Job): DetailShape[] {
  const { planes, reach, place, box, shape } = job;
  const { barrier, frame_in, flange, finish_in, face, insulation_out } = planes;
  const top = Math.max(0, reach.buck?.to ?? 0);
  const bead = shape('bead', [
    [finish_in, reach.finish - 1],
    [finish_in, reach.finish],
    [face, reach.finish],
    [face, reach.finish - 0.2],
  ]);
  const pan = shape('pan', [
    [frame_in - 0.1, top + reach.back_dam],
    [frame_in - 0.1, top + 0.3],
    [flange + 0.12, top + 0.06],
    [flange + 0.12, top - 0.7],
  ]);
  const leg = job.opening.room.head_flashing_leg_in;
  const head = shape('pan', [
    [insulation_out + 0.06, reach.finish - 0.15 - leg],
    [insulation_out + 0.06, reach.finish - 0.12],
    [face + 0.35, reach.finish + 0.08],
    [face + 0.35, reach.finish + 0.4],
  ]);
  const joint = [
    box('seal', [face - 0.45, face - 0.2], [reach.finish, reach.frame]),
    box('rod', [face - 0.85, face - 0.45], [reach.finish, reach.frame]),
  ];
  return [
    shape('barrier', [
      [barrier, -WALL_IN],
      [barrier, 0],
    ]),
    shape('skin', skinLine(job)),
    ...(place === 'sill' ? [pan] : []),
    ...(place === 'head' ? [head] : []),
    bead,
    ...(place === 'jamb' && job.opening.room.joint_has_room ? joint : []),
    box('seal', [frame_in, frame_in + 0.4], [top + 0.08, reach.frame]),
  ];
}

/** From the barrier round the buck to the inside, in one line. */
function skinLine({ planes, reach, opening }: Job): Corners {
  const { framing_in, barrier, flange } = planes;
  const { buck } = reach;
  const start = [barrier + 0.05, -4.5] as const;
  if (!buck) {
    return opening.carried_by.support === 'steel-bracket'
      ? [start, [barrier + 0.05, 0.05], [flange, 0.05], [framing_in, 0.05]]
      : [start, [barrier + 0.05, 0.05], [framing_in, 0.05]];
  }
  return [
    start,
    [barrier + 0.05, buck.from - 0.05],
    [flange + 0.05, buck.from - 0.05],
    [flange + 0.05, buck.to + 0.05],
    [framing_in, buck.to + 0.05],
  ];
}

type Target = { readonly number: keyof typeof DETAIL_PARTS; readonly x: number; readonly y: number };

function targets({ planes, reach, place, opening }: Job): Target[] {
  const { framing_in, framing_out, barrier, insulation_out, frame_in, frame_out, flange, face } = planes;
  const top = Math.max(0, reach.buck?.to ?? 0);
  const buck = reach.buck ?? (opening.carried_by.support === 'steel-bracket' ? { from: -0.3, to: 0 } : null);
  const middle = (barrier + insulation_out) / 2;
  return [
    { number: 1, x: framing_in + (framing_out - framing_in) * 0.3, y: -0.9 },
    ...(buck ? [{ number: 2 as const, x: (barrier + flange) / 2, y: (buck.from + buck.to) / 2 }] : []),
    { number: 3, x: barrier, y: -5.4 },
    { number: 4, x: barrier + 0.05, y: -4 },
    { number: 5, x: middle, y: -3 },
    { number: 6, x: frame_out - 0.3, y: reach.frame + 1.6 },
    ...(opening.mounting === 'flanged'
      ? [{ number: 7 as const, x: flange, y: (reach.frame + reach.flange) / 2 }]
      : []),
    ...(place === 'sill' ? [{ number: 8 as const, x: frame_in - 0.1, y: top + 0.6 }] : []),
    ...(place === 'head' ? [{ number: 9 as const, x: face + 0.35, y: reach.finish + 0.3 }] : []),
    { number: 10, x: face, y: reach.finish - 0.1 },
    ...(place === 'jamb' && opening.room.joint_has_room
      ? [{ number: 11 as const, x: face - 0.3, y: (reach.finish + reach.frame) / 2 }]
      : []),
    { number: 12, x: frame_in + 0.1, y: (top + reach.frame) / 2 },
    { number: 13, x: face - 0.2, y: -4.5 },
  ];
}

/** Keys in two columns, those of the inner half on the left, each as near its target as its neighbours let it. */
function placedKeys(
  all: readonly Target[],
  { at, width, bottom }: { at: (x: number, y: number) => Point; width: number; bottom: number },
): OpeningDetail['keys'] {
  const points = all.map(({ number, x, y }) => ({ number, target: at(x, y) }));
  const column = (side: typeof points, x: number) => {
    const sorted = [...side].sort((a, b) => a.target.y - b.target.y);
    const ys = spreadKeys(
      sorted.map(({ target }) => target.y),
      KEY_GAP,
      TOP,
      bottom - KEY_RADIUS,
    );
    return sorted.map(({ number, target }, i) => ({ number, target, at: { x, y: ys[i] ?? target.y } }));
  };
  const isLeft = ({ target }: { target: Point }) => target.x < width / 2;
  return [
    ...column(points.filter(isLeft), KEY_RADIUS + 3),
    ...column(
      points.filter((point) => !isLeft(point)),
      width - KEY_RADIUS - 3,
    ),
  ];
}

function dimensionsOf(
  { planes, opening }: Job,
  at: (x: number, y: number) => Point,
  bottom: number,
): OpeningDetail['dimensions'] {
  const { barrier, flange, face } = planes;
  const { outside_barrier_in, behind_finished_face_in } = opening.flange_plane;
  return [
    {
      from: at(barrier, 0).x,
      to: at(flange, 0).x,
      y: bottom + 12,
      words: `${inches(outside_barrier_in)} in. sheathing to flange`,
    },
    {
      from: at(flange, 0).x,
      to: at(face, 0).x,
      y: bottom + 38,
      words: `${inches(Math.abs(behind_finished_face_in))} in. flange to face`,
    },
  ];
}
