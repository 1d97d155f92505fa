import type { Insulation } from './catalogue-schema.ts';

/** One way to reach a thickness with boards from the market. */
export type InsulationBuild = {
  readonly insulation: Insulation;
  /** Inner layer first. */
  readonly boards_in: readonly number[];
  readonly thickness_in: number;
  /** Nominal resistance at 75 °F mean, h·ft²·°F/Btu. */
  readonly r: number;
};

/** Thickest exterior insulation that is drawn up, in. */
export const THICKEST_BUILD_IN = 8;

/** Up to here two boards do the same with less handling (judgement). */
const THREE_LAYERS_ABOVE_IN = 4;

const total = (boards_in: readonly number[]) => boards_in.reduce((sum, t) => sum + t, 0);

/** All sensible board builds of one insulation: a single board, or two or three equal ones with offset joints. */
export function insulationBuilds(insulation: Insulation): InsulationBuild[] {
  const sizes = [...insulation.market_thicknesses_in].sort((a, b) => a - b);
  const stacks: number[][] = sizes.map((t) => [t]);
  if (insulation.max_layers >= 2) {
    stacks.push(...sizes.map((t) => [t, t]));
  }
  if (insulation.max_layers >= 3) {
    stacks.push(...sizes.map((t) => [t, t, t]).filter((boards) => total(boards) > THREE_LAYERS_ABOVE_IN));
  }
  const seen = new Set<string>();
  return stacks.flatMap((boards_in) => {
    const thickness_in = total(boards_in);
    const key = `${boards_in.length}/${thickness_in.toFixed(3)}`;
    if (thickness_in > THICKEST_BUILD_IN || seen.has(key)) return [];
    seen.add(key);
    return [{ insulation, boards_in, thickness_in, r: thickness_in * insulation.r_per_in.value }];
  });
}
