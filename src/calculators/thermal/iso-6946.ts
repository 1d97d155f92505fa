import { inRange, Refusal } from '../../base/refusal.ts';
import { checkWall, type FramedWall, framedLayerR, parallelPathU } from './parallel-path.ts';
import type { IsoTable } from './thermal-table.ts';

/** One layer as its parts side by side; fractions add up to 1. A layer of one material has one part. */
export type IsoLayer = readonly { readonly fraction: number; readonly r: number }[];

export type IsoLimits = {
  /** Upper limit of total resistance: parallel paths through all layers. */
  readonly upper_r: number;
  /** Lower limit: each bridged layer averaged by area, then summed. */
  readonly lower_r: number;
};

export type IsoCombined = IsoLimits & {
  /** Mean of the two limits. */
  readonly r: number;
  readonly u_factor: number;
  /** Largest relative error of the method, (upper - lower) / (2 r). */
  readonly max_relative_error: number;
};

/**
 * Both resistance limits of a plane element with any number of bridged layers; films are layers too.
 * Resistances in one unit, whichever.
 *
 * @throws Refusal where a layer's fractions don't add up to 1 or a part has no resistance in a bridged layer
 *
 * Source: ISO 6946, combined method (procedure and two worked examples seen in the Scottish building-standards
 * guidance 6.B; the standard's own text not seen).
 * Valid for: layers square to the heat flow, bridges in different layers independent of each other, no metal.
 */
export function iso6946Limits(layers: readonly IsoLayer[]): IsoLimits {
  for (const [index, layer] of layers.entries()) checkLayer(layer, `layers[${index}]`);
  const paths = layers.reduce<{ fraction: number; r: number }[]>(
    (sofar, layer) =>
      sofar.flatMap((path) =>
        layer.map((part) => ({ fraction: path.fraction * part.fraction, r: path.r + part.r })),
      ),
    [{ fraction: 1, r: 0 }],
  );
  const upper_r = 1 / paths.reduce((sum, path) => sum + path.fraction / path.r, 0);
  const lower_r = layers.reduce((sum, layer) => sum + layerR(layer), 0);
  return { upper_r, lower_r };
}

/**
 * Total resistance and U-factor of a wall with one framed layer by the combined method, in the units of the input.
 *
 * @throws Refusal where upper / lower exceeds 1.5, and as for the two limits
 *
 * Source: ISO 6946, combined method. Valid for: non-metal framing, before corrections.
 */
export function iso6946Combined(iso: IsoTable, wall: FramedWall): IsoCombined {
  checkWall(wall);
  return combineLimits(iso, {
    upper_r: 1 / parallelPathU(wall),
    lower_r: wall.series_r + framedLayerR(wall),
  });
}

/**
 * Mean of the two limits with its error.
 *
 * @throws Refusal where upper / lower exceeds 1.5
 */
export function combineLimits(iso: IsoTable, { upper_r, lower_r }: IsoLimits): IsoCombined {
  const most = iso.max_limit_ratio.value;
  const ratio = upper_r / lower_r;
  if (!(ratio <= most)) {
    throw new Refusal({
      field: 'method',
      value: `"iso-6946" with an upper limit of R-${upper_r.toFixed(2)} and a lower limit of R-${lower_r.toFixed(2)} (ratio ${ratio.toFixed(2)})`,
      accepted: `The combined method needs a ratio of at most ${most}; calculate such a wall in two or three dimensions (ISO 10211).`,
    });
  }
  const r = (upper_r + lower_r) / 2;
  return { upper_r, lower_r, r, u_factor: 1 / r, max_relative_error: (upper_r - lower_r) / (2 * r) };
}

function layerR(layer: IsoLayer): number {
  const only = layer.length === 1 ? layer[0] : undefined;
  if (only) return only.r;
  return 1 / layer.reduce((sum, part) => sum + part.fraction / part.r, 0);
}

function checkLayer(layer: IsoLayer, field: string): void {
  const total = layer.reduce((sum, part) => sum + part.fraction, 0);
  if (Math.abs(total - 1) > 1e-6) {
    throw new Refusal({
      field,
      value: `fractions adding up to ${total}`,
      accepted: 'Give fractions that add up to 1.',
    });
  }
  for (const part of layer) {
    inRange(part.fraction, `${field}.fraction`, 0, 1, 'a share of the area');
    inRange(part.r, `${field}.r`, layer.length > 1 ? 1e-6 : 0, 1000, 'a resistance');
  }
}
