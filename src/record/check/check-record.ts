import type { Advice, RankedAssembly } from '../../advice/advice-schema.ts';
import { advise } from '../../advice/advise.ts';
import type { Knowledge } from '../../advice/judge-walls.ts';
import { type Decision, decidedWall, decisionOf, isSameDecision } from '../decided-wall.ts';
import type { ReadRecord } from '../read-record.ts';
import type { Basis, RecordStatus } from '../record-schema.ts';
import { type BasisChanges, basisChanges, isSameBasis } from './basis-changes.ts';
import { type FigureChange, figureChanges } from './figure-changes.ts';
import { type WallToday, wallToday } from './wall-today.ts';

export type VerdictChange = {
  readonly rule: string;
  /** Null where the rule didn't apply, or wasn't there. */
  readonly then: string | null;
  readonly now: string | null;
};

/** What a record is worth today. */
export type CheckedRecord = {
  readonly title: string;
  readonly revision: number;
  readonly status: RecordStatus;
  readonly created: string;
  readonly outcome: 'same' | 'figures-changed' | 'different-decision';
  /** The file was changed after it was saved. */
  readonly is_altered: boolean;
  /** Figures differ although rules, data and program are those that the record names: somebody changed them and the digest. */
  readonly is_unexplained: boolean;
  /** Same decision, and nobody changed the file. */
  readonly holds: boolean;
  readonly decision: { readonly then: Decision; readonly now: Decision };
  /** What became of the old decision; null when it stands. */
  readonly old_decision_today: WallToday | null;
  /** Of the wall decided on, site and wind; empty where it isn't told today. */
  readonly figures: readonly FigureChange[];
  readonly verdicts: readonly VerdictChange[];
  readonly changed: BasisChanges;
};

/** What a check works with; `basis` that of the knowledge. */
export type CheckMeans = {
  readonly knowledge: Knowledge;
  readonly basis: Basis;
  readonly toolVersion: string;
};

/**
 * Works a record's answers out again by today's rules, data, prices and program, and compares.
 *
 * @throws Refusal where the scenario lies outside a calculator's range today
 */
export async function checkRecord(
  { record, isAltered }: Pick<ReadRecord, 'record' | 'isAltered'>,
  { knowledge, basis, toolVersion }: CheckMeans,
): Promise<CheckedRecord> {
  const { advice: then, scenario } = record;
  const top = Math.max(1, then.ranked.length);
  const now = await advise(scenario, knowledge, { top, toolVersion });
  const decision = { then: decisionOf(then), now: decisionOf(now) };
  const isSame = isSameDecision(decision.then, decision.now);
  const figures = [...figureChanges(generalPart(then), generalPart(now)), ...wallFigures(then, now)];
  const verdicts = verdictChanges(then, now);
  const changed = basisChanges({ advice: then, basis: record.basis }, { advice: now, basis });
  const outcome = !isSame
    ? 'different-decision'
    : figures.length > 0 || verdicts.length > 0
      ? 'figures-changed'
      : 'same';
  const isUnexplained = outcome !== 'same' && isSameBasis(changed);
  return {
    title: record.title,
    revision: record.revision,
    status: record.status,
    created: record.created,
    outcome,
    is_altered: isAltered,
    is_unexplained: isUnexplained,
    holds: isSame && !isAltered && !isUnexplained,
    decision,
    old_decision_today:
      isSame || decision.then.id === null ? null : await wallToday(decision.then.id, scenario, knowledge),
    figures,
    verdicts,
    changed,
  };
}

/** What holds for every wall of an answer. */
function generalPart({ site, wind, considered }: Advice) {
  return { site, wind, considered };
}

/** Parts of a wall that are no figures of it: places in a list, and what `verdictChanges` tells. */
function figuresPart({ rank, verdicts, ...wall }: RankedAssembly) {
  return wall;
}

function wallFigures(then: Advice, now: Advice): FigureChange[] {
  const [before, after] = sameWall(then, now);
  return before && after ? figureChanges(figuresPart(before), figuresPart(after)) : [];
}

/** The wall that was decided on, then and now; nothing where today's answer doesn't show it. */
function sameWall(then: Advice, now: Advice): readonly [RankedAssembly?, RankedAssembly?] {
  const before = decidedWall(then);
  if (!before) return [];
  const shown = [...now.ranked, ...(now.fallback ? [now.fallback.assembly] : [])];
  const after = shown.find(({ id }) => id === before.id);
  return after ? [before, after] : [];
}

function verdictChanges(then: Advice, now: Advice): VerdictChange[] {
  const [before, after] = sameWall(then, now);
  if (!before || !after) return [];
  const [was, is] = [verdictsOf(before), verdictsOf(after)];
  return [...new Set([...was.keys(), ...is.keys()])].sort().flatMap((rule): VerdictChange[] => {
    const [a, b] = [was.get(rule) ?? null, is.get(rule) ?? null];
    return a === b ? [] : [{ rule, then: a, now: b }];
  });
}

function verdictsOf({ verdicts }: RankedAssembly): Map<string, string> {
  return new Map(verdicts.map(({ rule, verdict }) => [rule, verdict]));
}
