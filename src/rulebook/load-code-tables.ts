import type { CodeTables } from '../assessment/code-tables.ts';
import { woodTableSchema } from '../calculators/buck/wood-table.ts';
import { energyTableSchema } from '../calculators/energy-code.ts';
import { claddingOverFoamSchema, fastenersTableSchema } from '../calculators/fastening/fastening-tables.ts';
import { moistureTableSchema } from '../calculators/moisture/moisture-table.ts';
import { thermalTableSchema } from '../calculators/thermal/thermal-table.ts';
import { vapourTableSchema } from '../calculators/vapour-table.ts';
import { windowsTableSchema } from '../calculators/window-weight.ts';
import { CheckedFiles } from './checked-files.ts';
import { readCodeTable } from './code-table.ts';

type TableName = keyof CodeTables;

/** How each table of {@link CodeTables} is read from the rules folder. */
const READERS: { readonly [K in TableName]: (dir: string, checked: CheckedFiles) => Promise<CodeTables[K]> } =
  {
    energy: (dir, checked) => readCodeTable(dir, 'energy/walls.table.json', energyTableSchema, checked),
    thermal: (dir, checked) => readCodeTable(dir, 'energy/thermal.table.json', thermalTableSchema, checked),
    vapour: (dir, checked) => readCodeTable(dir, 'vapour/retarders.table.json', vapourTableSchema, checked),
    moisture: (dir, checked) =>
      readCodeTable(dir, 'vapour/moisture.table.json', moistureTableSchema, checked),
    fastening: async (dir, checked) => ({
      foam: await readCodeTable(
        dir,
        'structure/cladding-over-foam.table.json',
        claddingOverFoamSchema,
        checked,
      ),
      fasteners: await readCodeTable(dir, 'structure/fasteners.table.json', fastenersTableSchema, checked),
    }),
    openings: async (dir, checked) => ({
      wood: await readCodeTable(dir, 'openings/wood.table.json', woodTableSchema, checked),
      windows: await readCodeTable(dir, 'openings/windows.table.json', windowsTableSchema, checked),
    }),
  };

/**
 * Reads one of the tables, for a calculator that needs no other.
 *
 * @param dir      the rules folder, for example from `findRulesDir()`
 * @param checked  tables that need no other check
 * @throws Refusal with file and path for anything that doesn't fit the table's schema
 */
export function loadTable<K extends TableName>(
  dir: string,
  name: K,
  checked = new CheckedFiles(),
): Promise<CodeTables[K]> {
  return READERS[name](dir, checked);
}

/**
 * Reads every code and physics table below the rules folder.
 *
 * @param dir      the rules folder, for example from `findRulesDir()`
 * @param checked  tables that need no other check
 * @throws Refusal with file and path for anything that doesn't fit a table's schema
 */
export async function loadCodeTables(dir: string, checked = new CheckedFiles()): Promise<CodeTables> {
  const [energy, thermal, vapour, moisture, fastening, openings] = await Promise.all([
    loadTable(dir, 'energy', checked),
    loadTable(dir, 'thermal', checked),
    loadTable(dir, 'vapour', checked),
    loadTable(dir, 'moisture', checked),
    loadTable(dir, 'fastening', checked),
    loadTable(dir, 'openings', checked),
  ]);
  return { energy, thermal, vapour, moisture, fastening, openings };
}
