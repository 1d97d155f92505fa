import { inRange } from '../../base/refusal.ts';
import { type Interface, type ResistanceLayer, temperatureProfile } from './temperature-profile.ts';
import type { TemperatureCurve } from './thermal-table.ts';

export type RAtTemperature = {
  /** h·ft²·°F/Btu */
  readonly r: number;
  /** Over the rated value at 75 °F. */
  readonly factor: number;
  /** True outside the measured temperatures, where the nearest measured value was kept. */
  readonly is_beyond_measurements: boolean;
};

/** Mean temperature at which insulation is rated, °F. */
const RATING_TEMP_F = 75;

/**
 * Resistance of insulation at a mean temperature, from its rated value at 75 °F and the measured curve of its kind,
 * in a straight line between points. For the winter temperature profile only: the energy code uses the rated value.
 *
 * Outside the measured range the nearest point's value is kept and the result says so. For polyisocyanurate below
 * 25 °F that may still be too favourable: its resistance is known to go on falling.
 *
 * @param rated_r      at 75 °F, h·ft²·°F/Btu
 * @param mean_temp_f  mean of the two faces of the layer, °F (-80 to 160)
 *
 * Source: per curve, see the table.
 */
export function temperatureDependentR(
  curve: TemperatureCurve,
  rated_r: number,
  mean_temp_f: number,
): RAtTemperature {
  inRange(rated_r, 'rated_r', 0, 1000, 'h·ft²·°F/Btu');
  inRange(mean_temp_f, 'mean_temp_f', -80, 160, '°F');
  const factor = perInch(curve, mean_temp_f) / perInch(curve, RATING_TEMP_F);
  const temps = curve.points.map((point) => point.mean_temp_f);
  return {
    r: rated_r * factor,
    factor,
    is_beyond_measurements: mean_temp_f < Math.min(...temps) || mean_temp_f > Math.max(...temps),
  };
}

function perInch(curve: TemperatureCurve, mean_temp_f: number): number {
  let below = curve.points[0];
  for (const point of curve.points) {
    if (point.mean_temp_f >= mean_temp_f) {
      if (!below || below === point) return point.r_per_in;
      const share = (mean_temp_f - below.mean_temp_f) / (point.mean_temp_f - below.mean_temp_f);
      return below.r_per_in + share * (point.r_per_in - below.r_per_in);
    }
    below = point;
  }
  return below?.r_per_in ?? Number.NaN;
}

/** A layer whose resistance may follow its temperature. */
export type WinterLayer = ResistanceLayer & { readonly curve?: TemperatureCurve };

export type WinterProfile = {
  /** As settled: rated values changed to those at the layers' own mean temperatures. */
  readonly layers: readonly ResistanceLayer[];
  readonly interfaces: readonly Interface[];
  /** Labels of layers colder or warmer than their curve was measured at. */
  readonly beyond_measurements: readonly string[];
};

/** Largest change of any plane that ends the iteration, °F. */
const SETTLED_F = 0.001;
const MOST_ROUNDS = 100;

/**
 * Temperature profile with each curved layer at its own mean temperature, found by iteration.
 *
 * @param layers       inside to outside, both films included, `r` rated at 75 °F
 * @param creditGains  false keeps a layer that gains in the cold at its rated value (the cautious reading: a warmer
 *                     sheathing should not rest on a gain that is not certain)
 * @throws Refusal as for the plain profile
 */
export function winterProfile(
  layers: readonly WinterLayer[],
  inside_temp_f: number,
  outside_temp_f: number,
  creditGains: boolean,
): WinterProfile {
  let current: readonly ResistanceLayer[] = layers;
  let interfaces = temperatureProfile(current, inside_temp_f, outside_temp_f);
  let beyond: string[] = [];
  for (let round = 0; round < MOST_ROUNDS; round += 1) {
    beyond = [];
    const next = layers.map((layer, index) => {
      if (!layer.curve) return layer;
      const before = interfaces[index - 1]?.temp_f ?? inside_temp_f;
      const after = interfaces[index]?.temp_f ?? outside_temp_f;
      const at = temperatureDependentR(layer.curve, layer.r, (before + after) / 2);
      if (at.is_beyond_measurements) beyond.push(layer.label);
      return { label: layer.label, r: creditGains ? at.r : Math.min(at.r, layer.r) };
    });
    const profile = temperatureProfile(next, inside_temp_f, outside_temp_f);
    const change = Math.max(
      0,
      ...profile.map((plane, i) => Math.abs(plane.temp_f - (interfaces[i]?.temp_f ?? 0))),
    );
    current = next;
    interfaces = profile;
    if (change < SETTLED_F) break;
  }
  return {
    layers: current.map(({ label, r }) => ({ label, r })),
    interfaces,
    beyond_measurements: beyond,
  };
}
