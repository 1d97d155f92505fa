import type { BriefWindow } from '../brief/brief.ts';
import { openingPerimeter } from '../calculators/thermal/whole-wall.ts';
import { unitArea_ft2, type WindowWeight, windowWeight } from '../calculators/window-weight.ts';
import type { AnswerContext } from './answer-context.ts';
import { requiredCornerFactor } from './buck-corner.ts';

/** One kind of window of the job, weighed. */
export type JobWindow = BriefWindow & {
  /** "36 x 60 in. casement, triple-glazed, flanged" */
  readonly words: string;
  /** What its make-up weighs, whether or not a weight was given. */
  readonly estimate: WindowWeight;
  /** The weight it is judged by: as given, or the high end of the estimate. */
  readonly judged_weight_lb: number;
  readonly area_ft2: number;
  /** At or over the trade's border in weight, or in area or weight. */
  readonly is_heavy: boolean;
  readonly is_large: boolean;
  /** Fixed, triple-glazed, and at or over the trade's border in area or weight. */
  readonly is_large_fixed_triple: boolean;
};

/** The windows of a job and what they ask of any wall; the same for every candidate. */
export type WindowsPart = {
  readonly windows: readonly JobWindow[];
  readonly count: number;
  readonly perimeter_ft: number;
  /** Null when there is no window. */
  readonly heaviest_lb: number | null;
  /** Doors not counted: 0 when there is nothing but doors, null when there is no window at all. */
  readonly heaviest_but_doors_lb: number | null;
  readonly largest_but_doors_ft2: number | null;
  readonly any_flangeless: boolean;
  readonly any_door: boolean;
  readonly any_large_fixed_triple: boolean;
  /** Doors not counted. */
  readonly all_large_fixed_triple: boolean;
  readonly heaviest_large_fixed_triple_lb: number;
  /** What the inside of an opening's coldest corner needs at this site; null when the months are not known. */
  readonly required_temp_factor: number | null;
};

/** Weighs the windows of a job. */
export function windowsPart(context: AnswerContext): WindowsPart {
  const windows = context.brief.windows.map((window) => jobWindow(window, context));
  const most = (values: readonly number[]) => (values.length > 0 ? Math.max(...values) : null);
  const butDoors = windows.filter((w) => w.operation !== 'door');
  const mostButDoors = (values: readonly number[]) => (windows.length === 0 ? null : (most(values) ?? 0));
  const largeTriples = windows.filter((w) => w.is_large_fixed_triple);
  return {
    windows,
    count: windows.reduce((sum, window) => sum + window.count, 0),
    perimeter_ft: openingPerimeter(windows),
    heaviest_lb: most(windows.map((w) => w.judged_weight_lb)),
    heaviest_but_doors_lb: mostButDoors(butDoors.map((w) => w.judged_weight_lb)),
    largest_but_doors_ft2: mostButDoors(butDoors.map((w) => w.area_ft2)),
    any_flangeless: windows.some((w) => w.mounting === 'flangeless'),
    any_door: windows.some((w) => w.operation === 'door'),
    any_large_fixed_triple: largeTriples.length > 0,
    all_large_fixed_triple: largeTriples.length > 0 && largeTriples.length === butDoors.length,
    heaviest_large_fixed_triple_lb: most(largeTriples.map((w) => w.judged_weight_lb)) ?? 0,
    required_temp_factor: requiredCornerFactor(context),
  };
}

function jobWindow(window: BriefWindow, { tables }: AnswerContext): JobWindow {
  const table = tables.openings.windows;
  const estimate = windowWeight({ ...window, lite: window.lite_in }, table);
  const judged_weight_lb = window.weight_lb ?? estimate.high_lb;
  const area_ft2 = unitArea_ft2(window.width_in, window.height_in);
  const is_heavy = judged_weight_lb >= table.large.weight_lb;
  const is_large = is_heavy || area_ft2 >= table.large.area_ft2;
  return {
    ...window,
    words: windowWords(window),
    estimate,
    judged_weight_lb,
    area_ft2,
    is_heavy,
    is_large,
    is_large_fixed_triple: is_large && window.glazing === 'triple' && window.operation === 'fixed',
  };
}

/** "36 x 60 in. casement, triple-glazed, flanged" */
export function windowWords({ width_in, height_in, operation, glazing, mounting }: BriefWindow): string {
  return `${width_in} x ${height_in} in. ${operation}, ${glazing}-glazed, ${mounting}`;
}
