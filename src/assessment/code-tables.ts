import type { BuckTables } from '../calculators/buck/wood-table.ts';
import type { EnergyTable } from '../calculators/energy-code.ts';
import type { FasteningTables } from '../calculators/fastening/fastening-tables.ts';
import type { MoistureTable } from '../calculators/moisture/moisture-table.ts';
import type { ThermalTable } from '../calculators/thermal/thermal-table.ts';
import type { VapourTable } from '../calculators/vapour-table.ts';

/** The code and physics tables that stand as data below `rules/`. */
export type CodeTables = {
  readonly energy: EnergyTable;
  readonly thermal: ThermalTable;
  readonly vapour: VapourTable;
  readonly moisture: MoistureTable;
  readonly fastening: FasteningTables;
  readonly openings: BuckTables;
};
