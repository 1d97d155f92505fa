import type { CodeTables } from '../assessment/code-tables.ts';
import { woodTableSchema } from '../calculators/buck/wood-table.ts';
import { energyTableSchema } from '../calculators/energy-code.ts';
import { claddingOverFoamSchema, fastenersTableSchema } from '../calculators/fastening/fastening-tables.ts';
import { moistureTableSchema } from '../calculators/moisture/moisture-table.ts';
import { thermalTableSchema } from '../calculators/thermal/thermal-table.ts';
import { vapourTableSchema } from '../calculators/vapour-table.ts';
import { windowsTableSchema } from '../calculators/window-weight.ts';
import { readCodeTable } from './code-table.ts';

type TableName = keyof CodeTables;

/** How each table of {@link CodeTables} is read from the rules folder. */
const READERS: { readonly [K in TableName]: (dir: string) => Promise<CodeTables[K]> } = {
  energy: (dir) => readCodeTable(dir, 'energy/walls.table.json', energyTableSchema),
  thermal: (dir) => readCodeTable(dir, 'energy/thermal.table.json', thermalTableSchema),
  vapour: (dir) => readCodeTable(dir, 'vapour/retarders.table.json', vapourTableSchema),
  moisture: (dir) => readCodeTable(dir, 'vapour/moisture.table.json', moistureTableSchema),
  fastening: async (dir) => ({
    foam: await readCodeTable(dir, 'structure/cladding-over-foam.table.json', claddingOverFoamSchema),
    fasteners: await readCodeTable(dir, 'structure/fasteners.table.json', fastenersTableSchema),
  }),
  openings: async (dir) => ({
    wood: await readCodeTable(dir, 'openings/wood.table.json', woodTableSchema),
    windows: await readCodeTable(dir, 'openings/windows.table.json', windowsTableSchema),
  }),
};

/**
 * Reads one of the tables, for a calculator that needs no other.
 *
 * @param dir  the rules folder, for example from `findRulesDir()`
 * @throws Refusal with file and path for anything that doesn't fit the table's schema
 */
export function loadTable<K extends TableName>(dir: string, name: K): Promise<CodeTables[K]> {
  return READERS[name](dir);
}

/**
 * Reads every code and physics table below the rules folder.
 *
 * @param dir  the rules folder, for example from `findRulesDir()`
 * @throws Refusal with file and path for anything that doesn't fit a table's schema
 */
export async function loadCodeTables(dir: string): Promise<CodeTables> {
  const [energy, thermal, vapour, moisture, fastening, openings] = await Promise.all([
    loadTable(dir, 'energy'),
    loadTable(dir, 'thermal'),
    loadTable(dir, 'vapour'),
    loadTable(dir, 'moisture'),
    loadTable(dir, 'fastening'),
    loadTable(dir, 'openings'),
  ]);
  return { energy, thermal, vapour, moisture, fastening, openings };
}
