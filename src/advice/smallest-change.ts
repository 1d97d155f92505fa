import type { JudgedWall } from './judge-walls.ts';
import type { Option, Step } from './why-not-steps.ts';

/** What judging the named walls again brought. */
export type Trial = {
  /** Best of the named walls that break no rule. */
  readonly admitted: JudgedWall | null;
  readonly walls: number;
  /** Broken rules, over all walls. */
  readonly forbids: number;
  /** All of the named walls that break no rule; left out where only the best was looked for. */
  readonly passing?: () => readonly JudgedWall[];
};

/** Judges the named walls with some options taken; null where no method covers that. */
export type Try = (options: readonly Option[]) => Promise<Trial | null>;

export type Found = {
  readonly changes: readonly { readonly step: Step; readonly option: Option }[];
  readonly wall: JudgedWall;
  readonly movement: number;
};

export type Search = { readonly found: readonly Found[]; readonly trials: number };

export type Extent = {
  /** No more combinations than this are judged. */
  readonly trials: number;
  /** How many changes are given at most. */
  readonly found: number;
  /** How many answers are changed at once at most. */
  readonly together: number;
};

/** Some seconds at worst. */
const THOROUGH: Extent = { trials: 600, found: 3, together: 3 };
/** Of a step's options, how many go into combinations. */
const OPTIONS_COMBINED = 4;

type Taken = { readonly step: Step; readonly option: Option };

/**
 * The smallest changes that admit a wall, found by judging again and by nothing else: single changes first, then pairs,
 * then three at once, and within each the least movement first. Only changes that make some rule fall silent (or let a
 * wall be put together at all) go into combinations.
 */
export async function smallestChanges(
  steps: readonly Step[],
  now: Trial,
  trial: Try,
  extent: Extent = THOROUGH,
): Promise<Search> {
  let trials = 0;
  const attempt = async (taken: readonly Taken[]): Promise<Trial | null> => {
    trials += 1;
    return trial(taken.map(({ option }) => option));
  };
  const found: Found[] = [];
  const useful: Taken[] = [];
  for (const step of steps) {
    for (const option of step.options) {
      const taken = [{ step, option }];
      const after = await attempt(taken);
      if (!after) continue;
      if (after.admitted) {
        found.push(await leastOf(taken, after, after.admitted, attempt));
        break;
      }
      const isUseful = after.forbids < now.forbids || after.walls !== now.walls;
      if (isUseful && useful.filter((one) => one.step === step).length < OPTIONS_COMBINED)
        useful.push({ step, option });
    }
  }
  for (let size = 2; size <= extent.together && found.length === 0; size++) {
    for (const taken of combinations(useful, size)) {
      const isEnough =
        found.length >= extent.found && leastMovement(taken) >= Math.min(...found.map((one) => one.movement));
      if (isEnough || trials >= extent.trials) break;
      const after = await attempt(taken);
      if (after?.admitted) found.push(await leastOf(taken, after, after.admitted, attempt));
    }
  }
  return { found: found.sort((a, b) => a.movement - b.movement).slice(0, extent.found), trials };
}

function movementOf(taken: readonly Taken[]): number {
  return taken.reduce((sum, { option }) => sum + option.movement, 0);
}

/** Every way to take one option each of so many steps, least movement first. */
function combinations(useful: readonly Taken[], size: number): Taken[][] {
  const grow = (from: number, taken: Taken[]): Taken[][] =>
    taken.length === size
      ? [taken]
      : useful
          .slice(from)
          .flatMap((next, i) =>
            taken.some(({ step }) => step === next.step) ? [] : grow(from + i + 1, [...taken, next]),
          );
  return grow(0, []).sort((a, b) => leastMovement(a) - leastMovement(b));
}

/** What a combination moves at least: how much of an amount it takes is not known yet. */
function leastMovement(taken: readonly Taken[]): number {
  return movementOf(taken.filter(({ step }) => step.amount === undefined));
}

/** The same changes with every amount no larger than it has to be. */
async function leastOf(
  taken: readonly Taken[],
  after: Trial,
  wall: JudgedWall,
  attempt: (taken: readonly Taken[]) => Promise<Trial | null>,
): Promise<Found> {
  let best: readonly Taken[] = taken;
  let admitted = wall;
  let passing = after.passing;
  for (const { step } of taken) {
    if (!step.amount) continue;
    let { least, most } = step.amount;
    const probes = likelyLeast(step.amount, passing?.() ?? []);
    while (least < most) {
      const probe = probes.shift();
      const units =
        probe !== undefined && probe >= least && probe < most ? probe : Math.floor((least + most) / 2);
      const option = step.amount.at(units);
      const tried = best.map((one) => (one.step === step ? { step, option } : one));
      const found = await attempt(tried);
      if (found?.admitted) {
        most = units;
        best = tried;
        admitted = found.admitted;
        passing = found.passing;
      } else least = units + 1;
    }
  }
  return { changes: best, wall: admitted, movement: movementOf(best) };
}

/** What the walls that pass with the most of it need of an amount, and one unit less: mostly that settles it. */
function likelyLeast({ needOf }: NonNullable<Step['amount']>, passing: readonly JudgedWall[]): number[] {
  if (!needOf || passing.length === 0) return [];
  let need = Number.POSITIVE_INFINITY;
  for (const wall of passing) need = Math.min(need, needOf(wall));
  return [need, need - 1];
}
