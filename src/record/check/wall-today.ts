import { criterionWords } from '../../advice/criterion-words.ts';
import { houseDefaults } from '../../advice/house-effect.ts';
import { type JudgedWall, judgeWalls, type Knowledge } from '../../advice/judge-walls.ts';
import { withOwnPrices } from '../../advice/own-prices.ts';
import { rankedOnlyWhere } from '../../advice/standing-words.ts';
import { resolveBrief } from '../../brief/resolve-brief.ts';
import type { Scenario } from '../../brief/scenario.ts';
import { resolveSite } from '../../site/resolve-site.ts';
import { fixed } from '../figure-text.ts';

/** What became of a wall that once was decided on. */
export type WallToday = {
  readonly state: 'not-drawn-up' | 'forbidden' | 'outranked' | 'still-first';
  /** In words, for people. */
  readonly why: readonly string[];
  /** The rules that forbid it. */
  readonly rules: readonly string[];
};

/**
 * Judges a wall by today's rules, data and prices and says why it isn't decided on any more.
 *
 * @param id     of the wall, as the record has it
 * @throws Refusal where the scenario lies outside a calculator's range
 */
export async function wallToday(id: string, scenario: Scenario, known: Knowledge): Promise<WallToday> {
  const { brief } = resolveBrief(scenario, houseDefaults(known.rulebook.house));
  const site = await resolveSite(brief.place, brief.code_edition);
  const judged = await judgeWalls(brief, site, withOwnPrices(known, brief));
  const wall = judged.walls.find(({ candidate }) => candidate.id === id);
  if (!wall) {
    const why =
      'That wall is not drawn up any more: its parts or their limits have changed in the catalogue.';
    return { state: 'not-drawn-up', why: [why], rules: [] };
  }
  if (wall.forbids > 0) {
    const against = wall.verdicts.outcomes().filter(({ verdict }) => verdict === 'forbid');
    return {
      state: 'forbidden',
      why: against.map(({ rule, text }) => `${text} (${rule.id})`),
      rules: against.map(({ rule }) => rule.id),
    };
  }
  return outranked(wall, judged.best);
}

function outranked(wall: JudgedWall, first: JudgedWall | null): WallToday {
  if (!first || first === wall) {
    return {
      state: 'still-first',
      why: ['That wall still comes first among the walls that pass.'],
      rules: [],
    };
  }
  const gains = Object.entries(first.scores)
    .map(([key, score]) => ({ key, gap: score - (wall.scores[key as keyof typeof wall.scores] ?? 0) }))
    .filter(({ gap }) => gap >= 0.005)
    .sort((a, b) => b.gap - a.gap)
    .map(({ key, gap }) => `${criterionWords(key)} (+${fixed(gap, 2)})`);
  const ahead = gains.length > 0 ? `; it is ahead in ${gains.join(', ')}` : '';
  const why =
    wall.standing > first.standing
      ? `That wall still passes, but another comes before it today. ${rankedOnlyWhere(wall.standing, first.standing)}`
      : `That wall still passes, but another scores better today: ${toldApart(first.score, wall.score)}${ahead}.`;
  return { state: 'outranked', why: [why], rules: [] };
}

const DECIMALS = [3, 4, 5, 6];

/** Two scores with as many decimals as it takes to see which is the greater. */
function toldApart(more: number, less: number): string {
  const decimals = DECIMALS.find((digits) => fixed(more, digits) !== fixed(less, digits));
  return decimals === undefined
    ? `${fixed(more, 3)} each, so that what carries no weight decides`
    : `${fixed(more, decimals)} against ${fixed(less, decimals)}`;
}
