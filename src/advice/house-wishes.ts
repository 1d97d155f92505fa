import type { Rulebook } from '../rulebook/rulebook.ts';
import type { VerdictTable } from '../rulebook/verdicts.ts';

/** What one preference of the firm adds to a wall's score: enough to settle near-ties, too little to hide a bad wall. */
const EACH = 0.03;
const MOST = 0.09;

/** Ids of the preferences of a firm's own packs. The shipped preferences give reasons and move no score. */
export function houseWishes(rulebook: Rulebook): string[] {
  return rulebook.rules
    .filter(({ house, rule }) => house && rule.verdict === 'prefer')
    .map(({ rule }) => rule.id);
}

/** What the firm's preferences add to each wall's score, 0 to 0.09; null where it has none. */
export function wishBonuses(verdicts: VerdictTable, wishes: readonly string[]): Float64Array | null {
  if (wishes.length === 0) return null;
  const met = new Float64Array(verdicts.sheets.count);
  for (const id of wishes) {
    const place = verdicts.position(id);
    if (place === undefined) continue;
    for (let i = 0; i < met.length; i++) {
      if (verdicts.state(i, place) === 'fires') met[i] = (met[i] ?? 0) + 1;
    }
  }
  return met.map((count) => Math.min(MOST, EACH * count));
}
