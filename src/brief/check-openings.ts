import { type Issue, Refusal, showValue } from '../base/refusal.ts';
import type { Brief, BriefWindow } from './brief.ts';

/** Opaque wall that an assumed area leaves for each square foot of window, so that the windows don't fill it. */
const WALL_PER_WINDOW_AREA = 5;
/** Taken when nothing is said of wall or windows that would fill it, ft². */
const USUAL_WALL_FT2 = 1500;

/** Area of windows of one kind or many, ft². */
export function windowArea_ft2(windows: readonly BriefWindow[]): number {
  return windows.reduce(
    (sum, { count, width_in, height_in }) => sum + (count * width_in * height_in) / 144,
    0,
  );
}

/** Wall to assume when its area isn't given: the usual, or enough round the windows, ft². */
export function assumedWallArea_ft2(windows: readonly BriefWindow[]): number {
  const round_ft2 = Math.ceil((WALL_PER_WINDOW_AREA * windowArea_ft2(windows)) / 100) * 100;
  return Math.max(USUAL_WALL_FT2, round_ft2);
}

/**
 * Refuses windows that the wall has no room for: one kind larger than the wall, all together larger than the wall, or
 * a unit taller than the roof is high; and a unit that doesn't go into its rough opening where that stays as it is.
 *
 * @throws Refusal naming the window, or `windows` when only all together are too much
 */
export function checkOpenings(brief: Brief): void {
  const { windows, wall_area_ft2, mean_roof_height_ft } = brief;
  const alone = windows.flatMap((window, index) => [
    ...tooLarge(window, index, wall_area_ft2, mean_roof_height_ft),
    ...(brief.rough_opening_can_change ? [] : tooLargeForOpening(window, index)),
  ]);
  if (alone.length > 0) throw new Refusal(alone);
  const together_ft2 = windowArea_ft2(windows);
  if (together_ft2 >= wall_area_ft2) {
    throw new Refusal({
      field: 'windows',
      value: showValue(`${Number(together_ft2.toFixed(1))} ft² of windows`),
      accepted: `Give windows that leave some of the ${wall_area_ft2} ft² of wall, or a larger wall_area_ft2.`,
    });
  }
}

function tooLarge(window: BriefWindow, index: number, wall_area_ft2: number, roof_ft: number): Issue[] {
  const { width_in, height_in } = window;
  if ((width_in * height_in) / 144 >= wall_area_ft2) {
    return [
      {
        field: `windows[${index}]`,
        value: showValue(`${width_in} x ${height_in} in.`),
        accepted: `Give a window smaller than the wall (${wall_area_ft2} ft²), or a larger wall_area_ft2.`,
      },
    ];
  }
  if (height_in > roof_ft * 12) {
    return [
      {
        field: `windows[${index}].height_in`,
        value: showValue(height_in),
        accepted: `Give a height below that of the roof (${roof_ft} ft on average), or a larger mean_roof_height_ft.`,
      },
    ];
  }
  return [];
}

/** A unit as large as the opening that is given for it, or larger, can't be set: one of the two is not right. */
function tooLargeForOpening(window: BriefWindow, index: number): Issue[] {
  return (['width_in', 'height_in'] as const).flatMap((side) => {
    const opening_in = window[`rough_opening_${side}`];
    if (opening_in === null || opening_in > window[side]) return [];
    return [
      {
        field: `windows[${index}].rough_opening_${side}`,
        value: showValue(opening_in),
        accepted: `Give an opening larger than the unit (${window[side]} in.), a smaller unit, or "rough_opening_can_change": true.`,
      },
    ];
  });
}
