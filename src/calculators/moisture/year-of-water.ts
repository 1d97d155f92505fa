import type { MonthlyCondensation, YearConditions } from './monthly-condensation.ts';
import { AIR_PERMEABILITY } from './permeance.ts';
import { saturationPressure } from './psychrometrics.ts';
import { DRY_KG_M2, NO_RESISTANCE_M, partsOfLayer, type WallLayers } from './wall-planes.ts';

/** What a year of the monthly method comes to. */
export type YearOfWater = Pick<MonthlyCondensation, 'peak_kg_m2' | 'dries_out' | 'unbounded'>;

/** Nearer to saturation than this share of it, the vapour line is stretched to see. */
const CLEAR_OF_SATURATION = 1 - 1e-4;

/**
 * What `monthlyCondensation` comes to, to the last bit, without its months and planes: for many walls at one place whose
 * layers resist heat alike and vapour differently, so that the saturation pressures are worked out once. Not for walls
 * in which no vapour resistance lies between two planes. Input is trusted as there.
 *
 * Source: ISO 13788:2012, clause 6, as in `monthlyCondensation`.
 */
export class WaterThroughYear {
  readonly #year: YearConditions;
  /** Into how many equal parts each layer is cut. */
  readonly #parts: readonly number[];
  readonly #count: number;
  /** By month: at the inside surface, then at the outer end of every part, Pa. */
  readonly #saturation: readonly Float64Array[];
  readonly #inside_pa: Float64Array;
  readonly #outside_pa: Float64Array;
  // Of the wall at hand, by plane; the same arrays for every wall.
  readonly #x: Float64Array;
  readonly #water: Float64Array;
  readonly #vapour: Float64Array;
  readonly #rate: Float64Array;
  readonly #inner: Int16Array;
  // Of the wall at hand, by month.
  readonly #clear: Uint8Array;
  readonly #wet: Uint8Array;

  /** @param wall  the resistances to heat are read, those to vapour are not */
  constructor(wall: Pick<WallLayers, 'r_m2kw' | 'rsi_m2kw' | 'rse_m2kw'>, year: YearConditions) {
    this.#year = year;
    this.#parts = wall.r_m2kw.map(partsOfLayer);
    const planes = [wall.rsi_m2kw];
    let r = wall.rsi_m2kw;
    for (const [layer, layerR] of wall.r_m2kw.entries()) {
      const count = this.#parts[layer] ?? 1;
      for (let part = 1; part <= count; part++) planes.push(r + (layerR * part) / count);
      r += layerR;
    }
    const total = r + wall.rse_m2kw;
    this.#count = planes.length;
    this.#saturation = year.month_s.map((_, m) => {
      const [ti, te] = [year.inside_temp_c[m] ?? Number.NaN, year.outside_temp_c[m] ?? Number.NaN];
      const saturation = new Float64Array(planes.length);
      for (let i = 0; i < planes.length; i++) {
        saturation[i] = saturationPressure(ti - ((ti - te) * (planes[i] ?? Number.NaN)) / total);
      }
      return saturation;
    });
    this.#inside_pa = Float64Array.from(this.#saturation, (of, m) =>
      Math.min(year.inside_pa[m] ?? Number.NaN, at(of, 0)),
    );
    this.#outside_pa = Float64Array.from(this.#saturation, (of, m) => {
      const air = saturationPressure(year.outside_temp_c[m] ?? Number.NaN);
      return Math.min(year.outside_pa[m] ?? Number.NaN, Math.min(at(of, this.#count - 1), air));
    });
    this.#x = new Float64Array(this.#count);
    this.#water = new Float64Array(this.#count);
    this.#vapour = new Float64Array(this.#count);
    this.#rate = new Float64Array(this.#count);
    this.#inner = new Int16Array(this.#count);
    this.#clear = new Uint8Array(year.month_s.length);
    this.#wet = new Uint8Array(year.month_s.length);
  }

  /**
   * @param sd_m  equivalent air layer thickness of each layer, m
   * @returns null where planes lie together without a vapour resistance between them: `monthlyCondensation` can tell
   */
  of(sd_m: readonly number[]): YearOfWater | null {
    if (!this.#place(sd_m)) return null;
    const [clear, wet] = [this.#clear, this.#wet];
    const months = clear.length;
    let wetMonths = 0;
    for (let m = 0; m < months; m++) {
      clear[m] = this.#isClear(m) ? 1 : 0;
      wet[m] = clear[m] === 0 && this.#stretch(m) ? 1 : 0;
      wetMonths += wet[m] ?? 0;
    }
    let [peak_kg_m2, left_kg_m2] = [0, 0];
    const run = (from: number): void => {
      const year = this.#runFrom(from);
      if (year.peak_kg_m2 > peak_kg_m2) ({ peak_kg_m2, left_kg_m2 } = year);
    };
    // Wet all year round: it starts anywhere. Never wet: there is nothing to run.
    if (wetMonths === months) run(0);
    else if (wetMonths > 0) {
      for (let m = 0; m < months; m++) if (wet[m] === 1 && wet[(m + months - 1) % months] === 0) run(m);
    }
    return { peak_kg_m2, dries_out: left_kg_m2 <= DRY_KG_M2, unbounded: false };
  }

  #place(sd_m: readonly number[]): boolean {
    let plane = 0;
    let x = 0;
    for (let layer = 0; layer < sd_m.length; layer++) {
      const sd = sd_m[layer] ?? 0;
      const parts = this.#parts[layer] ?? 1;
      for (let part = 1; part <= parts; part++) {
        plane += 1;
        const x_m = x + (sd * part) / parts;
        if (x_m - at(this.#x, plane - 1) < NO_RESISTANCE_M) return false;
        this.#x[plane] = x_m;
      }
      x += sd;
    }
    return true;
  }

  /** Whether the straight vapour line of a dry wall runs well below saturation: then there is nothing to stretch. */
  #isClear(m: number): boolean {
    const saturation = this.#saturation[m];
    if (!saturation) return false;
    const last = this.#count - 1;
    const inside = at(this.#inside_pa, m);
    const slope = (at(this.#outside_pa, m) - inside) / at(this.#x, last);
    for (let plane = 1; plane < last; plane++) {
      if (!(inside + slope * at(this.#x, plane) < at(saturation, plane) * CLEAR_OF_SATURATION)) return false;
    }
    return true;
  }

  /** The taut vapour line of a month and the rate at which each plane gains. @returns whether it touches saturation */
  #stretch(m: number): boolean {
    const saturation = this.#saturation[m];
    if (!saturation) return false;
    // Runs tens of thousands of times for an answer: no lists that only live for a line.
    const x = this.#x;
    const vapour = this.#vapour;
    const inner = this.#inner;
    const rate = this.#rate;
    const last = this.#count - 1;
    let tail = 0;
    vapour[0] = at(this.#inside_pa, m);
    inner[0] = -1;
    for (let plane = 1; plane <= last; plane++) {
      rate[plane] = 0;
      const p = plane === last ? at(this.#outside_pa, m) : at(saturation, plane);
      vapour[plane] = p;
      const here = at(x, plane);
      while (at(inner, tail) >= 0 && at(this.#water, tail) === 0) {
        const a = at(inner, tail);
        const ax = at(x, a);
        const ap = at(vapour, a);
        if (!((at(vapour, tail) - ap) * (here - ax) >= (p - ap) * (at(x, tail) - ax))) break;
        tail = a;
      }
      inner[plane] = tail;
      tail = plane;
    }
    let fromInside = 0;
    for (let plane = last; at(inner, plane) >= 0; plane = at(inner, plane)) {
      const a = at(inner, plane);
      const flow = (AIR_PERMEABILITY * (at(vapour, a) - at(vapour, plane))) / (at(x, plane) - at(x, a));
      if (plane !== last) rate[plane] = flow - fromInside;
      fromInside = flow;
    }
    return at(inner, last) !== 0;
  }

  #runFrom(start: number): { peak_kg_m2: number; left_kg_m2: number } {
    const months = this.#saturation.length;
    let peak_kg_m2 = 0;
    let held = 0;
    for (let i = 0; i < months; i++) {
      const m = (start + i) % months;
      if (held === 0 && this.#clear[m] === 1) continue;
      this.#passMonth(m);
      held = 0;
      for (let plane = 0; plane < this.#count; plane++) held += at(this.#water, plane);
      peak_kg_m2 = Math.max(peak_kg_m2, held);
    }
    this.#water.fill(0);
    return { peak_kg_m2, left_kg_m2: held };
  }

  /** One month, stopped wherever a plane falls dry. */
  #passMonth(m: number): void {
    let left_s = this.#year.month_s[m] ?? 0;
    while (left_s > 0) {
      this.#stretch(m);
      const firstDry = this.#nextToDry(left_s);
      const step_s = firstDry < 0 ? left_s : -at(this.#water, firstDry) / at(this.#rate, firstDry);
      for (let plane = 0; plane < this.#count; plane++) {
        const rate = at(this.#rate, plane);
        if (rate !== 0) this.#water[plane] = Math.max(0, at(this.#water, plane) + rate * step_s);
      }
      if (firstDry < 0) return;
      this.#water[firstDry] = 0;
      left_s -= step_s;
    }
  }

  #nextToDry(within_s: number): number {
    let first = -1;
    let soonest_s = within_s;
    for (let plane = 0; plane < this.#count; plane++) {
      const rate = at(this.#rate, plane);
      const water = at(this.#water, plane);
      if (rate >= 0 || water === 0) continue;
      const s = -water / rate;
      if (s < soonest_s) {
        soonest_s = s;
        first = plane;
      }
    }
    return first;
  }
}

function at(column: Float64Array | Int16Array, i: number): number {
  return column[i] ?? Number.NaN;
}
