import { readFileSync } from 'node:fs';
import { type BuckTables, woodTableSchema } from '../../../src/calculators/buck/wood-table.ts';
import { windowsTableSchema } from '../../../src/calculators/window-weight.ts';

function read(name: string): unknown {
  return JSON.parse(readFileSync(new URL(`../../../rules/openings/${name}`, import.meta.url), 'utf8'));
}

export const TABLES: BuckTables = {
  wood: woodTableSchema.parse(read('wood.table.json')),
  windows: windowsTableSchema.parse(read('windows.table.json')),
};
