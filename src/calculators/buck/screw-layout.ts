/** A horizontal row of screws in a face-fastened frame. */
export type ScrewRow = {
  /** Height above the bottom edge of the frame, in. */
  readonly height_in: number;
  readonly count: number;
};

/**
 * Screws along one piece: the first and last a set distance from the ends, the rest no further apart than the
 * spacing; at least two.
 */
export function screwsAlong(length_in: number, spacing_in: number, from_end_in: number): number {
  const between = Math.max(0, length_in - 2 * from_end_in);
  return Math.max(2, Math.ceil(between / spacing_in - 1e-9) + 1);
}

export type FrameLayout = {
  readonly rows: readonly ScrewRow[];
  /** In the sill piece, and the same in the head piece. */
  readonly per_sill: number;
  readonly per_jamb: number;
  readonly total: number;
};

/**
 * Screws of a frame of sill, head and two jambs round an opening: sill and head rows at mid-height of their pieces,
 * jamb rows evenly between.
 *
 * @param width_in, height_in  opening, in.
 * @param piece_in             height of the sill and head piece against the wall, in.
 */
export function frameLayout(
  width_in: number,
  height_in: number,
  spacing_in: number,
  piece_in: number,
  from_corner_in: number,
): FrameLayout {
  const per_sill = screwsAlong(width_in, spacing_in, from_corner_in);
  const per_jamb = screwsAlong(height_in, spacing_in, from_corner_in);
  const first = piece_in + Math.min(from_corner_in, height_in / 3);
  const last = piece_in + height_in - Math.min(from_corner_in, height_in / 3);
  const jambs = Array.from({ length: per_jamb }, (_, i) => ({
    height_in: first + ((last - first) * i) / (per_jamb - 1),
    count: 2,
  }));
  return {
    rows: [
      { height_in: piece_in / 2, count: per_sill },
      ...jambs,
      { height_in: height_in + 1.5 * piece_in, count: per_sill },
    ],
    per_sill,
    per_jamb,
    total: 2 * per_sill + 2 * per_jamb,
  };
}
