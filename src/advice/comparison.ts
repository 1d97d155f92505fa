import type { Advice } from './advice-schema.ts';
import { isSynthetic } from './choose-alternatives.ts';
import type { Judged, JudgedWall } from './judge-walls.ts';
import { round } from './rounded.ts';
import { wallTitle } from './titles.ts';

/**
 * The best synthetic insulated finish that passes, for comparison: the job is to do without it, and whoever decides
 * should see what that costs and brings. Null where none passes, or where it had to be ranked.
 */
export function syntheticComparison(judged: Judged, chosen: readonly JudgedWall[]): Advice['comparison'] {
  const wall = judged.admitted.find(isSynthetic);
  if (!wall || chosen.some(isSynthetic)) return null;
  const { thermal, cost, fastening } = wall.parts;
  return {
    title: wallTitle(wall.candidate),
    score: round(wall.score, 4),
    u_factor: round(thermal.u_factor, 4),
    weight_psf: round(fastening.cladding_psf + fastening.insulation_psf, 1),
    installed_cost_usd_per_ft2: {
      low: round(cost.low, 1),
      likely: round(cost.likely, 1),
      high: round(cost.high, 1),
    },
    gains: [...wall.candidate.cladding.gains],
    gives_up: [...wall.candidate.cladding.gives_up],
  };
}
