import { readFileSync } from 'node:fs';
import { parseInput } from '../../../src/base/parse-input.ts';
import { energyTableSchema } from '../../../src/calculators/energy-code.ts';
import { thermalTableSchema } from '../../../src/calculators/thermal/thermal-table.ts';

function readJson(name: string): unknown {
  return JSON.parse(readFileSync(new URL(`../../../rules/energy/${name}`, import.meta.url), 'utf8'));
}

export const thermalTable = parseInput(thermalTableSchema, readJson('thermal.table.json'));
export const energyTable = parseInput(energyTableSchema, readJson('walls.table.json'));
