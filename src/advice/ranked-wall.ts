import { barrierLabel } from '../assembly/barrier-label.ts';
import { builtBuck } from '../assembly/built-buck.ts';
import type { Candidate } from '../assembly/candidates.ts';
import type { AnswerContext } from '../assessment/answer-context.ts';
import type { CalculatedParts } from '../assessment/fact-sheet.ts';
import type { FasteningPart } from '../assessment/fastening-part.ts';
import { supportOf } from '../assessment/support.ts';
import { addedThickness, wallLayers } from '../assessment/wall-layers.ts';
import type { Concern, RuleOutcome } from '../rulebook/rule-schema.ts';
import { appliesTruth } from '../rulebook/three-valued.ts';
import type { Caution, RankedAssembly } from './advice-schema.ts';
import { cautionsOf, isGeneral } from './cautions.ts';
import { costParts } from './cost-breakdown.ts';
import { figuresOf } from './figures.ts';
import { foldedInto } from './folds.ts';
import { houseMark } from './house-mark.ts';
import type { Judged, JudgedWall } from './judge-walls.ts';
import { openingsOf, questionCautions, sharedSequence } from './openings.ts';
import { percentWords } from './schedule-words.ts';
import { rankedBecause, whyBeforeOthers } from './standing-words.ts';
import { tieKeys } from './ties.ts';
import { wallTitle } from './titles.ts';
import { wallLoads } from './wall-loads.ts';
import { wallPhysics } from './wall-physics.ts';

/** Writes one judged wall out in full. `better` is the first choice, when this is an alternative to it. */
export function rankedWall(
  wall: JudgedWall,
  rank: number,
  judged: Judged,
  better: JudgedWall | null,
): RankedAssembly {
  const { context } = judged;
  const { candidate, parts } = wall;
  const outcomes = wall.verdicts.outcomes();
  const { cladding, build, inside, barrier, buck } = candidate;
  const { brief } = context;
  const openings = openingsOf(candidate, context);
  const first = better ?? wall;
  const layers = wallLayers(candidate, {
    depth_in: brief.framing.depth_in,
    cavity_r: context.framed.cavity_r,
    label: context.framed.label,
  });
  return {
    rank,
    id: candidate.id,
    title: wallTitle(candidate),
    score: round(wall.score, 4),
    cladding: cladding.label,
    attachment: cladding.attachment_label,
    insulation: {
      id: build.insulation.id,
      material: build.insulation.label,
      layers: build.boards_in.length,
      board_thicknesses_in: [...build.boards_in],
      thickness_in: build.thickness_in,
      r: round(build.r, 2),
    },
    interior_vapour_retarder: inside.retarder
      ? `${inside.is_existing ? 'as it stands: ' : ''}${inside.retarder.label}`
      : 'as it stands, not known: find out before ordering',
    water_resistive_barrier: barrierLabel(barrier, candidate.sheathing),
    buck: {
      id: buck.id,
      support: buck.support,
      label: builtBuck(supportOf(candidate), brief.framing.depth_in).label,
      projection_in: round(parts.buck.projection_in, 4),
      verdict: parts.buck.worst?.verdict ?? null,
      utilisation: roundOrNull(parts.buck.worst?.utilisation ?? null, 3),
      screws_per_side: parts.buck.worst?.screws_per_side ?? null,
      min_screw_length_in: parts.buck.worst?.min_screw_length_in ?? null,
      why: parts.buck.why,
      flashing_sequence: sharedSequence(openings),
    },
    openings,
    fastening: fasteningOf(candidate, parts, context),
    layers: layers.map((layer) => ({ ...layer, r: round(layer.r, 2) })),
    u_factor: round(parts.thermal.u_factor, 4),
    r_effective: round(parts.thermal.r_effective, 1),
    added_thickness_in: round(addedThickness(candidate.face, candidate.barrier), 2),
    weight_psf: round(parts.fastening.cladding_psf + parts.fastening.insulation_psf, 1),
    installed_cost_usd_per_ft2: {
      low: round(parts.cost.low, 1),
      likely: round(parts.cost.likely, 1),
      high: round(parts.cost.high, 1),
    },
    cost_parts: costParts(candidate, parts, context),
    crew: {
      needed: cladding.crew.needed,
      steps: [...cladding.crew.steps],
      trades: [...cladding.crew.trades],
    },
    scores: Object.fromEntries(Object.entries(wall.scores).map(([k, v]) => [k, round(v, 3)])),
    reasons: [
      ...lastResort(candidate, judged),
      ...rankedBecause(wall),
      ...(better ? [] : whyBeforeOthers(wall, judged)),
      ...reasonsOf(outcomes),
    ],
    gains: [...cladding.gains],
    gives_up: givesUp(wall, better),
    cautions: [
      ...cautionsOf(outcomes).filter((caution) => !isGeneral(caution) || !isSaidInGeneral(caution, first)),
      ...questionCautions(openings),
    ],
    verdicts: outcomes.map((outcome) => ({
      rule: outcome.rule.id,
      title: outcome.rule.title,
      concern: outcome.concern,
      verdict: outcome.verdict,
      citation: outcome.citation,
      provenance: outcome.rule.citation.provenance,
      text: outcome.text,
      facts: { ...outcome.facts },
      ...houseMark(outcome),
    })),
    figures: figuresOf(candidate, parts, context),
    ...wallPhysics(candidate, parts, context),
    ...wallLoads(candidate, parts, context),
    folded: foldedInto(wall, judged),
    ...tieKeys(wall, better, judged),
  };
}

/** The synthetic finish competes only where nothing else passes: said before anything speaks for it. */
function lastResort({ cladding }: Candidate, judged: Judged): RankedAssembly['reasons'] {
  if (!cladding.is_insulated_finish) return [];
  if (judged.bestAdmitted((other) => !other.cladding.is_insulated_finish)) return [];
  const wish =
    judged.context.brief.finish === 'stucco-look'
      ? 'Of the stucco wished for it has the look and nothing else'
      : 'Of stucco it has the look and nothing else';
  return [
    {
      rule: 'stucco-practice.what-an-insulated-finish-is',
      text: `It is listed only because no other cladding passes here. ${wish}: thin synthetic coats glued to foam, no cement plaster, the kind of wall that this comparison is made to do without. What was left out, and what would admit it, stands with the excluded walls: read that first.`,
    },
  ];
}

/** Whether the answer's own cautions, which are the first choice's, hold this one. */
function isSaidInGeneral(caution: Caution, first: JudgedWall): boolean {
  return cautionsOf(first.verdicts.outcomes()).some(({ rule }) => rule === caution.rule);
}

/** What a reader asks about first stands first. */
const CONCERN_ORDER: readonly Concern[] = [
  'energy',
  'vapour',
  'rain',
  'structure',
  'openings',
  'budget',
  'buildability',
  'fire',
  'ground-and-termite',
  'stucco-practice',
  'safety',
];

/** Limits that are kept and say so and what the rules prefer, by concern. */
function reasonsOf(outcomes: readonly RuleOutcome[]): RankedAssembly['reasons'] {
  const preferred = outcomes.filter((outcome) => outcome.verdict === 'prefer');
  const kept = outcomes.filter(
    ({ verdict, rule, facts }) =>
      verdict === 'pass' && rule.pass_reason !== undefined && appliesTruth(rule, facts) === true,
  );
  return [...kept, ...preferred]
    .sort((a, b) => CONCERN_ORDER.indexOf(a.concern) - CONCERN_ORDER.indexOf(b.concern))
    .map((outcome) => ({ text: outcome.text, rule: outcome.rule.id, ...houseMark(outcome) }));
}

function fasteningOf(
  candidate: Candidate,
  parts: CalculatedParts,
  context: AnswerContext,
): RankedAssembly['fastening'] {
  const { schedule } = parts.fastening;
  const { cladding } = candidate;
  if (!schedule) {
    return {
      fastener: 'none: glued',
      support: cladding.attachment,
      length_in: null,
      spacing_along_stud_in: 0,
      stud_spacing_in: context.brief.framing.spacing_in,
      washer: 'none',
      lath_or_furring: cladding.lath_or_furring,
      count_per_100_ft2: 0,
      table_verdict: 'outside-table',
      max_insulation_in: null,
      gravity_load_lb: 0,
      wind_load_lb: 0,
      wind_capacity_lb: null,
      combined_utilisation: null,
      on_furring: null,
      weakest_link: null,
      why: gluedWords(context.outward_wind_psf),
    };
  }
  return {
    fastener: schedule.label,
    support: cladding.attachment,
    length_in: schedule.length_in,
    spacing_along_stud_in: schedule.fastener_spacing_in,
    stud_spacing_in: schedule.framing_spacing_in,
    washer: schedule.washer,
    lath_or_furring: cladding.lath_or_furring,
    count_per_100_ft2: Math.ceil(schedule.count_per_100_ft2 - 1e-9),
    table_verdict: schedule.table.verdict,
    max_insulation_in: schedule.table.max_insulation_in,
    gravity_load_lb: round(schedule.gravity_load_lb, 1),
    wind_load_lb: round(schedule.wind_load_lb, 1),
    wind_capacity_lb: roundOrNull(schedule.wind_capacity_lb, 1),
    combined_utilisation: roundOrNull(schedule.combined_utilisation, 3),
    on_furring: onFurringOf(parts.fastening),
    weakest_link: weakestLink(parts.fastening),
    why: schedule.why(),
  };
}

function onFurringOf({ on_furring }: FasteningPart): RankedAssembly['fastening']['on_furring'] {
  if (!on_furring) return null;
  const { way, furring_in, field, corner, capacity_lb, wind_utilisation, combined_utilisation } = on_furring;
  return {
    fastener: way?.label ?? null,
    furring_in,
    field_spacing_in: field?.spacing_in ?? null,
    corner_spacing_in: corner?.spacing_in ?? null,
    wind_load_lb: roundOrNull(corner?.wind_lb ?? null, 1),
    wind_capacity_lb: roundOrNull(capacity_lb, 1),
    wind_utilisation: roundOrNull(wind_utilisation, 3),
    combined_utilisation: roundOrNull(combined_utilisation, 3),
  };
}

/** What is held against the strip or the stud that is used most; something without a figure comes before all others. */
function weakestLink({ schedule, on_furring }: FasteningPart): string | null {
  if (!schedule) return null;
  const long = `the ${schedule.label} into the studs`;
  const links = [
    { by: `${long}, by the weight`, use: schedule.gravity_utilisation },
    {
      by: `${long}, by the weight under the timber standard`,
      use: schedule.weight_alone_utilisation ?? 0,
    },
    { by: `${long}, by wind at the corners`, use: schedule.wind_utilisation },
    { by: `${long}, by weight and wind together`, use: schedule.combined_utilisation ?? 0 },
    ...(on_furring
      ? [
          {
            by: `the ${on_furring.way?.label ?? 'fastening of the cladding'} into the furring, by weight and wind together`,
            use: on_furring.combined_utilisation,
          },
        ]
      : []),
  ];
  const unknown = links.find(({ use }) => use === null);
  if (unknown) return `${unknown.by}: no figure`;
  const [first, ...rest] = links;
  const most = rest.reduce((a, b) => ((b?.use ?? 0) > (a?.use ?? 0) ? b : a), first);
  return most ? `${most.by}: ${percentWords(most.use)}` : null;
}

/** What holds a glued cladding, and what is left to be shown. */
function gluedWords(outward_wind_psf: number): string {
  return `Glued to the barrier, no fastener through the insulation: the system’s evaluation report says on which barrier and sheathing, with which glue, in which pattern and up to what wind. Left to be shown by it: ${outward_wind_psf.toFixed(1)} psf of outward wind at the corners, through glue, barrier and sheathing into the studs; no code table or published equation covers that.`;
}

/** What is given up: by the system itself, and in figures against the first choice. */
function givesUp(wall: JudgedWall, better: JudgedWall | null): string[] {
  const list = [...wall.candidate.cladding.gives_up];
  if (!better) return list;
  const mine = wall.parts;
  const first = better.parts;
  const dearer = mine.cost.likely - first.cost.likely;
  if (dearer >= 0.5) list.push(`About $${dearer.toFixed(2)} a square foot more than the first choice.`);
  const heavier = mine.fastening.cladding_psf - first.fastening.cladding_psf;
  if (heavier >= 1) list.push(`${heavier.toFixed(1)} psf heavier.`);
  const leakier = mine.thermal.u_factor - first.thermal.u_factor;
  if (leakier > 0.002)
    list.push(
      `Lets more heat through: U ${mine.thermal.u_factor.toFixed(3)} against ${first.thermal.u_factor.toFixed(3)}.`,
    );
  const thicker =
    addedThickness(wall.candidate.face, wall.candidate.barrier) -
    addedThickness(better.candidate.face, better.candidate.barrier);
  if (thicker >= 0.5) list.push(`${thicker.toFixed(1)} in. thicker.`);
  return list;
}

export function round(value: number, digits: number): number {
  return Number(value.toFixed(digits));
}

function roundOrNull(value: number | null, digits: number): number | null {
  return value === null ? null : round(value, digits);
}
