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
 * Resistance of a batt pressed into a cavity shallower than the batt is thick, h·ft²·°F/Btu.
 *
 * A batt in a cavity at least as deep keeps its label, and no more. Pressed, it has more resistance per inch but
 * less in all; only published pairs are given: R-19 (6.25 in.) in 5.5 in. is about R-18.
 *
 * @throws Refusal for a batt that is not tabulated and for a pair without a published value
 *
 * Source: per row, see the table.
 */
export function compressedBattR(table: ThermalTable, labelled_r: number, cavity_depth_in: number): number {
  const batt = table.batts.find((row) => row.labelled_r === labelled_r);
  if (!batt) {
    throw new Refusal({
      field: 'labelled_r',
      value: String(labelled_r),
      accepted: `Batts are tabulated with labels R-${table.batts.map((row) => row.labelled_r).join(', R-')}.`,
    });
  }
  if (cavity_depth_in >= batt.thickness_in) return batt.labelled_r;
  const pair = batt.compressed.find((row) => row.cavity_depth_in === cavity_depth_in);
  if (pair) return pair.r;
  throw new Refusal({
    field: 'cavity_depth_in',
    value: String(cavity_depth_in),
    accepted: `An R-${labelled_r} batt is ${batt.thickness_in} in. thick; its resistance pressed into less is published for ${
      batt.compressed.map((row) => `${row.cavity_depth_in} in.`).join(', ') || 'no cavity'
    }.`,
  });
}

/**
 * The resistance to calculate with, for cavity insulation known only by its label and its cavity.
 * Labels that are no tabulated batt (blown or sprayed insulation) and batts that fit count in full.
 *
 * @throws Refusal where the label is out of reach in that depth
 */
export function installedCavityR(
  table: ThermalTable,
  labelled_r: number,
  cavity_depth_in: number,
): InstalledBatt {
  plausibleCavityR(table, labelled_r, cavity_depth_in);
  const batt = table.batts.find((row) => row.labelled_r === labelled_r);
  const pair = batt?.compressed.find((row) => row.cavity_depth_in === cavity_depth_in);
  if (!pair) return { r: labelled_r, notes: [] };
  return {
    r: pair.r,
    notes: [
      `An R-${labelled_r} batt pressed into ${cavity_depth_in} in. has about R-${pair.r}; R-${pair.r} was used for the U-factor.`,
    ],
  };
}
