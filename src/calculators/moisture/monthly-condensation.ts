import { saturationPressure } from './psychrometrics.ts';
import { stretchVapourLine } from './vapour-line.ts';
import {
  DRY_KG_M2,
  type Node,
  type Plane,
  type WallLayers,
  type WallPlanes,
  wallPlanes,
} from './wall-planes.ts';

/** Twelve months as plain arrays, in calendar order from any month. */
export type YearConditions = {
  readonly inside_temp_c: readonly number[];
  readonly inside_pa: readonly number[];
  readonly outside_temp_c: readonly number[];
  readonly outside_pa: readonly number[];
  /** Length of each month, s. */
  readonly month_s: readonly number[];
};

export type CondensationMonth = {
  /** Index of the month in the given arrays. */
  readonly index: number;
  /** Water gained in the month by all planes together, kg/m²; negative while drying. */
  readonly condensate_kg_m2: number;
  /** Water held at the end of the month, kg/m². */
  readonly accumulated_kg_m2: number;
  /** Vapour that entered at the inside surface and left at the outside surface, kg/m². */
  readonly vapour_in_kg_m2: number;
  readonly vapour_out_kg_m2: number;
};

export type MonthlyCondensation = {
  /** From the start month on; in the given order when no month condenses. */
  readonly months: readonly CondensationMonth[];
  /** Index of the first condensing month after a dry one; null when no month condenses. */
  readonly start_index: number | null;
  readonly condenses_all_year: boolean;
  readonly peak_kg_m2: number;
  /** Whether nothing is left after twelve months. */
  readonly dries_out: boolean;
  /** Peak at every plane: true boundaries between layers first-class, inner planes of thick layers too. */
  readonly planes: readonly Readonly<Plane>[];
  /** Months whose outdoor vapour pressure was above saturation and was cut to it. */
  readonly outside_capped: readonly number[];
  /** Months in which the room air would condense on the inside surface: cut to saturation there, not counted. */
  readonly inside_capped: readonly number[];
  /** A month's room air meets a plane below its dew point with no vapour resistance between: no rate exists. */
  readonly unbounded: boolean;
};

type Month = {
  readonly index: number;
  readonly seconds: number;
  readonly inside_pa: number;
  readonly outside_pa: number;
  /** Saturation pressure of the coldest plane of each node, and that plane. */
  readonly saturation_pa: readonly number[];
  readonly coldest: readonly Plane[];
};

/**
 * Interstitial condensation through a year by the monthly diffusion method, on plain arrays: the fast form.
 * Input is trusted: equal lengths, twelve months, temperatures in -60 to 80 °C, sd ≥ 0 with a sum above 0.
 *
 * In each month the vapour line is stretched (see {@link stretchVapourLine}); water held at a plane pins it to
 * saturation; a plane that dries inside a month is released at that moment and the rest of the month is worked
 * with the new line, so that inflow, outflow and storage balance.
 * The year starts, with a dry wall, in the first condensing month after a dry one. A wall with two wet seasons
 * is started in each, and the start with the higher peak is reported.
 *
 * Source: ISO 13788:2012, clause 6. Not covered by the method: air leakage, storage in the materials, rain, sun.
 */
export function monthlyCondensation(wall: WallLayers, year: YearConditions): MonthlyCondensation {
  const planes = wallPlanes(wall);
  const flags = { outside_capped: [] as number[], inside_capped: [] as number[], unbounded: false };
  const months = year.month_s.map((seconds, index) => prepareMonth(planes, year, index, seconds, flags));
  const condenses = months.map((month) => {
    loadMonth(planes, month);
    return stretchVapourLine(planes, month.inside_pa, month.outside_pa).touches;
  });
  const best = startIndices(condenses)
    .map((start) => runYear(planes, [...months.slice(start), ...months.slice(0, start)]))
    .reduce((worst, run) => (run.peak_kg_m2 > worst.peak_kg_m2 ? run : worst));
  const anyCondenses = condenses.includes(true);
  return {
    months: best.months,
    start_index: anyCondenses ? (best.months[0]?.index ?? null) : null,
    condenses_all_year: !condenses.includes(false),
    peak_kg_m2: best.peak_kg_m2,
    dries_out: (best.months.at(-1)?.accumulated_kg_m2 ?? 0) <= DRY_KG_M2,
    planes: best.planes,
    ...flags,
  };
}

function startIndices(condenses: readonly boolean[]): number[] {
  const starts = condenses.flatMap((isWet, i) => (isWet && condenses.at(i - 1) === false ? [i] : []));
  return starts.length > 0 ? starts : [0];
}

function prepareMonth(
  wall: WallPlanes,
  year: YearConditions,
  index: number,
  seconds: number,
  flags: { outside_capped: number[]; inside_capped: number[]; unbounded: boolean },
): Month {
  const ti = year.inside_temp_c[index] ?? Number.NaN;
  const te = year.outside_temp_c[index] ?? Number.NaN;
  const saturation_pa: number[] = [];
  const coldest: Plane[] = [];
  for (const node of wall.nodes) {
    let lowest = Number.POSITIVE_INFINITY;
    let at: Plane | undefined;
    for (const plane of node.planes) {
      const p = saturationPressure(ti - ((ti - te) * plane.r_from_inside_m2kw) / wall.r_total_m2kw);
      if (p < lowest) {
        lowest = p;
        at = plane;
      }
    }
    saturation_pa.push(lowest);
    if (at) coldest.push(at);
  }
  const inside_pa = year.inside_pa[index] ?? Number.NaN;
  const outside_pa = year.outside_pa[index] ?? Number.NaN;
  const insideLimit = saturation_pa[0] ?? 0;
  const outsideLimit = Math.min(saturation_pa.at(-1) ?? 0, saturationPressure(te));
  if (inside_pa > insideLimit) {
    flags.inside_capped.push(index);
    if (coldest[0] && coldest[0].layer >= 0) flags.unbounded = true;
  }
  if (outside_pa > outsideLimit) flags.outside_capped.push(index);
  return {
    index,
    seconds,
    inside_pa: Math.min(inside_pa, insideLimit),
    outside_pa: Math.min(outside_pa, outsideLimit),
    saturation_pa,
    coldest,
  };
}

function loadMonth(wall: WallPlanes, month: Month): void {
  for (const node of wall.nodes) node.saturation_pa = month.saturation_pa[node.index] ?? Number.NaN;
}

function runYear(wall: WallPlanes, months: readonly Month[]) {
  for (const node of wall.nodes) {
    node.water_kg_m2 = 0;
    for (const plane of node.planes) plane.peak_kg_m2 = 0;
  }
  let before = 0;
  let peak_kg_m2 = 0;
  const done = months.map((month): CondensationMonth => {
    const flows = passMonth(wall, month);
    let held = 0;
    for (const node of wall.nodes) {
      held += node.water_kg_m2;
      const plane = month.coldest[node.index];
      if (plane && node.water_kg_m2 > plane.peak_kg_m2) plane.peak_kg_m2 = node.water_kg_m2;
    }
    const gained = held - before;
    before = held;
    peak_kg_m2 = Math.max(peak_kg_m2, held);
    return { index: month.index, condensate_kg_m2: gained, accumulated_kg_m2: held, ...flows };
  });
  const planes = wall.nodes.flatMap((node) => node.planes.map((plane) => ({ ...plane })));
  return { months: done, peak_kg_m2, planes };
}

/** Runs one month, stopping wherever a plane falls dry. Rates only fall after that, so each plane stops it once at most. */
function passMonth(wall: WallPlanes, month: Month): { vapour_in_kg_m2: number; vapour_out_kg_m2: number } {
  loadMonth(wall, month);
  let left_s = month.seconds;
  let vapour_in_kg_m2 = 0;
  let vapour_out_kg_m2 = 0;
  while (left_s > 0) {
    const flow = stretchVapourLine(wall, month.inside_pa, month.outside_pa);
    const firstDry = nextToDry(wall.nodes, left_s);
    const step_s = firstDry ? -firstDry.water_kg_m2 / firstDry.rate : left_s;
    vapour_in_kg_m2 += flow.in * step_s;
    vapour_out_kg_m2 += flow.out * step_s;
    for (const node of wall.nodes) {
      if (node.rate !== 0) node.water_kg_m2 = Math.max(0, node.water_kg_m2 + node.rate * step_s);
    }
    if (!firstDry) break;
    firstDry.water_kg_m2 = 0;
    left_s -= step_s;
  }
  return { vapour_in_kg_m2, vapour_out_kg_m2 };
}

function nextToDry(nodes: readonly Node[], within_s: number): Node | null {
  let first: Node | null = null;
  let soonest_s = within_s;
  for (const node of nodes) {
    if (node.rate >= 0 || node.water_kg_m2 === 0) continue;
    const s = -node.water_kg_m2 / node.rate;
    if (s < soonest_s) {
      soonest_s = s;
      first = node;
    }
  }
  return first;
}
