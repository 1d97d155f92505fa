import type { Candidate, RetarderChoice } from '../assembly/candidates.ts';
import type { Buck } from '../assembly/catalogue-schema.ts';
import type { WallSet, WallSlot } from '../assembly/wall-set.ts';
import type { AnswerContext } from '../assessment/answer-context.ts';
import type { Works } from '../assessment/assess.ts';
import type { BuckPart } from '../assessment/buck-part.ts';
import { type CalculatedParts, CREW_RANK } from '../assessment/fact-sheet.ts';
import { inwardPermeance, outwardPermeance } from '../assessment/moisture-part.ts';
import { addedThickness } from '../assessment/wall-layers.ts';
import type { Brief } from '../brief/brief.ts';
import type { SheathingDewPoint } from '../calculators/moisture/sheathing-dew-point.ts';
import { rSiFromUs } from '../calculators/moisture/units.ts';
import type { Site } from '../site/site.ts';

/** What walls are compared by. Each part is 0 (worst) to 1 (best), from computed figures by a stated curve. */
export const CRITERIA = [
  'energy',
  'moisture_safety',
  'structure',
  'cost',
  'ease',
  'carbon',
  'finish',
  'repair',
  'thinness',
] as const;
export type Criterion = (typeof CRITERIA)[number];
export type Scores = Readonly<Record<Criterion, number>>;

/** Weights of the criteria that the user isn't asked about. */
const FIXED_WEIGHTS = { structure: 1.5, finish: 0.75, repair: 0.4, thinness: 0.25 } as const;

/** Staying dry counts half as much again as its priority says: what goes wrong there can't be seen until it has rotted. */
const DRYNESS = 1.5;

export function weightsOf(priorities: Brief['priorities']): Scores {
  return { ...priorities, ...FIXED_WEIGHTS, moisture_safety: DRYNESS * priorities.moisture_safety };
}

/** Weighted mean of the parts. All weights zero: all parts count alike. */
export function totalScore(scores: Scores, weights: Scores): number {
  const sum = CRITERIA.reduce((s, c) => s + weights[c], 0);
  if (sum <= 0) return plainSum(scores) / CRITERIA.length;
  return CRITERIA.reduce((s, c) => s + scores[c] * weights[c], 0) / sum;
}

/** The parts added up unweighted. */
export function plainSum(scores: Scores): number {
  return CRITERIA.reduce((sum, criterion) => sum + scores[criterion], 0);
}

/** One term of a score, and all that it may read: walls that share all of it share the term. */
export type ScoreTerm = {
  readonly parts: readonly (keyof CalculatedParts)[];
  /** What is read of the wall itself. */
  readonly wall: readonly WallSlot[];
  readonly brief: readonly (keyof Brief)[];
  readonly site?: readonly (keyof Site)[];
  readonly of: (candidate: Candidate, parts: CalculatedParts, context: AnswerContext) => number;
  /** The same for every wall of a set at once, where no two walls share the term and their figures stand in columns. */
  readonly ofAll?: (walls: WallSet, works: Works, context: AnswerContext) => Float64Array;
};

/** A factor is the sum of its terms; most have one. */
export type ScoreFactor = readonly ScoreTerm[];

/** A score is the product of its factors. Most terms are shared by many walls; see `score-table.ts`. */
export const SCORE_FACTORS: Readonly<Record<Criterion, readonly ScoreFactor[]>> = {
  energy: [
    [{ parts: ['energy', 'thermal'], wall: [], brief: [], of: (_, parts) => energyScore(parts) }],
    [{ parts: ['thermal', 'buck'], wall: [], brief: [], of: (_, parts) => shareWithoutBucks(parts) }],
  ],
  // Drying counts from 0.1 perm (none) to 10 perm (full) either way, but over a sheet in damp heat; condensate, or a table verdict that can't be given,
  // costs; what is not known scores low but is not the worst.
  moisture_safety: [
    [
      { parts: ['dewPoint'], wall: [], brief: [], of: (_, { dewPoint }) => 0.35 * warmthScore(dewPoint) },
      {
        parts: [],
        wall: ['outer', 'inside'],
        brief: [],
        site: ['zone_number', 'moisture_regime'],
        of: ({ face, barrier, inside }, _, { site }) =>
          0.2 * outwardScore(outwardPermeance(face, barrier), inside, site),
      },
      {
        parts: [],
        wall: ['inside'],
        brief: [],
        of: ({ inside }) => 0.15 * dryingScore(inwardPermeance(inside)),
      },
      { parts: [], wall: ['cladding'], brief: [], of: ({ cladding }) => 0.15 * spaceScore(cladding) },
      { parts: ['water'], wall: [], brief: [], of: (_, { water }) => 0.1 * waterScore(water) },
      { parts: ['vapour'], wall: [], brief: [], of: (_, { vapour }) => 0.05 * tableScore(vapour) },
    ],
    [{ parts: ['dewPoint'], wall: [], brief: [], of: (_, { dewPoint }) => coldShare(dewPoint) }],
    [{ parts: ['buck'], wall: [], brief: [], of: (_, parts) => (hasColdCorner(parts) ? COLD_CORNER : 1) }],
  ],
  structure: [
    [
      { parts: ['fastening'], wall: [], brief: [], of: (_, parts) => 0.65 * fasteningScore(parts) },
      {
        parts: ['buck'],
        wall: ['buck'],
        brief: ['rough_opening_can_change', 'project'],
        of: ({ buck }, parts, { brief }) =>
          0.35 * buckScore(parts) * (hangsWithoutNeed(buck, brief) ? WITHOUT_NEED : 1),
      },
    ],
  ],
  cost: [
    [
      {
        parts: ['cost'],
        wall: [],
        brief: ['budget_usd_per_ft2'],
        of: (_, { cost }, { brief }) => costScore(cost.likely, brief.budget_usd_per_ft2),
        ofAll: (walls, { cost }, { brief }) =>
          cost.work.ofAll(walls).likely.map((likely) => costScore(likely, brief.budget_usd_per_ft2)),
      },
    ],
  ],
  ease: [
    [
      {
        parts: ['buck'],
        wall: ['cladding', 'build', 'buck'],
        brief: ['crew_skill', 'project'],
        of: (wall, { buck }, { brief }) => easeScore(wall, buck, brief),
      },
    ],
  ],
  carbon: [[{ parts: [], wall: ['cladding', 'build'], brief: [], of: carbonScore }]],
  finish: [
    [
      {
        parts: [],
        wall: ['cladding'],
        brief: ['finish'],
        of: (wall, _, { brief }) => finishScore(wall, brief.finish),
      },
    ],
  ],
  repair: [[{ parts: [], wall: ['cladding'], brief: [], of: ({ cladding }) => cladding.repairability }]],
  thinness: [
    [
      {
        parts: [],
        wall: ['face', 'barrier'],
        brief: [],
        // 2 in. out of the way of eaves and lot lines is easy, 10 in. is not.
        of: ({ face, barrier }) => ramp(addedThickness(face, barrier), 10, 2),
      },
    ],
  ],
};

/** Straight line from 0 at `zero` to 1 at `one`, flat outside. */
function ramp(value: number, zero: number, one: number): number {
  return Math.min(1, Math.max(0, (value - zero) / (one - zero)));
}

/**
 * Half for just meeting the maximum U-factor, all for 40 % below it: beyond that another inch saves little. Little is
 * left at 30 % above it (a wall can pass there by an R-value alone), but more heat lost still counts as worse.
 * Where the code gives no figure: R-10 none, R-40 all.
 */
function energyScore({ energy, thermal }: CalculatedParts): number {
  const margin = energy.u_margin_percent;
  if (margin === null) return ramp(thermal.r_effective, 10, 40);
  if (margin >= 0) return 0.5 + 0.5 * ramp(margin, 0, 40);
  return 0.1 * ramp(margin, -150, -30) + 0.4 * ramp(margin, -30, 0);
}

/** What is left when the heat that the window bucks lead out is counted against the wall. */
function shareWithoutBucks({ thermal, buck }: CalculatedParts): number {
  return thermal.u_factor / (thermal.u_factor + buck.delta_u);
}

/** A tenth off where mould is to be feared at the bucks: an estimate, so no more than that. */
const COLD_CORNER = 0.9;

function hasColdCorner({ buck: { corner_temp_factor, required_temp_factor } }: CalculatedParts): boolean {
  return (
    corner_temp_factor !== null && required_temp_factor !== null && corner_temp_factor < required_temp_factor
  );
}

/** Sheathing 8 °F above the winter dew point is full safety, just at it a quarter, 5 °F below it none. */
function warmthScore({ dew_point_margin_f: margin_f }: SheathingDewPoint): number {
  if (margin_f === null) return UNKNOWN;
  return margin_f >= 0 ? 0.25 + 0.75 * ramp(margin_f, 0, 8) : 0.25 * ramp(margin_f, -5, 0);
}

function dryingScore(permeance_perm: number | null): number {
  return permeance_perm === null ? UNKNOWN : ramp(Math.log10(permeance_perm), -1, 1);
}

/** Where damp heat presses inward for most of the year, as in the cautions on polyethylene: moist zones 1 to 3. */
const HOTTEST_ZONES = 3;

/**
 * Where a sheet inside stops what damp heat presses inward, layers open to the outside feed it: all for 1 perm, which
 * holds most of it back and still lets the wall dry a little, none for ten times or a tenth of that (judgement, after the
 * guides that the caution cites).
 */
function outwardScore(
  permeance_perm: number,
  { retarder }: RetarderChoice,
  { zone_number, moisture_regime }: Site,
): number {
  const isFed = retarder?.class === 'class-i' && moisture_regime === 'A' && zone_number <= HOTTEST_ZONES;
  return isFed ? 1 - ramp(Math.abs(Math.log10(permeance_perm)), 0, 1) : dryingScore(permeance_perm);
}

/** A ventilated space dries best. */
function spaceScore({ drainage }: Candidate['cladding']): number {
  if (drainage.is_ventilated) return 1;
  return drainage.kind === 'mat' ? 0.7 : 0.3;
}

function waterScore({ condensate_peak_g_m2: peak_g_m2 }: CalculatedParts['water']): number {
  return peak_g_m2 === null ? UNKNOWN : 1 - ramp(peak_g_m2, 0, 500);
}

function tableScore({ verdict }: CalculatedParts['vapour']): number {
  if (verdict === null) return UNKNOWN;
  return verdict === 'permitted' ? 1 : 0;
}

/** A sheathing below the dew point wets through every air leak, whatever else is right: all is lost by 15 °F below. */
function coldShare({ dew_point_margin_f: margin_f }: SheathingDewPoint): number {
  return margin_f === null ? 1 : 1 - ramp(margin_f, 0, -15);
}

/** What is not known scores low but is not the worst. */
const UNKNOWN = 0.3;

/**
 * Settled by the code table: from 0.8; left to a designer: at most 0.7, less the more the weakest link is used (the long
 * fastener, or what holds the cladding to its furring), next to nothing where no method gives a figure for the weight.
 */
function fasteningScore({ fastening: { schedule, on_furring } }: CalculatedParts): number {
  if (!schedule) return 0.6;
  const use = Math.max(
    schedule.gravity_utilisation ?? 1,
    schedule.wind_utilisation ?? 1,
    schedule.weight_alone_utilisation ?? 0,
    schedule.combined_utilisation ?? 0,
    on_furring ? (on_furring.combined_utilisation ?? 1) : 0,
  );
  if (schedule.verdict === 'permitted' && on_furring?.holds !== false)
    return 0.8 + 0.2 * (1 - ramp(use, 0.3, 1));
  if (schedule.gravity_utilisation === null) return 0.05;
  return 0.4 + 0.3 * (1 - ramp(use, 0.3, 1));
}

/**
 * All where the windows are carried as they are, less where an engineer has to see to them, the less the further a figure
 * lies past its limit, little where there is none.
 */
function buckScore({ buck: { worst } }: CalculatedParts): number {
  if (worst?.verdict === 'fits') return 1;
  return worst?.verdict === 'engineer' ? 0.4 / Math.max(1, worst.utilisation ?? 1) : UNKNOWN;
}

/** A fifth off in new work, as the caution on it says: windows that could stand on the sill need not hang on screws. */
const WITHOUT_NEED = 0.8;

function hangsWithoutNeed({ support }: Buck, { project, rough_opening_can_change }: Brief): boolean {
  return support === 'face-fastened' && rough_opening_can_change && project === 'new';
}

/** Against a budget: all at half of it, half at it, none at 140 %. Without one: all at $12, none at $45 a square foot. */
export function costScore(likely_usd_per_ft2: number, budget_usd_per_ft2: number | null): number {
  if (budget_usd_per_ft2 === null) return ramp(likely_usd_per_ft2, 45, 12);
  const share = likely_usd_per_ft2 / budget_usd_per_ft2;
  return share <= 1 ? 0.5 + 0.5 * ramp(share, 1, 0.5) : 0.5 * ramp(share, 1.4, 1);
}

/**
 * Operations, trades, layers and boards that fight back; a crew below what the system asks for loses most. A support
 * that only comes engineered and made to order is one more operation and one more trade to wait for, which a wall an
 * inch thinner mostly saves; openings that have to be cut larger in a standing wall are two more (opening and framing),
 * and one more trade.
 */
function easeScore(candidate: Candidate, { needs_larger_opening }: BuckPart, brief: Brief): number {
  const { crew } = candidate.cladding;
  const gap = Math.max(
    0,
    Math.max(crew.needed_rank, candidate.buck.min_crew_rank) - CREW_RANK[brief.crew_skill],
  );
  const engineered = candidate.buck.support === 'steel-bracket' ? 1 : 0;
  const cut = brief.project === 'retrofit' && needs_larger_opening ? 1 : 0;
  const operations = crew.steps.length + candidate.build.boards_in.length + engineered + 2 * cut;
  const work =
    0.45 * ramp(operations, 12, 4) +
    0.2 * ramp(crew.trades.length + engineered + cut, 4, 1) +
    0.2 * candidate.build.insulation.handling +
    0.15 * ramp(candidate.build.thickness_in, 8, 2);
  return work * (gap === 0 ? 1 : gap === 1 ? 0.55 : 0.2);
}

/** Product-stage carbon of insulation and cladding: none at 12 kg/m², all gone at 60 (figures from memory). */
function carbonScore(candidate: Candidate): number {
  return ramp(carbonKgPerM2(candidate), 60, 12);
}

export function carbonKgPerM2({ build, cladding }: Candidate): number {
  return (
    build.insulation.carbon_kgco2e_per_m2_rsi.value * rSiFromUs(build.r) + cladding.carbon_kgco2e_per_m2.value
  );
}

/** How close the finish is to what was asked. Rules decide what is out of the question. */
function finishScore({ cladding }: Candidate, wanted: Brief['finish']): number {
  if (wanted === 'any') return 1;
  // One-coat systems are cement plaster too, but half as thick.
  if (cladding.finish_kind === 'cement-stucco') return cladding.is_one_coat ? 0.85 : 1;
  if (cladding.finish_kind === 'stucco-look')
    return wanted === 'stucco-look' ? (cladding.is_insulated_finish ? 0.6 : 0.9) : 0.4;
  return 0.1;
}
