import { readFileSync } from 'node:fs';
import {
  claddingOverFoamSchema,
  type FasteningTables,
  fastenersTableSchema,
} from '../../src/calculators/fastening/fastening-tables.ts';

function readJson(name: string): unknown {
  return JSON.parse(readFileSync(new URL(`../../rules/structure/${name}`, import.meta.url), 'utf8'));
}

/** The fastening tables as shipped. */
export function readFasteningTables(): FasteningTables {
  return {
    foam: claddingOverFoamSchema.parse(readJson('cladding-over-foam.table.json')),
    fasteners: fastenersTableSchema.parse(readJson('fasteners.table.json')),
  };
}
