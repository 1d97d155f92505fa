import type { LimitIndex, LimitUse } from './limits.ts';
import type { LoadedRule } from './loaded-rule.ts';
import type { RuleProblem } from './rule-conflicts.ts';
import type { RuleVerdict } from './rule-schema.ts';

/** How much a verdict takes away. A preference admits and forbids nothing. */
const STRENGTH: Readonly<Record<RuleVerdict, number>> = { prefer: 0, caution: 1, undecided: 2, forbid: 3 };

const RISES = new Set(['lessThan', 'lessThanInclusive']);
const FALLS = new Set(['greaterThan', 'greaterThanInclusive']);

/**
 * Whether moving each named limit to its stricter side can only make rules speak more often. Where a milder rule falls
 * silent (a band of caution below a ban), a stronger one that reads the same limit must take over.
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
    const takesOver = Math.max(
      ...uses.map(({ loaded, use }) => (speaksMore(use, stricter) ? STRENGTH[loaded.rule.verdict] : -1)),
    );
    for (const { loaded, use } of uses) {
      const strength = STRENGTH[loaded.rule.verdict];
      if (strength === 0 || speaksMore(use, stricter) || takesOver > strength) continue;
      problems.push({
        file: loaded.file,
        rule: loaded.rule.id,
        message: `the limit "${id}" is stricter when ${stricter}, but then "${use.operator}" makes this rule speak less, and no stronger rule takes over.`,
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
