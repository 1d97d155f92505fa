/** A window jamb in plan, in quarter-inch cells: lengths in inches, resistances in h·ft²·°F/Btu. */
export type JambSection = {
  readonly buck_in: number;
  readonly insulation_in: number;
  readonly sheathing_in: number;
  readonly studs_in: number;
  /** Depth of the frame behind its flange: there the reveal meets no air. */
  readonly covered_in: number;
};

const CELL_IN = 0.25;
const LINING_IN = 0.5;
const BESIDE_IN = 10;
const FILM_IN = 1.4195657;
const FILM_OUT = 0.17;
/** Resistance per inch, as in the estimate; mineral wool between the studs, foam outside. */
const R_PER_IN = { wood: 1.25, lining: 0.9, sheathing: 1.3, insulation: 4.2, cavity: 3.7 } as const;

/**
 * Temperature factor of the reveal next to the frame, by finite differences over the whole section (own solution,
 * successive over-relaxation): independent of the formula that it is held against.
 */
export function sectionFactor(section: JambSection): number {
  const { buck_in, insulation_in, sheathing_in, studs_in, covered_in } = section;
  const toLining = insulation_in + sheathing_in + studs_in;
  const nx = Math.round((toLining + LINING_IN) / CELL_IN);
  const ny = Math.round((LINING_IN + BESIDE_IN) / CELL_IN);
  const perInch = (i: number, j: number): number => {
    const x = (i + 0.5) * CELL_IN;
    const y = (j + 0.5) * CELL_IN - LINING_IN;
    if (y < 0) return x > covered_in ? R_PER_IN.lining : Number.POSITIVE_INFINITY;
    if (x > toLining) return R_PER_IN.lining;
    if (y < buck_in) return R_PER_IN.wood;
    if (x < insulation_in) return R_PER_IN.insulation;
    if (x < insulation_in + sheathing_in) return R_PER_IN.sheathing;
    return y < buck_in + 3 ? R_PER_IN.wood : R_PER_IN.cavity;
  };
  const r = Array.from({ length: nx }, (_, i) => Array.from({ length: ny }, (_, j) => perInch(i, j)));
  const temp = Array.from({ length: nx }, () => new Array<number>(ny).fill(0.5));
  const at = (i: number, j: number) => r[i]?.[j] ?? Number.POSITIVE_INFINITY;
  const isThere = (i: number, j: number) => Number.isFinite(at(i, j));
  const half = (i: number, j: number) => (at(i, j) * CELL_IN) / 2;
  for (let round = 0; round < 4000; round += 1) {
    let change = 0;
    for (let i = 0; i < nx; i += 1) {
      const row = temp[i] ?? [];
      for (let j = 0; j < ny; j += 1) {
        if (!isThere(i, j)) continue;
        let sum = 0;
        let weight = 0;
        for (const [di, dj] of [
          [1, 0],
          [-1, 0],
          [0, 1],
          [0, -1],
        ] as const) {
          const [p, q] = [i + di, j + dj];
          let resistance: number;
          let other: number;
          if (isThere(p, q)) {
            resistance = half(i, j) + half(p, q);
            other = temp[p]?.[q] ?? 0;
          } else if (p < 0) {
            resistance = half(i, j) + FILM_OUT;
            other = 0;
          } else if (p >= nx || (q < 0 && (i + 0.5) * CELL_IN > covered_in)) {
            resistance = half(i, j) + FILM_IN;
            other = 1;
          } else continue;
          sum += other / resistance;
          weight += 1 / resistance;
        }
        const before = row[j] ?? 0;
        const next = before + 1.9 * (sum / weight - before);
        change = Math.max(change, Math.abs(next - before));
        row[j] = next;
      }
    }
    if (change < 1e-9) break;
  }
  const first = Math.round(covered_in / CELL_IN);
  const wall = temp[first]?.[0] ?? Number.NaN;
  const toRoom = half(first, 0) + FILM_IN;
  return 1 - ((1 - wall) / toRoom) * FILM_IN;
}
