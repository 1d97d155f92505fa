import type { LimitIndex, LimitUse } from './limits.ts';
import type { LoadedRule } from './loaded-rule.ts';
import type { RuleProblem } from './rule-conflicts.ts';
import type { RuleVerdict } from './rule-schema.ts';

/** How much a verdict takes away. A preference admits and forbids nothing. */
export const STRENGTH: Readonly<Record<RuleVerdict, number>> = {
  prefer: 0,
  caution: 1,
  undecided: 2,
  forbid: 3,
};

const RISES = new Set(['lessThan', 'lessThanInclusive']);
const FALLS = new Set(['greaterThan', 'greaterThanInclusive']);

/**
 * Whether moving each named limit to its stricter side can only make rules speak more often. Where a rule falls silent (a
 * band of caution below a ban), another one that reads the same limit and is at least as strong must take over.
 *
 * A rule counts as strong as it was shipped: that a firm makes a ban of a caution leaves what must not be lost as it was.
 */
export function checkLimits(rules: readonly LoadedRule[], limits: LimitIndex, file: string): RuleProblem[] {
  const problems: RuleProblem[] = [];
  for (const { id, stricter } of limits.all) {
    const uses = rules.flatMap((loaded) =>
      loaded.limits.filter((use) => use.limit === id).map((use) => ({ loaded, use })),
    );
    if (uses.length === 0) {
      problems.push({ file, rule: id, message: 'no rule reads this limit: it would tighten nothing.' });
    }
    for (const { loaded, use } of uses) {
      const shipped = STRENGTH[(loaded.tightened?.before ?? loaded.rule).verdict];
      if (shipped === 0 || speaksMore(use, stricter)) continue;
      const isTakenOver = uses.some(
        (other) =>
          other.loaded !== loaded &&
          speaksMore(other.use, stricter) &&
          STRENGTH[other.loaded.rule.verdict] >= shipped,
      );
      if (isTakenOver) continue;
      problems.push({
        file: loaded.file,
        rule: loaded.rule.id,
        message: `the limit "${id}" is stricter when ${stricter}, but then "${use.operator}" makes this rule speak less, and no other rule as strong takes over.`,
      });
    }
  }
  return problems;
}

/** Whether the comparison holds more often as the limit gets stricter. An operator without order never does. */
function speaksMore({ operator, isNegated }: LimitUse, stricter: 'lower' | 'higher'): boolean {
  if (!RISES.has(operator) && !FALLS.has(operator)) return false;
  const more = RISES.has(operator) === (stricter === 'higher');
  return more !== isNegated;
}
