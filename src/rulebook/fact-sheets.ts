import type { Facts } from './rule-schema.ts';

/** The facts of one slot, each distinct part once, and which of them every sheet holds. */
export type Slot = { readonly parts: readonly Facts[]; readonly at: Uint32Array };

/**
 * Many fact sheets, each put together from parts that sheets share: all walls of an answer have one site, many have one
 * cladding. A fact always stands in the same slot, so that a part is looked at once and not once for every sheet.
 */
export class FactSheets {
  readonly count: number;
  readonly #rows: readonly (readonly Facts[])[];
  readonly #slots: readonly Slot[];
  readonly #slotOf = new Map<string, number>();

  /** @param rows  the parts of each sheet; all rows list the same slots in the same order */
  constructor(rows: readonly (readonly Facts[])[]) {
    this.count = rows.length;
    this.#rows = rows;
    const width = rows[0]?.length ?? 0;
    this.#slots = Array.from({ length: width }, (_, slot) => slotOf(rows, slot));
    for (const [slot, { parts }] of this.#slots.entries()) {
      for (const id of Object.keys(parts[0] ?? {})) {
        if (this.#slotOf.has(id)) throw new Error(`fact ${id} stands in two slots`);
        this.#slotOf.set(id, slot);
      }
    }
  }

  /** Sheets that share nothing. */
  static of(sheets: readonly Facts[]): FactSheets {
    return new FactSheets(sheets.map((sheet) => [sheet]));
  }

  /** Where a fact stands. A fact that no slot holds is read as missing from every sheet. */
  slotOf(id: string): Slot {
    const slot = this.#slots[this.#slotOf.get(id) ?? 0];
    return slot ?? { parts: [], at: new Uint32Array(this.count) };
  }

  /** One whole sheet, put together. */
  sheet(index: number): Facts {
    return Object.assign({}, ...(this.#rows[index] ?? []));
  }
}

function slotOf(rows: readonly (readonly Facts[])[], slot: number): Slot {
  const parts: Facts[] = [];
  const known = new Map<Facts, number>();
  const at = new Uint32Array(rows.length);
  for (const [i, row] of rows.entries()) {
    const part = row[slot];
    if (!part) throw new Error(`fact sheet ${i} has no part in slot ${slot}`);
    let index = known.get(part);
    if (index === undefined) {
      index = parts.length;
      known.set(part, index);
      parts.push(part);
    }
    at[i] = index;
  }
  return { parts, at };
}
