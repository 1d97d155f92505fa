import type { OpenAssumption } from '../brief/resolve-brief.ts';
import { firstChoice } from './choose-alternatives.ts';
import type { Judged, JudgedWall } from './judge-walls.ts';

/** What another reading of an assumption does to the wall that would be built as things are taken now. */
export type Reading = {
  readonly field: string;
  readonly assumed: OpenAssumption['value'];
  readonly why: string;
  /** The reading in words, to go after "if". */
  readonly label: string;
  /** Best under that reading; null where nothing passes. */
  readonly winner: JudgedWall | null;
  /** Whether the wall that would have been built still breaks no rule under that reading. */
  readonly stillPasses: boolean;
  /** How far it then lies behind the best; null where it doesn't pass. */
  readonly loss: number | null;
};

/**
 * @param built  the first choice as things are taken; its best twin (cladding and boards) is looked at in the other
 *   reading, as barrier, retarder and buck can follow what is found
 * @param other  all walls judged under the other reading
 */
export function readingOf(
  { field, value, why }: Pick<OpenAssumption, 'field' | 'value' | 'why'>,
  label: string,
  built: JudgedWall | null,
  other: Judged,
): Reading {
  const winner = firstChoice(other);
  const twin = built && other.bestAdmitted((candidate) => isTwin({ candidate }, built));
  return {
    field,
    assumed: value,
    why,
    label,
    winner,
    stillPasses: twin !== null,
    loss: twin && winner ? Math.max(0, winner.score - twin.score) : null,
  };
}

/** The same cladding over the same boards. */
export function isTwin(
  { candidate: a }: Pick<JudgedWall, 'candidate'>,
  { candidate: b }: Pick<JudgedWall, 'candidate'>,
): boolean {
  return a.cladding.id === b.cladding.id && a.build === b.build;
}

/**
 * Most telling first: where nothing passes any more, then where the wall doesn't, then where most is lost by building it
 * all the same.
 */
export function byEffect(a: Reading, b: Reading): number {
  return (
    Number(b.winner === null) - Number(a.winner === null) ||
    Number(a.stillPasses) - Number(b.stillPasses) ||
    (b.loss ?? 0) - (a.loss ?? 0) ||
    (a.field < b.field ? -1 : a.field > b.field ? 1 : 0)
  );
}
