import { inRange, Refusal } from '../../base/refusal.ts';
import type { ThermalTable } from './thermal-table.ts';

export type InstalledBatt = {
  /** Resistance as it sits in the cavity, h·ft²·°F/Btu. */
  readonly r: number;
  readonly notes: readonly string[];
};

/**
 * Refuses cavity insulation that no material could reach in the depth given.
 *
 * @param insulation_r  h·ft²·°F/Btu
 * @param depth_in      of the cavity, in.
 * @returns             the insulation_r, passed through
 */
export function plausibleCavityR(table: ThermalTable, insulation_r: number, depth_in: number): number {
  inRange(insulation_r, 'cavity.insulation_r', 0, 200, 'h·ft²·°F/Btu');
  inRange(depth_in, 'cavity.depth_in', 0.5, 24, 'inches');
  const most = table.max_cavity_r_per_in.value;
  if (insulation_r <= most * depth_in) return insulation_r;
  throw new Refusal({
    field: 'cavity.insulation_r',
    value: `${insulation_r} in a cavity ${depth_in} in. deep (R-${(insulation_r / depth_in).toFixed(1)} per inch)`,
    accepted: `Give at most R-${most} per inch of depth, here R-${Math.floor(most * depth_in * 10) / 10}; no cavity insulation reaches more.`,
  });
}

/**
 * The resistance to calculate with, for cavity insulation known only by its label and its cavity.
 *
 * A batt pressed into less than its thickness has more resistance per inch but less in all; only published pairs are
 * used: R-19 (6.25 in.) in 5.5 in. is about R-18. Every other label counts in full, since it may be blown or sprayed; a
 * note says so where a batt of that label would not fit. That no batt reaches so much is for a rule to say.
 *
 * @param labelled_r       h·ft²·°F/Btu
 * @param cavity_depth_in  in.
 * @throws Refusal where the label is out of reach in that depth
 *
 * Source: per row, see the table.
 */
export function installedCavityR(
  table: ThermalTable,
  labelled_r: number,
  cavity_depth_in: number,
): InstalledBatt {
  plausibleCavityR(table, labelled_r, cavity_depth_in);
  const batt = table.batts.find((row) => row.labelled_r === labelled_r);
  if (!batt || batt.thickness_in <= cavity_depth_in) return { r: labelled_r, notes: [] };
  const pair = batt.compressed.find((row) => row.cavity_depth_in === cavity_depth_in);
  const pressed = `An R-${labelled_r} batt pressed into ${cavity_depth_in} in.`;
  if (!pair) {
    return {
      r: labelled_r,
      notes: [
        `${pressed} has less than its label, for it is ${batt.thickness_in} in. thick (from memory), and how much less is not tabulated. R-${labelled_r} was counted in full, as blown or sprayed insulation would have it.`,
      ],
    };
  }
  return {
    r: pair.r,
    notes: [`${pressed} has about R-${pair.r}; R-${pair.r} was used for the U-factor.`],
  };
}
