import type { RankedAssembly } from '../advice/advice-schema.ts';
import { inches } from '../base/inches.ts';
import type { FigureRow } from './blocks.ts';
import { fillOf, spansOf } from './draw-layers.ts';

const INDENT = '  ';
/** Depth that a window's frame is drawn with, in.; only its outer edge is where the answer says it is. */
const FRAME_IN = 3;

type Drawn = Pick<RankedAssembly, 'layers' | 'buck' | 'openings' | 'added_thickness_in'>;

/**
 * A cut through the foot of a window, inside on the left: window, buck, and the wall below the sill, at one scale
 * across. Heights are not to scale. Null for a wall without windows.
 *
 * @param width  columns, at most 72 are used; under 44 it is taken as 44
 */
export function drawBuck({ layers, buck, openings }: Drawn, width: number): string[] | null {
  const [opening] = openings;
  if (!opening) return null;
  const below = layers.filter(({ role }) => role !== 'lining');
  const room = Math.max(44, Math.min(72, Math.floor(width))) - INDENT.length - 1;
  const { spans, columns_per_in } = spansOf(below, room);
  const framing = below.findIndex(({ role }) => role === 'framing');
  const face = edgeAfter(spans[framing]);
  const plane = Math.max(
    face + 1,
    face + Math.round(opening.flange_plane.outside_framing_in * columns_per_in),
  );
  const frame = Math.max(4, Math.round(FRAME_IN * columns_per_in));
  const wall = (row: number) =>
    `${below
      .map(({ role }, i) => {
        const span = spans[i];
        if (!span) return '';
        if (role === 'framing') return `|${'~'.repeat(span.width - 1)}`;
        return span.isSheet ? fillOf(role, 1, row) : `|${fillOf(role, span.width - 1, row)}`;
      })
      .join('')}|`;
  const at = (from: number, text: string) => `${' '.repeat(Math.max(0, from))}${text}`;
  const windowRow = at(plane - frame, `[${'W'.repeat(Math.max(1, frame - 2))}]`);
  return [
    windowRow,
    windowRow,
    ...buckRows(opening.carried_by.support, face, plane, buck.support),
    wall(0),
    wall(1),
    wall(0),
  ].map((line) => `${INDENT}${line}`.trimEnd());
}

/** What carries the window: over the rough sill and out, or from the face of the framing out. */
function buckRows(support: string, face: number, plane: number, wallSupport: string): string[] {
  switch (support === '' ? wallSupport : support) {
    case 'bears-on-sill':
      return ['='.repeat(plane), '='.repeat(plane)];
    case 'face-fastened':
      return [
        `${' '.repeat(face)}${'='.repeat(plane - face)}`,
        `${`<${'-'.repeat(Math.max(2, Math.floor(face / 2)))}`.padStart(face)}${'='.repeat(plane - face)}`,
      ];
    case 'flange-over-insulation':
      return [];
    default:
      return [`${' '.repeat(face)}${'_'.repeat(plane - face)}`, `${' '.repeat(face)}|/`];
  }
}

/** What the marks mean. */
export function buckKey(wall: Drawn): FigureRow[] {
  const [window, carrier, edge] = buckInWords(wall);
  const support = wall.openings[0]?.carried_by.support;
  const isDrawn = support === 'bears-on-sill' || support === 'face-fastened';
  return [
    { label: '[WW]', value: window?.value ?? '' },
    { label: isDrawn ? '===' : '___', value: carrier?.value ?? '' },
    { label: '~~~', value: 'studs and rough sill' },
    { label: 'outer edge', value: edge?.value ?? '' },
  ];
}

/** The drawing in words: the window, what carries it, and where its outer edge stands. */
export function buckInWords({ buck, openings }: Drawn): FigureRow[] {
  const [opening] = openings;
  if (!opening) return [{ label: 'windows', value: 'none in this wall' }];
  const { outside_framing_in, behind_finished_face_in } = opening.flange_plane;
  return [
    { label: 'window', value: opening.window },
    { label: 'carried by', value: `${opening.carried_by.label}; ${opening.why || buck.why}` },
    {
      label: 'outer edge',
      value: `${size(outside_framing_in)} outside the framing, ${size(behind_finished_face_in)} behind the finished face`,
    },
  ];
}

function edgeAfter(span: { readonly from: number; readonly width: number } | undefined): number {
  return span ? span.from + span.width : 0;
}

function size(value: number): string {
  return `${inches(Math.round(value * 16) / 16)} in.`;
}
