import type { Candidate } from '../assembly/candidates.ts';
import { WALL_SLOTS, type WallSet } from '../assembly/wall-set.ts';
import type { Works } from '../assessment/assess.ts';
import { Refusal } from '../base/refusal.ts';
import type { Brief, RetarderClass } from '../brief/brief.ts';
import { LINING_READINGS } from '../brief/lining-readings.ts';
import { RETARDERS } from '../brief/scenario.ts';
import type { VerdictTable } from '../rulebook/verdicts.ts';

/** Walls with what the rules say of them. */
type JudgedSet = { readonly set: WallSet; readonly verdicts: VerdictTable };

/** Something that may be behind a lining and forbids a wall. */
export type ForbiddenLining = {
  /** To go after "if". */
  readonly words: string;
  /** Of the first rule that forbids the wall then. */
  readonly reason: string;
  readonly rule: string;
};

/** What becomes of the walls of an answer if one certain thing is behind the lining. */
export type OfLining<Judged> = {
  readonly retarder: RetarderClass;
  readonly judged: Judged;
  /** Whether some rule on the lining forbids the wall at a place then, and a retarder primer on it doesn't help. */
  readonly forbids: (place: number) => boolean;
  readonly forbidding: (place: number) => ForbiddenLining | null;
};

/** Slots whose facts hang on what is behind the lining. */
const INSIDE: ReadonlySet<number> = new Set(
  (['inside', 'vapour', 'water'] as const).map((slot) => WALL_SLOTS.indexOf(slot)),
);

/**
 * Whether every lining forbids the same walls in two answers: the same walls, whose water and vapour are worked out from
 * the same things, and nothing else that the rules about them read has changed. Another lot line or budget, say, changes
 * nothing of it.
 */
export function haveSameLinings(a: InsideJudged, b: InsideJudged): boolean {
  const [{ condensate, vapour }, works] = [a.assess.works, b.assess.works];
  if (a.set !== b.set || condensate !== works.condensate || vapour !== works.vapour) return false;
  if (a.context.brief.code_edition !== b.context.brief.code_edition) return false;
  // What was decided stays the same object as long as nothing that it was decided from is of another class.
  return a.verdicts
    .readingFrom(INSIDE)
    .every((place) => a.verdicts.decided[place] === b.verdicts.decided[place]);
}

type InsideJudged = JudgedSet & {
  readonly context: { readonly brief: Brief };
  readonly assess: { readonly works: Pick<Works, 'condensate' | 'vapour'> };
};

/** Whether nobody knows what is behind the lining of a standing wall. */
export function isLiningOpen({ project, interior_vapour_retarder }: Brief): boolean {
  return project !== 'new' && interior_vapour_retarder === null;
}

/**
 * Where nobody knows what is behind the lining of a standing wall, all walls judged for each thing that it may be.
 *
 * @param judge  judges another brief of the same site
 * @returns one for each retarder that a method covers; none where it is known, or chosen with the wall
 */
export async function ofLinings<Judged extends JudgedSet>(
  brief: Brief,
  set: WallSet,
  judge: (brief: Brief) => Promise<Judged>,
): Promise<OfLining<Judged>[]> {
  if (!isLiningOpen(brief)) return [];
  const found: OfLining<Judged>[] = [];
  for (const interior_vapour_retarder of RETARDERS) {
    try {
      const other = await judge({ ...brief, interior_vapour_retarder });
      found.push(ofLining(interior_vapour_retarder, set, other));
    } catch (error) {
      if (!(error instanceof Refusal)) throw error;
    }
  }
  return found;
}

function ofLining<Judged extends JudgedSet>(
  retarder: RetarderClass,
  set: WallSet,
  judged: Judged,
): OfLining<Judged> {
  const { verdicts } = judged;
  // What doesn't read the lining says of a wall what it says without it.
  const ids = verdicts.readingFrom(INSIDE).flatMap((place) => verdicts.rules[place]?.rule.id ?? []);
  const forbids = verdicts.forbidsBy(ids);
  const twins = twinsOf(set, judged.set);
  const isOut = (twin: number) => (forbids[twin] ?? 0) > 0;
  const isForbidden = (place: number) => (twins[place] ?? []).every(isOut);
  return {
    retarder,
    judged,
    forbids: isForbidden,
    forbidding: (place) => {
      if (!isForbidden(place)) return null;
      const [twin] = twins[place] ?? [];
      const outcomes = twin === undefined ? [] : verdicts.of(twin).outcomesWith('forbid');
      const outcome = outcomes.find(({ rule }) => ids.includes(rule.id));
      // No such wall is drawn up over that lining: nothing can be said for it.
      if (!outcome) return null;
      return { words: LINING_READINGS[retarder], reason: outcome.text, rule: outcome.rule.id };
    },
  };
}

const known = new WeakMap<WallSet, WeakMap<WallSet, readonly (readonly number[])[]>>();

/** For every wall of a set its places in another: the same but for what is inside. */
function twinsOf(set: WallSet, others: WallSet): readonly (readonly number[])[] {
  const ofSet = known.get(set) ?? new WeakMap<WallSet, readonly (readonly number[])[]>();
  known.set(set, ofSet);
  const found = ofSet.get(others) ?? pairUp(set, others);
  ofSet.set(others, found);
  return found;
}

function pairUp({ candidates }: WallSet, others: WallSet): readonly (readonly number[])[] {
  const places = new Map<string, number[]>();
  others.candidates.forEach((other, place) => {
    const key = butInside(other);
    const own = places.get(key);
    if (own) own.push(place);
    else places.set(key, [place]);
  });
  return candidates.map((candidate) => places.get(butInside(candidate)) ?? []);
}

function butInside({ cladding, build, barrier, buck, seat }: Candidate): string {
  return [cladding.id, build.insulation.id, ...build.boards_in, barrier.id, buck.id, seat.place].join(' ');
}
