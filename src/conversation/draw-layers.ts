/** One layer of a drawing: how thick it is and what it does in the wall. */
export type DrawnLayer = { readonly role: string; readonly thickness_in: number };

/** A stretch of columns that a layer takes in a drawing. */
export type Span = { readonly from: number; readonly width: number; readonly isSheet: boolean };

/**
 * Fills by what a layer does, one for each of two rows that take turns. Plain characters of one column: a drawing looks
 * the same in colour, without it and in ASCII, and its layers can be told apart by pattern alone.
 */
const FILLS: Readonly<Record<string, readonly [string, string]>> = {
  lining: ['..', '..'],
  framing: ['/\\', '\\/'],
  sheathing: ['##', '##'],
  barrier: ['::', '::'],
  insulation: ['x ', ' x'],
  drainage: ["' ", " '"],
  furring: ['  ', '  '],
  lath: ['==', '=='],
  finish: ['%%', '%%'],
};

/** The fill of one row of a layer, `width` columns. */
export function fillOf(role: string, width: number, row: number): string {
  const pattern = FILLS[role]?.[row % 2 === 0 ? 0 : 1] ?? '??';
  return pattern.repeat(Math.ceil(width / pattern.length)).slice(0, width);
}

/**
 * Columns of each layer at one scale for all. What is thinner than a column (a sheet, a lath) takes one and is not to
 * scale; the others share what is left by their thickness, cut at cumulated edges so that no error adds up.
 *
 * @param room  columns for all layers together, at least one each
 * @returns the spans, and how many columns an inch takes
 */
export function spansOf(
  layers: readonly DrawnLayer[],
  room: number,
): { readonly spans: readonly Span[]; readonly columns_per_in: number } {
  const total_in = layers.reduce((sum, { thickness_in }) => sum + thickness_in, 0);
  const rough = room / Math.max(total_in, Number.EPSILON);
  const isSheet = ({ thickness_in }: DrawnLayer) => thickness_in * rough < 1;
  const sheets = layers.filter(isSheet).length;
  const thick_in = layers.reduce((sum, layer) => sum + (isSheet(layer) ? 0 : layer.thickness_in), 0);
  const columns_per_in = (room - sheets) / Math.max(thick_in, Number.EPSILON);
  let depth_in = 0;
  let from = 0;
  const spans = layers.map((layer): Span => {
    if (isSheet(layer)) {
      const span = { from, width: 1, isSheet: true };
      from += 1;
      return span;
    }
    const start = Math.round(depth_in * columns_per_in);
    depth_in += layer.thickness_in;
    const width = Math.max(1, Math.round(depth_in * columns_per_in) - start);
    const span = { from, width, isSheet: false };
    from += width;
    return span;
  });
  return { spans, columns_per_in };
}
