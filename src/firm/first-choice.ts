import { excludedWalls } from '../advice/excluded.ts';
import type { Judged, JudgedWall, Knowledge } from '../advice/judge-walls.ts';
import { round, roundOrNull } from '../advice/rounded.ts';
import { wallTitle } from '../advice/titles.ts';
import { barrierLabel } from '../assembly/barrier-label.ts';
import type { Candidate } from '../assembly/candidates.ts';
import { addedThickness } from '../assessment/wall-layers.ts';
import type { Assembly, Closest, ReportPack, WallFigures } from './firm-schema.ts';

/** A project judged by a rule set. */
export type Ruled = { readonly judged: Judged; readonly choice: JudgedWall | null };

/** A wall's main figures, rounded as the answer rounds them. */
export function figuresOfWall(wall: JudgedWall, { assess }: Judged): WallFigures {
  const { candidate } = wall;
  const { thermal, energy, fastening, cost } = assess.partsOf(candidate);
  return {
    score: round(wall.score, 4),
    u_factor: round(thermal.u_factor, 4),
    max_u_factor: energy.max_u_factor,
    max_u_factor_provenance: energy.requirement.provenance.max_u_factor,
    u_margin_percent: roundOrNull(energy.u_margin_percent, 1),
    energy_route: energy.route,
    cost_usd_per_ft2: {
      low: round(cost.low, 1),
      likely: round(cost.likely, 1),
      high: round(cost.high, 1),
    },
    added_thickness_in: round(addedThickness(candidate.face, candidate.barrier), 2),
    weight_psf: round(fastening.cladding_psf + fastening.insulation_psf, 1),
  };
}

/**
 * What an assembly is made of, in words; two walls with the same id are the same assembly.
 *
 * @param hasWindows  of a wall without any the buck is only what it was drawn up with
 */
export function assemblyOf(candidate: Candidate, hasWindows: boolean): Assembly {
  const { cladding, barrier, sheathing, inside, buck } = candidate;
  return {
    id: candidate.id,
    title: wallTitle(candidate),
    water_resistive_barrier: barrierLabel(barrier, sheathing),
    interior_vapour_retarder: inside.retarder?.label ?? 'as it stands, not known',
    remark: cladding.is_insulated_finish ? 'only where nothing else passes' : null,
    buck: hasWindows ? buck.label : 'no windows, no buck',
  };
}

/**
 * Titles of the rules that what is not known leaves open for a wall: it passes, but not for certain. No budget is no
 * open question here: whoever lays out a matrix says where there is a limit.
 */
export function openQuestions(wall: JudgedWall): string[] {
  return wall.verdicts
    .rulesWith('undecided')
    .filter(({ rule, concern }) => rule.verdict !== 'prefer' && concern !== 'budget')
    .map(({ rule }) => rule.title);
}

/** Where nothing passes: the wall that comes closest and the rules against it; null where something does. */
export function closestWall(judged: Judged): Closest | null {
  if (judged.admitted.length > 0) return null;
  const [nearest] = excludedWalls(judged);
  return nearest ? { id: nearest.id ?? '', title: nearest.title, because: nearest.because } : null;
}

/** The packs in force, as a report names them. */
export function packsOf({ rulebook }: Knowledge): ReportPack[] {
  return rulebook.packs.map(({ name, version, sha256, house }) => ({ name, version, sha256, house }));
}
