import { type Joint, Partitions, partitionBy } from '../base/partitions.ts';
import { type FactSlot, factAt, factIds, partAt, partCount } from './fact-slot.ts';
import type { Facts, FactValue } from './rule-schema.ts';

/**
 * Many fact sheets, each put together from parts that sheets share: all walls of an answer have one site, many have one
 * cladding. A fact always stands in the same slot, so that a part is looked at once and not once for every sheet.
 */
export class FactSheets {
  readonly count: number;
  /** How the sheets share the parts of each slot. */
  readonly shape: Partitions;
  /** By slot: each distinct part once. */
  readonly slots: readonly FactSlot[];
  readonly #slotOf = new Map<string, number>();

  /**
   * @param shape  one partition of the sheets for each slot
   * @param slots  by slot, the part of every class
   */
  constructor(shape: Partitions, slots: readonly FactSlot[]) {
    this.count = shape.items;
    this.shape = shape;
    this.slots = slots;
    for (const [slot, parts] of slots.entries()) {
      const count = shape.parts[slot]?.count;
      if (partCount(parts) !== count) {
        throw new Error(`slot ${slot} has ${partCount(parts)} parts for ${count} classes`);
      }
      for (const id of factIds(parts)) {
        if (this.#slotOf.has(id)) throw new Error(`fact ${id} stands in two slots`);
        this.#slotOf.set(id, slot);
      }
    }
  }

  /** @param rows  the parts of each sheet; all rows list the same slots in the same order */
  static ofRows(rows: readonly (readonly Facts[])[]): FactSheets {
    const width = rows[0]?.length ?? 0;
    const shape = new Partitions(
      rows.length,
      Array.from({ length: width }, (_, slot) => partitionBy(rows, (row) => row[slot])),
    );
    const slots = shape.parts.map(({ first }, slot) =>
      Array.from(first, (i) => {
        const part = rows[i]?.[slot];
        if (!part) throw new Error(`fact sheet ${i} has no part in slot ${slot}`);
        return part;
      }),
    );
    return new FactSheets(shape, slots);
  }

  /** Sheets that share nothing. */
  static of(sheets: readonly Facts[]): FactSheets {
    return FactSheets.ofRows(sheets.map((sheet) => [sheet]));
  }

  /** Where a fact stands. A fact that no slot holds is read as missing from every sheet. */
  slotOf(id: string): number {
    return this.#slotOf.get(id) ?? 0;
  }

  /** One fact of one sheet. */
  fact(index: number, id: string): FactValue | undefined {
    const slot = this.slotOf(id);
    const [parts, part] = [this.slots[slot], this.shape.parts[slot]?.at[index] ?? 0];
    return parts && factAt(parts, part, id);
  }

  /** One whole sheet, put together. */
  sheet(index: number): Facts {
    return Object.assign(
      {},
      ...this.slots.map((parts, slot) => partAt(parts, this.shape.parts[slot]?.at[index] ?? 0)),
    );
  }

  /** Sheets told apart by some slots only. */
  joint(slots: readonly number[]): Joint {
    return this.shape.joint(slots);
  }
}
