import type {
  CellProvenance,
  CodeTable,
  FastenerId,
  FasteningEdition,
  FasteningTables,
  Framing,
  Support,
} from './fastening-tables.ts';

/** Spacings and weights are typed by hand; 16.0000001 is 16. */
const ROUNDING = 1e-9;

export type LookUpCase = {
  readonly support: Support;
  readonly framing: Framing;
  readonly fastener: FastenerId;
  readonly edition: FasteningEdition;
  readonly cladding_psf: number;
  readonly framing_spacing_in: number;
  readonly fastener_spacing_in: number;
};

export type CellFound = {
  readonly max_insulation_in: number | null;
  /** The column and row used: never lighter and never closer than asked. */
  readonly column_psf: number;
  readonly row_spacing_in: number;
  readonly column_framing_spacing_in: number;
  readonly provenance: CellProvenance;
};

export type LookUp = {
  readonly table: CodeTable;
  readonly citation: string;
  readonly found: CellFound | null;
  /** Every reason why there's no cell; empty when there is one. */
  readonly outside: readonly string[];
};

/**
 * The cell of the code table for cladding or furring fastened through foam.
 *
 * Never interpolates: uses the column of the next heavier weight, the row of the next wider fastener spacing and
 * the wider of the two framing spacings. A weight or spacing beyond the table, or a fastener that it doesn't list
 * for this framing, has no cell.
 *
 * Source: IRC Tables R703.15.1, R703.15.2, R703.16.1, R703.16.2 (IBC Table 2603.13.2), as copied out with their
 * provenance in the table file. The 2018 edition prints no 15 psf column.
 */
export function lookUpCell(asked: LookUpCase, tables: FasteningTables): LookUp {
  const family = asked.framing === 'wood' ? 'wood' : 'steel';
  const table = tables.foam.tables.find((t) => t.support === asked.support && t.framing === family);
  // The schema demands four tables, one for each pair.
  if (!table) throw new Error(`no code table for ${asked.support} on ${family}`);
  const citation = table.citation[asked.edition] ?? `IRC ${asked.edition}`;
  // Runs for every spacing of every wall: loops, and words only where there is no cell.
  let isListed = false;
  let row: CodeTable['rows'][number] | undefined;
  for (const candidate of table.rows) {
    if (!isRowFor(asked, candidate)) continue;
    isListed = true;
    if (candidate.fastener_spacing_in < asked.fastener_spacing_in - ROUNDING) continue;
    if (!row || candidate.fastener_spacing_in < row.fastener_spacing_in) row = candidate;
  }
  const column = table.columns.findIndex(
    (c) => c.editions.includes(asked.edition) && c.cladding_psf >= asked.cladding_psf - ROUNDING,
  );
  const columnUsed = table.columns[column];
  const framingSpacing = tables.foam.framing_spacings_in.find(
    (s) => s >= asked.framing_spacing_in - ROUNDING,
  );
  if (!row || !columnUsed || !framingSpacing) {
    const reasons: string[] = [];
    if (!isListed) reasons.push(`the code table for ${table.what} doesn't list this fastener`);
    if (!columnUsed) {
      reasons.push(`the code table stops at ${tables.foam.limits.max_cladding_psf} psf of cladding`);
    }
    if (!framingSpacing) reasons.push('the code table stops at 24 in between studs or furring');
    const widest = widestSpacing_in(asked, isListed, table);
    if (asked.fastener_spacing_in > widest + ROUNDING) {
      reasons.push(`the code table stops at ${widest} in between these fasteners`);
    }
    return { table, citation, found: null, outside: reasons };
  }
  const rowSpacing = row.fastener_spacing_in;
  const recalled = table.recalled_15_psf.some(
    (cell) =>
      columnUsed.cladding_psf === 15 &&
      cell.fastener === asked.fastener &&
      cell.fastener_spacing_in === rowSpacing &&
      cell.framing_spacing_in === framingSpacing &&
      cell.recalled_in !== null &&
      cell.computed_in !== null &&
      cell.recalled_in < cell.computed_in,
  );
  return {
    table,
    citation,
    outside: [],
    found: {
      max_insulation_in: row.max_insulation_in[framingSpacing === 16 ? '16' : '24'][column] ?? null,
      column_psf: columnUsed.cladding_psf,
      row_spacing_in: rowSpacing,
      column_framing_spacing_in: framingSpacing,
      provenance: recalled ? 'memory' : columnUsed.provenance,
    },
  };
}

function isRowFor({ fastener, framing }: LookUpCase, row: CodeTable['rows'][number]): boolean {
  return row.fastener === fastener && row.framing.includes(framing);
}

/** Of this fastener's rows; of all where it has none. */
function widestSpacing_in(asked: LookUpCase, isListed: boolean, { rows }: CodeTable): number {
  let widest = 0;
  for (const row of rows)
    if (!isListed || isRowFor(asked, row)) widest = Math.max(widest, row.fastener_spacing_in);
  return widest;
}
