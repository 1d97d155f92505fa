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
  return cellsBySpacing(asked.fastener, asked, tables)(asked.fastener_spacing_in);
}

/** {@link lookUpCell} for one fastener at several spacings, in: what the spacing doesn't touch is looked up once. */
export function cellsBySpacing(
  fastener: FastenerId,
  asked: Omit<LookUpCase, 'fastener' | 'fastener_spacing_in'>,
  tables: FasteningTables,
): (fastener_spacing_in: number) => LookUp {
  const family = asked.framing === 'wood' ? 'wood' : 'steel';
  const table = tables.foam.tables.find((t) => t.support === asked.support && t.framing === family);
  // The schema demands four tables, one for each pair.
  if (!table) throw new Error(`no code table for ${asked.support} on ${family}`);
  const citation = table.citation[asked.edition] ?? `IRC ${asked.edition}`;
  const rows = table.rows.filter((row) => row.fastener === fastener && row.framing.includes(asked.framing));
  const column = table.columns.findIndex(
    (c) => c.editions.includes(asked.edition) && c.cladding_psf >= asked.cladding_psf - ROUNDING,
  );
  const columnUsed = table.columns[column];
  const framingSpacing = tables.foam.framing_spacings_in.find(
    (s) => s >= asked.framing_spacing_in - ROUNDING,
  );
  const widest_in = widestSpacing_in(rows.length > 0 ? rows : table.rows);
  const reasons: string[] = [];
  if (rows.length === 0) reasons.push(`the code table for ${table.what} doesn't list this fastener`);
  if (!columnUsed) {
    reasons.push(`the code table stops at ${tables.foam.limits.max_cladding_psf} psf of cladding`);
  }
  if (!framingSpacing) reasons.push('the code table stops at 24 in between studs or furring');

  return (fastener_spacing_in) => {
    const row = nextWiderRow(rows, fastener_spacing_in);
    if (!row || !columnUsed || !framingSpacing) {
      const isTooWide = fastener_spacing_in > widest_in + ROUNDING;
      const tooWide = `the code table stops at ${widest_in} in between these fasteners`;
      return { table, citation, found: null, outside: isTooWide ? [...reasons, tooWide] : reasons };
    }
    const recalled = table.recalled_15_psf.some(
      (cell) =>
        columnUsed.cladding_psf === 15 &&
        cell.fastener === fastener &&
        cell.fastener_spacing_in === row.fastener_spacing_in &&
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
        row_spacing_in: row.fastener_spacing_in,
        column_framing_spacing_in: framingSpacing,
        provenance: recalled ? 'memory' : columnUsed.provenance,
      },
    };
  };
}

type Row = CodeTable['rows'][number];

/** The row of the smallest spacing that is not below the one asked for. */
function nextWiderRow(rows: readonly Row[], fastener_spacing_in: number): Row | undefined {
  let found: Row | undefined;
  for (const row of rows) {
    if (row.fastener_spacing_in < fastener_spacing_in - ROUNDING) continue;
    if (!found || row.fastener_spacing_in < found.fastener_spacing_in) found = row;
  }
  return found;
}

function widestSpacing_in(rows: readonly Row[]): number {
  return rows.reduce((widest, row) => Math.max(widest, row.fastener_spacing_in), 0);
}
