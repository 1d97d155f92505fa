import type { Buck, SheathingEntry } from './catalogue-schema.ts';
import { projection_in } from './flange-projection.ts';
import type { InsulationBuild } from './insulation-builds.ts';

/**
 * Bucks made for a flange at the outer face of that insulation. Where none reaches so far out, the one that reaches
 * furthest stands in, so that the rule on projection can say what is wrong instead of the wall vanishing unseen.
 */
export function bucksFor(
  build: InsulationBuild,
  sheathing: SheathingEntry,
  bucks: readonly Buck[],
): readonly Buck[] {
  const made = bucks.filter((buck) => reaches(buck, projection_in(buck, build, sheathing)));
  if (made.length > 0) return made;
  const [furthest] = [...bucks].sort(
    (a, b) => b.max_projection_in - a.max_projection_in || (a.id < b.id ? -1 : 1),
  );
  return furthest ? [furthest] : [];
}

/** Is the buck made to hold a flange that far out? */
export function reaches(buck: Buck, out_in: number): boolean {
  return out_in >= buck.min_projection_in && out_in <= buck.max_projection_in;
}
