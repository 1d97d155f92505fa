import type { RankedAssembly } from '../advice/advice-schema.ts';
import type { Opening } from '../advice/openings-schema.ts';
import type { CondensateMonth, ProfileSeason } from '../advice/wall-physics-schema.ts';

export type Layer = RankedAssembly['layers'][number];

/** A record's content without its looks: the Markdown page, the HTML page and the plain text are drawn from the same blocks. */
export type RecordDocument = {
  readonly title: string;
  /** Status, date, first choice: what stands under the title. */
  readonly head: readonly FactRow[];
  readonly notice: string;
  /** Only sections that have something to say. */
  readonly sections: readonly RecordSection[];
  /** What stands behind it: on screen and in the files, not on paper. Empty for none. */
  readonly appendix: readonly RecordSection[];
  /** Said on paper in place of the appendix. */
  readonly appendixNote: string;
};

export type RecordSection = {
  /** For links within the page; ASCII, unique. */
  readonly id: string;
  readonly heading: string;
  readonly blocks: readonly RecordBlock[];
};

export type RecordBlock =
  | { readonly kind: 'paragraph'; readonly text: string; readonly isStrong?: boolean }
  | { readonly kind: 'subheading'; readonly text: string }
  | { readonly kind: 'facts'; readonly rows: readonly FactRow[] }
  | { readonly kind: 'list'; readonly items: readonly ListItem[]; readonly isNumbered?: boolean }
  | TableBlock
  /** A wall section to scale beside the table whose rows carry the numbers of the drawing. */
  | { readonly kind: 'drawn-wall'; readonly wall: DrawnWall; readonly table: TableBlock }
  /** A chart beside the table that holds its figures. */
  /** Drawings of the wall beside the table that goes with them. */
  | { readonly kind: 'drawing'; readonly drawing: WallDrawing; readonly table: TableBlock }
  | { readonly kind: 'drawn-chart'; readonly chart: DrawnChart; readonly table: TableBlock }
  | { readonly kind: 'signatures'; readonly rows: readonly SignatureRow[] };

export type FactRow = { readonly label: string; readonly value: string };

export type ListItem = {
  /** Said first, emphasised. */
  readonly lead?: string;
  readonly text: string;
  /** Where work stops until somebody has looked, said last and emphasised. */
  readonly hold?: string;
  /** Rule id or citation, in brackets at the end. */
  readonly aside?: string;
};

export type TableBlock = {
  readonly kind: 'table';
  readonly caption: string;
  readonly columns: readonly { readonly title: string; readonly isNumber?: boolean }[];
  readonly rows: readonly (readonly string[])[];
};

export type WallDrawing =
  | { readonly kind: 'elevation'; readonly wall: RankedAssembly }
  | { readonly kind: 'details'; readonly wall: RankedAssembly; readonly opening: Opening };

export type DrawnWall = { readonly layers: readonly Layer[]; readonly added_thickness_in: number };

export type DrawnChart = DrawnProfile | DrawnCondensate;

export type DrawnProfile = {
  readonly kind: 'profile';
  /** For links within the page; ASCII, unique. */
  readonly id: string;
  readonly title: string;
  readonly season: ProfileSeason;
  readonly layers: readonly Layer[];
};

export type DrawnCondensate = {
  readonly kind: 'condensate';
  readonly id: string;
  readonly title: string;
  /** From the start month on. */
  readonly months: readonly CondensateMonth[];
};

export type SignatureRow = {
  readonly role: string;
  /** Whether this one must sign, and why. */
  readonly duty: string;
  readonly name: string;
  readonly date: string;
};

/** Blocks that are there; a helper for sections whose parts may be missing. */
export function present(blocks: readonly (RecordBlock | null)[]): RecordBlock[] {
  return blocks.filter((block) => block !== null);
}

/** A list block, or nothing when there is nothing to list: no heading may stand over an empty list. */
export function listOf(items: readonly ListItem[], isNumbered = false): RecordBlock | null {
  return items.length > 0 ? { kind: 'list', items, isNumbered } : null;
}

/** A table, or nothing when it would have no rows. */
export function tableOf(
  caption: string,
  columns: TableBlock['columns'],
  rows: TableBlock['rows'],
): TableBlock | null {
  return rows.length > 0 ? { kind: 'table', caption, columns, rows } : null;
}

/** Rows whose value is there. */
export function factsOf(rows: readonly (FactRow | null)[]): RecordBlock | null {
  const given = rows.filter((row) => row !== null);
  return given.length > 0 ? { kind: 'facts', rows: given } : null;
}
