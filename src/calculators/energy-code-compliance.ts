import type { EnergyQuery } from './energy-code-input.ts';
import {
  type EnergyRequirement,
  energyRequirement,
  optionsInWords,
  type ROption,
} from './energy-code-requirement.ts';
import type { EnergyTable } from './energy-code-table.ts';
import { type Provenance, surestProvenance, weakestProvenance } from './thermal/sourced.ts';

/** A wall as the energy code looks at it; null where not known, which never counts as met. */
export type WallAsBuilt = {
  /** Whole opaque wall with framing, films and fasteners, Btu/(h·ft²·°F). */
  readonly u_factor: number | null;
  /** Labelled resistance of the cavity insulation (for mass walls: of insulation on the inside). */
  readonly cavity_r: number | null;
  /** Continuous insulation at 75 °F, interrupted by nothing but fasteners (for mass walls: outside or in the mass). */
  readonly ci_r: number | null;
};

export type EnergyCompliance = {
  readonly requirement: EnergyRequirement;
  /** null: not known, or the edition has no such route. */
  readonly complies_by_u: boolean | null;
  readonly complies_by_r: boolean | null;
  /** True by either route; false when neither is met; null when what is not known could decide it. */
  readonly complies: boolean | null;
  readonly route: 'u-factor' | 'r-value' | 'both' | 'none' | 'unknown';
  /** The maximum that applies to this wall, Btu/(h·ft²·°F). */
  readonly max_u_factor: number | null;
  /** The R-value options in words; null where the edition gives none. */
  readonly r_options: string | null;
  /** How far the wall's U-factor lies below the maximum, % of it; negative above. */
  readonly u_margin_percent: number | null;
  /** The option met with most to spare, and what is to spare. */
  readonly option_met: (ROption & { readonly spare_cavity_r: number; readonly spare_ci_r: number }) | null;
  /** When no option is met: the one that lacks least, and what it lacks. */
  readonly option_nearest:
    | (ROption & { readonly missing_cavity_r: number; readonly missing_ci_r: number })
    | null;
  /** How sure the figures are that this verdict rests on; of two routes met, the surer. */
  readonly provenance: Provenance | null;
  readonly notes: readonly string[];
};

/** Half of the last printed figure of a U-factor. */
const ROUNDING = 0.0005;
const SLACK = 1e-9;

/**
 * Whether a wall meets the energy code, by which route, and by what margin.
 *
 * @throws Refusal as `energyRequirement`
 *
 * The U-factor is held against the maximum as printed, without rounding it first. Source: see the requirement.
 */
export function energyCompliance(
  table: EnergyTable,
  query: EnergyQuery,
  wall: WallAsBuilt,
): EnergyCompliance {
  return judgeCompliance(energyRequirement(table, query), wall);
}

/** The same for a requirement already looked up. */
export function judgeCompliance(requirement: EnergyRequirement, wall: WallAsBuilt): EnergyCompliance {
  return complianceJudge(requirement)(wall);
}

/**
 * {@link judgeCompliance} for many walls at one place: what the insulation comes to against the R-value options is worked
 * out once for all walls that have the same.
 */
export function complianceJudge(requirement: EnergyRequirement): (wall: WallAsBuilt) => EnergyCompliance {
  const known = new Map<string, ByR>();
  return (wall) => {
    const key = `${wall.cavity_r} ${wall.ci_r}`;
    const byR = known.get(key) ?? judgeByR(requirement, wall);
    known.set(key, byR);
    return judgeByU(requirement, wall, byR);
  };
}

type ByR = Pick<EnergyCompliance, 'complies_by_r' | 'r_options' | 'option_met' | 'option_nearest'> & {
  readonly metProvenance: Provenance | null;
};

/** The R-value route. */
function judgeByR(requirement: EnergyRequirement, wall: WallAsBuilt): ByR {
  const options = applicableOptions(requirement, wall);
  const byR = options === null || options.length === 0 ? null : options.some((option) => isMet(option));
  const met = options?.filter(isMet).sort((a, b) => b.spare_ci_r - a.spare_ci_r)[0];
  const nearest = byR === false ? options?.slice().sort(byLack)[0] : undefined;
  return {
    complies_by_r: byR,
    r_options: requirement.options.length > 0 ? optionsInWords(requirement.options) : null,
    metProvenance: met?.provenance ?? null,
    option_met: met
      ? {
          cavity_r: met.cavity_r,
          ci_r: met.ci_r,
          spare_cavity_r: met.spare_cavity_r,
          spare_ci_r: met.spare_ci_r,
        }
      : null,
    option_nearest: nearest
      ? {
          cavity_r: nearest.cavity_r,
          ci_r: nearest.ci_r,
          missing_cavity_r: Math.max(0, -nearest.spare_cavity_r),
          missing_ci_r: Math.max(0, -nearest.spare_ci_r),
        }
      : null,
  };
}

/** The U-factor route, and both together. */
function judgeByU(
  requirement: EnergyRequirement,
  wall: WallAsBuilt,
  { complies_by_r: byR, metProvenance, r_options, option_met, option_nearest }: ByR,
): EnergyCompliance {
  const max_u_factor = applicableMaxU(requirement, wall);
  const byU = max_u_factor === null || wall.u_factor === null ? null : wall.u_factor <= max_u_factor + SLACK;
  const hasURoute = requirement.max_u_factor !== null;
  const hasRRoute = requirement.options.length > 0;
  const complies =
    byU === true || byR === true
      ? true
      : (hasURoute && byU === null) || (hasRRoute && byR === null) || (!hasURoute && !hasRRoute)
        ? null
        : false;
  return {
    requirement,
    complies_by_u: byU,
    complies_by_r: byR,
    complies,
    route: routeOf(byU, byR, complies),
    max_u_factor,
    r_options,
    u_margin_percent:
      max_u_factor === null || wall.u_factor === null
        ? null
        : ((max_u_factor - wall.u_factor) / max_u_factor) * 100,
    option_met,
    option_nearest,
    provenance: provenanceOf(requirement, byU, metProvenance),
    notes: complianceNotes(requirement, wall, max_u_factor, byU),
  };
}

type Compared = ROption & {
  readonly provenance: Provenance;
  readonly spare_cavity_r: number;
  readonly spare_ci_r: number;
};

/** The options with what the wall has over or under them; null where the wall is not known well enough. */
function applicableOptions(requirement: EnergyRequirement, wall: WallAsBuilt): Compared[] | null {
  const { cavity_r, ci_r } = wall;
  if (cavity_r === null || ci_r === null) return null;
  const compared = requirement.options.map((option, index) => ({
    ...option,
    provenance: requirement.provenance.options[index] ?? 'memory',
    spare_cavity_r: cavity_r - option.cavity_r,
    spare_ci_r: ci_r - option.ci_r,
  }));
  if (requirement.wall !== 'mass') return compared;
  // One figure for all the insulation of a mass wall, by where most of it lies.
  const total = cavity_r + ci_r;
  return compared
    .filter((option) => (isMostlyInside(wall) ? option.ci_r === 0 : option.cavity_r === 0))
    .map((option) =>
      isMostlyInside(wall)
        ? { ...option, spare_cavity_r: total - option.cavity_r, spare_ci_r: 0 }
        : { ...option, spare_cavity_r: 0, spare_ci_r: total - option.ci_r },
    );
}

function isMostlyInside(wall: WallAsBuilt): boolean {
  return (wall.cavity_r ?? 0) > (wall.ci_r ?? 0);
}

function applicableMaxU(requirement: EnergyRequirement, wall: WallAsBuilt): number | null {
  const inside = requirement.max_u_factor_interior_insulation;
  if (inside === null || requirement.max_u_factor === null) return requirement.max_u_factor;
  // Not known where the insulation lies: only what both maxima allow is safe to say.
  if (wall.cavity_r === null || wall.ci_r === null) return Math.min(inside, requirement.max_u_factor);
  return isMostlyInside(wall) ? inside : requirement.max_u_factor;
}

function isMet(option: Compared): boolean {
  return option.spare_cavity_r >= -SLACK && option.spare_ci_r >= -SLACK;
}

/** Cavity insulation is harder to change than boards: what lacks least in the cavity, then least in all. */
function byLack(a: Compared, b: Compared): number {
  const cavity = (option: Compared) => Math.max(0, -option.spare_cavity_r);
  const board = (option: Compared) => Math.max(0, -option.spare_ci_r);
  return cavity(a) - cavity(b) || board(a) - board(b);
}

function routeOf(byU: boolean | null, byR: boolean | null, complies: boolean | null) {
  if (byU && byR) return 'both';
  if (byU) return 'u-factor';
  if (byR) return 'r-value';
  return complies === null ? 'unknown' : 'none';
}

function provenanceOf(
  requirement: EnergyRequirement,
  byU: boolean | null,
  option: Provenance | null,
): Provenance | null {
  const u = requirement.provenance.max_u_factor;
  const routesMet = [...(byU && u ? [u] : []), ...(option ? [option] : [])];
  // A "yes" needs one route; a "no" rests on every figure.
  if (routesMet.length > 0) return surestProvenance(routesMet);
  return weakestProvenance([...(u ? [u] : []), ...requirement.provenance.options]);
}

function complianceNotes(
  requirement: EnergyRequirement,
  wall: WallAsBuilt,
  max_u_factor: number | null,
  byU: boolean | null,
): string[] {
  const notes: string[] = [];
  if (byU === false && max_u_factor !== null && wall.u_factor !== null) {
    if (wall.u_factor < max_u_factor + ROUNDING) {
      notes.push(
        `Rounded to three decimals the U-factor is the maximum of ${max_u_factor}; it is held to be above it here.`,
      );
    }
  }
  if (requirement.options.length === 0) {
    notes.push(
      `${requirement.code} is held here to its maximum U-factor alone; no R-value option is carried.`,
    );
  }
  return notes;
}

/** A thickness on offer with what it gives. */
export type ThicknessChoice = WallAsBuilt & { readonly thickness_in: number };

/**
 * The thinnest insulation on offer that meets the requirement by either route; null when none does or can be judged.
 *
 * @param choices  in any order
 */
export function nearestCompliantThickness(
  requirement: EnergyRequirement,
  choices: readonly ThicknessChoice[],
): (ThicknessChoice & { readonly route: EnergyCompliance['route'] }) | null {
  const thinnestFirst = choices.slice().sort((a, b) => a.thickness_in - b.thickness_in);
  const judge = complianceJudge(requirement);
  for (const choice of thinnestFirst) {
    const verdict = judge(choice);
    if (verdict.complies === true) return { ...choice, route: verdict.route };
  }
  return null;
}
