import type { Rulebook } from '../rulebook/rulebook.ts';
import type { Verdicts } from '../rulebook/verdicts.ts';

/** What one preference of the firm adds to a wall's score: enough to settle near-ties, too little to hide a bad wall. */
const EACH = 0.03;
const MOST = 0.09;

/** Ids of the preferences of a firm's own packs. The shipped preferences give reasons and move no score. */
export function houseWishes(rulebook: Rulebook): string[] {
  return rulebook.rules
    .filter(({ house, rule }) => house && rule.verdict === 'prefer')
    .map(({ rule }) => rule.id);
}

/** What the firm's preferences add to a wall's score, 0 to 0.09. */
export function wishBonus(verdicts: Verdicts, wishes: readonly string[]): number {
  if (wishes.length === 0) return 0;
  return Math.min(MOST, EACH * wishes.filter((id) => verdicts.verdictOf(id) === 'prefer').length);
}
