import { addedOutside } from '../advice/added-outside.ts';
import type { DrawnWall, Layer } from './record-document.ts';
import { spreadKeys } from './spread-keys.ts';

/** Where everything of the drawing stands, in drawing units. */
export type WallSection = {
  readonly width: number;
  readonly height: number;
  /** Drawing units to an inch. */
  readonly scale: number;
  readonly top: number;
  readonly bottom: number;
  readonly layers: readonly {
    readonly layer: Layer;
    readonly key: number;
    readonly x: number;
    readonly width: number;
    /** Too thin to show by its own width: drawn as a line through its middle. */
    readonly isSheet: boolean;
    readonly keyX: number;
  }[];
  readonly overall: { readonly from: number; readonly to: number; readonly inches: number };
  /** Null when nothing is added or the added layers are the whole wall. */
  readonly added: {
    readonly from: number;
    readonly to: number;
    readonly inches: number;
    readonly outside: string;
  } | null;
};

export const KEY_RADIUS = 11;
export const KEY_Y = 18;
const KEY_GAP = 2 * KEY_RADIUS + 4;
const MARGIN = 56;
const WIDEST = 520;
const MOST_PER_INCH = 60;
const TOP = 64;
const WALL_HEIGHT = 150;
const BELOW = 112;
const THINNEST_SHOWN = 2;

/**
 * A horizontal cut through a wall at one scale for all layers, inside on the left.
 *
 * @returns null when no layer has a thickness
 */
export function wallSection({ layers, added_thickness_in }: DrawnWall): WallSection | null {
  const inches = layers.map((layer) => Math.max(0, layer.thickness_in));
  const total_in = inches.reduce((sum, one) => sum + one, 0);
  if (!(total_in > 0)) return null;
  const room = Math.max(WIDEST, layers.length * KEY_GAP);
  const scale = Math.min(room / total_in, MOST_PER_INCH);
  const drawn = total_in * scale;
  const keysWidth = (layers.length - 1) * KEY_GAP;
  const width = Math.max(drawn, keysWidth) + 2 * MARGIN;
  const left = (width - drawn) / 2;

  const starts: number[] = [];
  let x = left;
  for (const one of inches) {
    starts.push(x);
    x += one * scale;
  }
  const centres = inches.map((one, i) => (starts[i] ?? 0) + (one * scale) / 2);
  const keys = spreadKeys(centres, KEY_GAP, MARGIN, width - MARGIN);
  const hasAdded = added_thickness_in > 0 && added_thickness_in < total_in - 1e-9;
  return {
    width,
    height: TOP + WALL_HEIGHT + BELOW,
    scale,
    top: TOP,
    bottom: TOP + WALL_HEIGHT,
    layers: layers.map((layer, i) => {
      const own = (inches[i] ?? 0) * scale;
      return {
        layer,
        key: i + 1,
        x: starts[i] ?? 0,
        width: own,
        isSheet: own < THINNEST_SHOWN,
        keyX: keys[i] ?? 0,
      };
    }),
    overall: { from: left, to: x, inches: total_in },
    added: hasAdded
      ? {
          from: x - added_thickness_in * scale,
          to: x,
          inches: added_thickness_in,
          outside: addedOutside(layers),
        }
      : null,
  };
}
