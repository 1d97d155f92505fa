import type { Facts, FactValue } from './rule-schema.ts';

/** The distinct parts of one slot: as fact sheets, or as one column of values for each fact (leaner for many parts). */
export type FactSlot = readonly Facts[] | FactTable;

export type FactTable = {
  readonly count: number;
  readonly columns: Readonly<Record<string, ArrayLike<FactValue>>>;
};

export function partCount(slot: FactSlot): number {
  return isTable(slot) ? slot.count : slot.length;
}

/** Facts that stand in the slot. */
export function factIds(slot: FactSlot): string[] {
  return Object.keys(isTable(slot) ? slot.columns : (slot[0] ?? {}));
}

/** A fact of every part; undefined where a part lacks it. */
export function factColumn(slot: FactSlot, id: string): ArrayLike<FactValue | undefined> {
  return isTable(slot) ? (slot.columns[id] ?? []) : slot.map((part) => part[id]);
}

/** One fact of one part. */
export function factAt(slot: FactSlot, index: number, id: string): FactValue | undefined {
  return isTable(slot) ? slot.columns[id]?.[index] : slot[index]?.[id];
}

/** The facts of one part. */
export function partAt(slot: FactSlot, index: number): Facts {
  if (!isTable(slot)) return slot[index] ?? {};
  const facts: Record<string, FactValue> = {};
  for (const [id, values] of Object.entries(slot.columns)) {
    const value = values[index];
    if (value !== undefined) facts[id] = value;
  }
  return facts;
}

function isTable(slot: FactSlot): slot is FactTable {
  return !Array.isArray(slot);
}
