import { dollarsAFoot } from '../../brief/field-words.ts';
import type { AnswerValue, Finding } from '../answers.ts';
import { dividedTotal } from '../budget-total.ts';
import type { Gathering } from './reading.ts';

/**
 * What a sum of dollars means that doesn't say whether it is for a square foot or for the whole wall. Ours by judgement:
 * no wall of the catalogues costs half as much as the first figure, and the last one is a very small job.
 */
export const DOLLARS_MEAN = {
  /** Below this no wall of the catalogues is built, at the lowest of its prices; it is said back before it is taken. */
  least_usd_per_ft2: 9,
  /** Up to here: dollars a square foot. */
  most_usd_per_ft2: 200,
  /** Above this it can't be a square foot's; a budget takes no more. */
  limit_usd_per_ft2: 1000,
  /** From here on a figure without a dollar sign can only be dollars in all; below, it may be square feet. */
  least_bare_total_usd: 5000,
} as const;

/** Takes a sum of dollars without "a foot" or "in all": small for a square foot, large in all, between them asked about. */
export function takeDollars(gathering: Gathering, usd: number, words: string): void {
  if (usd <= DOLLARS_MEAN.most_usd_per_ft2) gathering.findings.push(aFoot(usd, words));
  else if (usd > DOLLARS_MEAN.limit_usd_per_ft2) gathering.budgetTotal = { usd, words };
  else gathering.either = { words, findings: [aFoot(usd, words), inAll(gathering, usd, words)] };
}

/**
 * Takes a figure without any sign where the budget is asked.
 *
 * @returns whether it was taken; not where the budget is not asked, or is found already
 */
export function takeBareBudget(gathering: Gathering, usd: number, words: string): boolean {
  const { context, findings } = gathering;
  if (!gathering.isOpen('budget_usd_per_ft2')) return false;
  if (findings.some(({ field }) => field === 'budget_usd_per_ft2')) return false;
  const isAreaToCome =
    context.answers.wall_area_ft2 === undefined && !findings.some(({ field }) => field === 'wall_area_ft2');
  const mayBeArea = usd > DOLLARS_MEAN.limit_usd_per_ft2 && usd < DOLLARS_MEAN.least_bare_total_usd;
  if (mayBeArea && isAreaToCome) {
    const area: Finding = { field: 'wall_area_ft2', value: usd, words };
    gathering.either = { words, findings: [inAll(gathering, usd, words), area] };
  } else takeDollars(gathering, usd, words);
  return true;
}

/**
 * A budget that no wall can keep is said back: it may be a slip, or the figure of something else. What is left for a
 * square foot of a sum in all hangs on an area that may come later, so that is only remarked on.
 */
export function settleSmallBudget(gathering: Gathering): void {
  const { findings, budgetTotal, either, context } = gathering;
  const least = dollarsAFoot(DOLLARS_MEAN.least_usd_per_ft2);
  const area = findings.find(({ field }) => field === 'wall_area_ft2')?.value;
  const answers = typeof area === 'number' ? { ...context.answers, wall_area_ft2: area } : context.answers;
  if (budgetTotal && isTooSmall(dividedTotal(budgetTotal.usd, answers).usd_per_ft2)) {
    gathering.notes.push(
      `No wall that I know is built for so little: the cheapest takes ${least} a square foot and more. Is "${budgetTotal.words}" all of it? "change budget" mends it.`,
    );
  }
  const at = findings.findIndex(({ field }) => field === 'budget_usd_per_ft2');
  const said = findings[at];
  if (!said || !isTooSmall(said.value) || either) return;
  findings.splice(at, 1);
  gathering.either = {
    words: said.words,
    findings: [said, { field: 'budget_usd_per_ft2', value: 'unknown', words: said.words }],
    asks: `"${said.words}": ${dollarsAFoot(said.value)} a square foot? No wall that I know is built for so little: the cheapest takes ${least} a square foot and more.`,
  };
}

/** Nothing, or less, is refused by its own name. */
function isTooSmall(usd: AnswerValue): usd is number {
  return typeof usd === 'number' && usd > 0 && usd < DOLLARS_MEAN.least_usd_per_ft2;
}

function aFoot(usd: number, words: string): Finding {
  return { field: 'budget_usd_per_ft2', value: usd, words };
}

function inAll({ context }: Gathering, usd: number, words: string): Finding {
  const { usd_per_ft2 } = dividedTotal(usd, context.answers);
  return { field: 'budget_usd_per_ft2', value: usd_per_ft2, words, total_usd: usd };
}
