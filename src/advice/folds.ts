import { fits } from '../assembly/candidates.ts';
import type { InsulationBuild } from '../assembly/insulation-builds.ts';
import { remember } from '../assessment/remember.ts';
import { lower } from '../base/first-letter.ts';
import { inches } from '../base/inches.ts';
import type { RankedAssembly } from './advice-schema.ts';
import type { Judged, JudgedWall } from './judge-walls.ts';
import { round } from './rounded.ts';
import { rankedOnlyWhere } from './standing-words.ts';

type Folded = NonNullable<RankedAssembly['folded']> & { design_required_in: number[] };
type Answer = Pick<Judged, 'admitted' | 'context' | 'set' | 'verdicts'>;
type Missing = { readonly thickness_in: number; readonly because: string | null };

/**
 * Near-duplicates have one key: the same cladding over the same family of boards. Another thickness, barrier, retarder
 * or buck, or grey instead of white polystyrene, is a detail of the same wall, not another choice.
 */
export function foldOf({ candidate }: JudgedWall): string {
  return `${candidate.cladding.id}/${candidate.build.insulation.family}`;
}

/** Whether two walls have one {@link foldOf}: told without writing the keys, as thousands are asked. */
export function isSameFold({ candidate: a }: JudgedWall, { candidate: b }: JudgedWall): boolean {
  return a.cladding.id === b.cladding.id && a.build.insulation.family === b.build.insulation.family;
}

/** What is folded into a ranked wall: every admitted wall of its kind that competes, and what each way of building it is best for. */
export function foldedInto(wall: JudgedWall, judged: Answer): Folded {
  const group = judged.admitted.filter((other) => other.standing <= wall.standing && isSameFold(other, wall));
  const costOf = remember((other: JudgedWall) => other.parts.cost.likely);
  const weightOf = remember((other: JudgedWall) => {
    const { fastening } = other.parts;
    return fastening.cladding_psf + fastening.insulation_psf;
  });
  const heatOf = remember((other: JudgedWall) => other.parts.thermal.u_factor);
  const cheapest = least(group, costOf) ?? wall;
  const lightest = least(group, weightOf) ?? wall;
  const warmest = least(group, heatOf) ?? wall;
  const passing = distinct(group.map(({ candidate }) => candidate.build.thickness_in));
  const folded = {
    count: group.length,
    thickness_in: { low: passing[0] ?? 0, high: passing.at(-1) ?? 0 },
    insulations: [...new Set(group.map(({ candidate }) => candidate.build.insulation.label))].sort(),
    cheapest: { ...told(cheapest), usd_per_ft2: round(costOf(cheapest), 1) },
    lightest: { ...told(lightest), weight_psf: round(weightOf(lightest), 1) },
    least_heat_loss: { ...told(warmest), u_factor: round(heatOf(warmest), 4) },
    design_required_in: beyondCodeTable(group, passing),
  };
  const behind = keptBack(wall, judged).filter(({ thickness_in }) => !passing.includes(thickness_in));
  const isBehind = new Set(behind.map(({ thickness_in }) => thickness_in));
  const missing = missingBetween(wall, passing, judged).filter((one) => !isBehind.has(one.thickness_in));
  const words = foldedWords(folded, passing, missing, behind.length === 0 ? 'passes' : 'competes', judged);
  return { ...folded, words: `${words}${behindWords(behind)}` };
}

/** Thicknesses that no rule forbids, but which come after the ranked wall whatever they score, and why. */
function keptBack(wall: JudgedWall, { admitted }: Answer): Missing[] {
  const found = new Map<number, string>();
  for (const other of admitted) {
    if (other.standing <= wall.standing || !isSameFold(other, wall)) continue;
    const { thickness_in } = other.candidate.build;
    if (!found.has(thickness_in)) found.set(thickness_in, rankedOnlyWhere(other.standing, wall.standing));
  }
  return distinct([...found.keys()]).map((thickness_in) => ({
    thickness_in,
    because: found.get(thickness_in) ?? null,
  }));
}

/** " At 1-1/2, 2 in. no rule forbids it either; but whatever its score, it is ranked only where …" */
function behindWords(behind: readonly Missing[]): string {
  return byReason(behind)
    .map(([because, sizes]) => ` At ${sizes} in. no rule forbids it either; but ${lower(because ?? '')}`)
    .join('');
}

/** Thicknesses that pass, but whose fastening no code table permits; none where glue and its report carry. */
function beyondCodeTable(group: readonly JudgedWall[], passing: readonly number[]): number[] {
  const inTable = new Set<number>();
  for (const { candidate, parts } of group) {
    const { schedule } = parts.fastening;
    if (!schedule || schedule.table.verdict === 'permitted') inTable.add(candidate.build.thickness_in);
  }
  return passing.filter((thickness_in) => !inTable.has(thickness_in));
}

/** Which of the thicknesses that pass only do so with a design professional. */
function designWords(passing: readonly number[], beyond: readonly number[]): string {
  if (beyond.length === 0) return '';
  const who = 'only with a design professional for the fastening';
  if (beyond.length === passing.length)
    return `, ${passing.length === 1 ? 'and that' : 'all of them'} ${who}, which no code table permits`;
  const within = passing.filter((thickness_in) => !beyond.includes(thickness_in));
  const last = Math.max(...within);
  const isTail = beyond.every((thickness_in) => thickness_in > last);
  return isTail
    ? `, those over ${inches(last)} in. ${who}, because the code table permits no more`
    : `, ${beyond.map(inches).join(', ')} in. ${who}, which no code table permits there`;
}

function told({ candidate }: JudgedWall): { id: string; insulation: string; thickness_in: number } {
  return {
    id: candidate.id,
    insulation: candidate.build.insulation.label,
    thickness_in: candidate.build.thickness_in,
  };
}

/** Thicknesses on the market between the thinnest and the thickest that passes at which nothing passes, and why. */
function missingBetween(wall: JudgedWall, passing: readonly number[], judged: Answer): Missing[] {
  const { cladding, build } = wall.candidate;
  const isSameFamily = (other: InsulationBuild) => other.insulation.family === build.insulation.family;
  const [low = 0] = passing;
  const high = passing.at(-1) ?? 0;
  const market = judged.context.catalogue.builds
    .filter((other) => isSameFamily(other) && fits(cladding, other))
    .map((other) => other.thickness_in);
  return distinct(market)
    .filter((t) => t > low && t < high && !passing.includes(t))
    .map((thickness_in) => ({ thickness_in, because: whyMissing(wall, thickness_in, judged) }));
}

/** The rule against the way of building that thickness which breaks the fewest; null where nothing was drawn up. */
function whyMissing(
  { candidate: { cladding, build } }: JudgedWall,
  thickness_in: number,
  { set, verdicts }: Answer,
): string | null {
  let closest = -1;
  const against = (place: number) => verdicts.forbids[place] ?? 0;
  for (const [place, other] of set.candidates.entries()) {
    const isMissing =
      other.cladding === cladding &&
      other.build.thickness_in === thickness_in &&
      other.build.insulation.family === build.insulation.family &&
      against(place) > 0;
    if (isMissing && (closest < 0 || against(place) < against(closest))) closest = place;
  }
  return closest < 0 ? null : (verdicts.of(closest).rulesWith('forbid')[0]?.rule.title ?? null);
}

/** "2, 2-1/2 in. (the window buck fails its check)" */
function missingWords(missing: readonly Missing[]): string {
  return byReason(missing)
    .map(([because, sizes]) => `${sizes} in.${because ? ` (${lower(because)})` : ''}`)
    .join(' and not ');
}

/** Every reason once, with the thicknesses that it holds for. */
function byReason(missing: readonly Missing[]): [string | null, string][] {
  const sizes = new Map<string | null, number[]>();
  for (const { thickness_in, because } of missing)
    sizes.set(because, [...(sizes.get(because) ?? []), thickness_in]);
  return [...sizes].map(([because, list]) => [because, list.map(inches).join(', ')]);
}

function foldedWords(
  folded: Omit<Folded, 'words'>,
  passing: readonly number[],
  missing: readonly Missing[],
  verb: 'passes' | 'competes',
  { context }: Pick<Answer, 'context'>,
): string {
  const { cheapest, lightest, least_heat_loss: warmest, insulations } = folded;
  const several = insulations.length > 1;
  const name = (one: { insulation: string; thickness_in: number }) =>
    several ? `${inches(one.thickness_in)} in. ${one.insulation}` : `${inches(one.thickness_in)} in.`;
  const dollars = `about $${cheapest.usd_per_ft2.toFixed(2)} a square foot`;
  if (passing.length === 1 && !several) {
    return `Only ${inches(passing[0] ?? 0)} in. of it ${verb}${designWords(passing, folded.design_required_in)}; the cheapest way to build it costs ${dollars}.`;
  }
  const range =
    passing.length === 1
      ? `Of the thicknesses only ${inches(passing[0] ?? 0)} in. ${verb}`
      : missing.length === 0
        ? `${inches(passing[0] ?? 0)} to ${inches(passing.at(-1) ?? 0)} in. all pass`
        : `${inches(passing[0] ?? 0)} to ${inches(passing.at(-1) ?? 0)} in. pass, but not ${missingWords(missing)}`;
  const merits = [
    `${name(cheapest)} is the cheapest (${dollars})`,
    ...(name(lightest) === name(cheapest)
      ? []
      : [`${name(lightest)} is the lightest (${lightest.weight_psf.toFixed(1)} psf)`]),
    ...(name(warmest) === name(cheapest)
      ? []
      : [`${name(warmest)} loses the least heat (U ${warmest.u_factor.toFixed(3)})`]),
  ];
  const boards = several ? `, as ${insulations.join(' or ')}` : '';
  const others = context.brief.windows.length > 0 ? 'barrier, lining and buck' : 'barrier and lining';
  const suiting = passing.length > 1 ? ` (${others} to suit)` : '';
  const designed = designWords(passing, folded.design_required_in);
  return `${range}${boards}${suiting}${designed}; ${merits.join('; ')}.`;
}

function least(walls: readonly JudgedWall[], of: (wall: JudgedWall) => number): JudgedWall | undefined {
  let best = walls[0];
  // Best score first, so that of equals the better wall stays.
  for (const wall of walls) if (best && of(wall) < of(best) - 1e-9) best = wall;
  return best;
}

function distinct(values: readonly number[]): number[] {
  return [...new Set(values)].sort((a, b) => a - b);
}
