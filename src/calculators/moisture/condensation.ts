import { DAYS_IN_MONTH } from '../../base/days-in-month.ts';
import { Refusal, showValue } from '../../base/refusal.ts';
import { type CondensationInput, monthNumber } from './condensation-input.ts';
import { humidityClassExcess } from './humidity-class.ts';
import type { MoistureTable } from './moisture-table.ts';
import {
  type MonthlyCondensation,
  monthlyCondensation,
  type YearConditions,
} from './monthly-condensation.ts';
import { saturationPressure, vapourPressure } from './psychrometrics.ts';
import { SPLIT_ABOVE_M2KW, type WallLayers } from './wall-planes.ts';

export type CondensationResult = {
  /** From the start month on; `month` as the input names it. Condensate is negative in a drying month. */
  readonly months: readonly {
    readonly month: string | number;
    readonly condensate_kg_m2: number;
    readonly accumulated_kg_m2: number;
  }[];
  /** Null when no month condenses. */
  readonly start_month: string | number | null;
  readonly peak_kg_m2: number;
  readonly dries_out: boolean;
  /** Every boundary between two layers, and planes inside a thick layer where water forms. */
  readonly interfaces: readonly { readonly after: string; readonly peak_kg_m2: number }[];
  readonly source: readonly string[];
  readonly notes: readonly string[];
};

/** Seconds of a calendar month, 1 to 12, in a year of 365 days. */
export function monthSeconds(month: number): number {
  return (DAYS_IN_MONTH[month - 1] ?? Number.NaN) * 86_400;
}

/**
 * Interstitial condensation through a year: the answer of `calc condensation`.
 *
 * @param table  humidity classes and surface resistances with their source
 * @param input  SI: indoor air, twelve outdoor months, layers inside to outside, surface resistances
 * @returns      water by month (kg/m²), start month, peak, whether it dries, peak at each boundary
 * @throws Refusal for months given twice, a wall without vapour resistance, or room air with nothing to hold it
 *         back from a plane below its dew point
 *
 * Source: ISO 13788:2012, clause 6 and annexes A and E.
 */
export function computeCondensation(table: MoistureTable, input: CondensationInput): CondensationResult {
  const months = inCalendarOrder(input);
  refuseWithoutVapourResistance(input);
  const wall: WallLayers = {
    r_m2kw: input.layers.map((layer) => layer.r_m2kw),
    sd_m: input.layers.map((layer) => layer.sd_m),
    rsi_m2kw: input.rsi_m2kw ?? table.surface_resistances.rsi_m2kw,
    rse_m2kw: input.rse_m2kw ?? table.surface_resistances.rse_m2kw,
  };
  const indoor = indoorAir(table, input, months);
  const year: YearConditions = {
    inside_temp_c: indoor.map((air) => air.temp_c),
    inside_pa: indoor.map((air) => air.vapour_pa),
    outside_temp_c: months.map((m) => m.temp_c),
    outside_pa: months.map((m) => vapourPressure(m.temp_c, m.rh)),
    month_s: months.map((m) => monthSeconds(m.number)),
  };
  const result = monthlyCondensation(wall, year);
  if (result.unbounded) refuseUnbounded(input);
  const name = (index: number) => months[index]?.month ?? index + 1;
  return {
    months: result.months.map((m) => ({
      month: name(m.index),
      condensate_kg_m2: m.condensate_kg_m2,
      accumulated_kg_m2: m.accumulated_kg_m2,
    })),
    start_month: result.start_index === null ? null : name(result.start_index),
    peak_kg_m2: result.peak_kg_m2,
    dries_out: result.dries_out,
    interfaces: interfaces(input, result),
    source: [
      'ISO 13788:2012, clause 6 (monthly method with tangents) and annex E (saturation pressure); formulas two-sources, text of the standard from memory',
      ...(usesHumidityClass(input) ? ['ISO 13788:2012, annex A (humidity classes), from memory'] : []),
    ],
    notes: notes(table, input, result, indoor, name),
  };
}

type DatedMonth = CondensationInput['outside'][number] & { readonly number: number; readonly given: number };

/** January to December whatever the order given, each month once. */
function inCalendarOrder(input: CondensationInput): DatedMonth[] {
  const seen = new Set<number>();
  const dated = input.outside.map((month, given) => {
    const number = monthNumber(month.month) ?? 0;
    if (seen.has(number)) {
      throw new Refusal({
        field: `outside[${given}].month`,
        value: showValue(month.month),
        accepted: 'Give each of the twelve months once; this one stands twice.',
      });
    }
    seen.add(number);
    return { ...month, number, given };
  });
  return dated.sort((a, b) => a.number - b.number);
}

function refuseWithoutVapourResistance(input: CondensationInput): void {
  if (input.layers.some((layer) => layer.sd_m >= 1e-6)) return;
  throw new Refusal({
    field: 'layers',
    value: `sd_m ${input.layers.map((layer) => layer.sd_m).join(', ')}`,
    accepted: 'Give at least one layer an sd above 0 m: a wall with no vapour resistance has no vapour line.',
  });
}

function refuseUnbounded(input: CondensationInput): never {
  throw new Refusal({
    field: 'layers[0].sd_m',
    value: showValue(input.layers[0]?.sd_m),
    accepted:
      'Give the inner layers their sd, at least 0.01 m: with none, room air meets a plane below its dew point unhindered and no rate can be named.',
  });
}

type IndoorAir = { readonly temp_c: number; readonly vapour_pa: number; readonly capped: boolean };

function indoorAir(
  table: MoistureTable,
  input: CondensationInput,
  months: readonly DatedMonth[],
): IndoorAir[] {
  return months.map((month) => {
    const inside = Array.isArray(input.inside) ? input.inside[month.given] : input.inside;
    if (!inside) throw new Error('indoor months do not match outdoor months');
    if (inside.rh !== undefined) {
      return { temp_c: inside.temp_c, vapour_pa: vapourPressure(inside.temp_c, inside.rh), capped: false };
    }
    const humidity_class = 'humidity_class' in inside ? (inside.humidity_class ?? 0) : 0;
    const wanted =
      vapourPressure(month.temp_c, month.rh) + humidityClassExcess(table, humidity_class, month.temp_c);
    const limit = saturationPressure(inside.temp_c);
    return { temp_c: inside.temp_c, vapour_pa: Math.min(wanted, limit), capped: wanted > limit };
  });
}

function usesHumidityClass(input: CondensationInput): boolean {
  return !Array.isArray(input.inside) && input.inside.humidity_class !== undefined;
}

function interfaces(input: CondensationInput, result: MonthlyCondensation): CondensationResult['interfaces'] {
  return result.planes.flatMap((plane) => {
    const label = input.layers[plane.layer]?.label;
    const isBoundary = plane.part === plane.parts;
    if (label === undefined || (isBoundary && plane.layer === input.layers.length - 1)) return [];
    if (isBoundary) return [{ after: label, peak_kg_m2: plane.peak_kg_m2 }];
    if (plane.peak_kg_m2 === 0) return [];
    return [{ after: `${label}, ${plane.part}/${plane.parts} of its depth`, peak_kg_m2: plane.peak_kg_m2 }];
  });
}

function notes(
  table: MoistureTable,
  input: CondensationInput,
  result: MonthlyCondensation,
  indoor: readonly IndoorAir[],
  name: (index: number) => string | number,
): string[] {
  const list = (indices: readonly number[]) => indices.map(name).join(', ');
  const found: string[] = [];
  const cappedClass = indoor.flatMap((air, index) => (air.capped ? [index] : []));
  if (cappedClass.length > 0) {
    found.push(
      `With this humidity class the room air would be above saturation in ${list(cappedClass)}; it was cut to saturation. Classes are not made for cooled buildings: give the indoor humidity instead.`,
    );
  }
  if (result.outside_capped.length > 0) {
    found.push(
      `The outdoor vapour pressure is above saturation at the outer face in ${list(result.outside_capped)}; it was cut to saturation.`,
    );
  }
  if (result.inside_capped.length > 0) {
    found.push(
      `Room air would condense on the inside surface in ${list(result.inside_capped)}; that water is not counted here.`,
    );
  }
  if (result.condenses_all_year) found.push('Water forms in every month: the year was begun in January.');
  if (input.outside.some((month) => month.temp_c < 0)) {
    found.push('Relative humidity below 0 °C is read over ice; weather records give it over liquid water.');
  }
  if (usesHumidityClass(input)) {
    found.push(`The humidity class figures are from memory (${table.humidity_classes[0]?.source ?? ''}).`);
  }
  if (input.layers.some((layer) => layer.r_m2kw > SPLIT_ABOVE_M2KW)) {
    found.push(`Layers above ${SPLIT_ABOVE_M2KW} m²·K/W were cut into equal parts.`);
  }
  found.push(
    'The method counts diffusion only: no air leakage, no storage in the materials, no rain, no sun, no change of properties with moisture. Where these matter a hygrothermal simulation decides.',
    'A plane that dries inside a month is released at that moment; drying beyond the water held is not counted.',
  );
  return found;
}
