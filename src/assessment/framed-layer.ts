import type { Brief } from '../brief/brief.ts';
import { installedCavityR } from '../calculators/thermal/cavity-insulation.ts';
import { framingFraction, woodFramingR } from '../calculators/thermal/framing-fraction.ts';
import { parallelPathU } from '../calculators/thermal/parallel-path.ts';
import { steelCavity, steelFrameU } from '../calculators/thermal/steel-frame.ts';
import type { SteelCavity, ThermalTable } from '../calculators/thermal/thermal-table.ts';

/** The studs with what lies between them: the same for every candidate of an answer. */
export type FramedLayer = {
  readonly method: 'parallel-path' | 'steel-correction-factor';
  readonly label: string;
  /** Of the cavity insulation as installed, h·ft²·°F/Btu. */
  readonly cavity_r: number;
  readonly framing_fraction: number | null;
  /** Clear-wall U-factor for everything else in series, Btu/(h·ft²·°F). */
  readonly uFactor: (series_r: number) => number;
  readonly source: readonly string[];
  readonly notes: readonly string[];
};

/**
 * Chooses the method by the framing: parallel paths for wood, tabulated effective resistances for steel.
 *
 * @throws Refusal where the cavity can't hold that insulation or the steel cavity is not tabulated
 */
export function framedLayer(brief: Brief, table: ThermalTable): FramedLayer {
  const { material, depth_in, spacing_in } = brief.framing;
  const installed = installedCavityR(table, brief.cavity_insulation_r, depth_in);
  const cavity_r = installed.r > 0 ? installed.r : table.empty_cavity_r.value;
  const filling =
    brief.cavity_insulation_r > 0 ? `R-${brief.cavity_insulation_r} between` : 'empty bays between';
  if (material === 'steel') {
    const row = steelRow(table, depth_in, spacing_in, brief.cavity_insulation_r);
    return {
      method: 'steel-correction-factor',
      label: `${filling} steel studs ${depth_in} in. deep at ${spacing_in} in.`,
      cavity_r: row.insulation_r > 0 ? row.insulation_r : table.empty_cavity_r.value,
      framing_fraction: null,
      uFactor: (series_r) =>
        steelFrameU(table.steel_cavities, {
          series_r,
          depth_in: row.depth_in,
          spacing_in: row.spacing_in,
          insulation_r: row.insulation_r,
        }),
      source: [row.source],
      notes:
        row.insulation_r === brief.cavity_insulation_r
          ? []
          : [
              `R-${brief.cavity_insulation_r} between steel studs is not tabulated; the next lower tabulated R-${row.insulation_r} was used.`,
            ],
    };
  }
  const fraction = framingFraction(
    table,
    'wood',
    spacing_in,
    brief.thermal_assumptions.framing_style ?? 'standard',
  );
  const framing_r = woodFramingR(table, depth_in);
  return {
    method: 'parallel-path',
    label: `${filling} wood studs ${depth_in} in. deep at ${spacing_in} in.`,
    cavity_r,
    framing_fraction: fraction.framing_fraction,
    uFactor: (series_r) =>
      parallelPathU({ series_r, cavity_r, framing_r, framing_fraction: fraction.framing_fraction }),
    source: ['ASHRAE Handbook Fundamentals, parallel-path method', fraction.source],
    notes: [...installed.notes, ...fraction.notes],
  };
}

/** Nominal 3-5/8 in. studs are the 3-1/2 in. row of the standard. */
const STEEL_DEPTH_ALIASES: Readonly<Record<number, number>> = { 3.625: 3.5 };

/** The tabulated row, or the one with the next lower cavity insulation of that very depth and spacing. */
function steelRow(
  table: ThermalTable,
  depth_in: number,
  spacing_in: number,
  insulation_r: number,
): SteelCavity {
  const depth = STEEL_DEPTH_ALIASES[depth_in] ?? depth_in;
  const lower = table.steel_cavities
    .filter((r) => r.depth_in === depth && r.spacing_in === spacing_in && r.insulation_r <= insulation_r)
    .sort((a, b) => b.insulation_r - a.insulation_r)[0];
  return lower ?? steelCavity(table.steel_cavities, { depth_in: depth, spacing_in, insulation_r });
}
