import { listed } from '../base/listed.ts';
import { RETARDERS } from '../brief/scenario.ts';
import { GROUND_NAMES, GROUNDS, type GroundName } from './grounds.ts';
import type { Judged, JudgedWall } from './judge-walls.ts';
import { type Standing, standingBy, weightiest } from './standing.ts';
import { wallTitle } from './titles.ts';

/** Why a wall comes after one of a lower standing. */
export function rankedOnlyWhere(standing: Standing, lower: Standing): string {
  return `Whatever its score, ${GROUNDS[weightiest(standing & ~lower)].only_where}`;
}

/** Something about a wall's rank, with the rule behind it. */
type Told = { readonly text: string; readonly rule: string };

/** Why a first choice stands before walls that score higher: for every ground the best of those that it keeps back. */
export function whyBeforeOthers(first: JudgedWall, { admitted }: Pick<Judged, 'admitted'>): Told[] {
  const best = new Map<GroundName, JudgedWall>();
  for (const wall of admitted) {
    if (wall.standing <= first.standing || wall.score <= first.score) continue;
    const name = weightiest(wall.standing & ~first.standing);
    if (wall.score > (best.get(name)?.score ?? 0)) best.set(name, wall);
  }
  return [...best].flatMap(([name, wall]) => {
    const against = whatSpeaksAgainst(name, wall, first);
    if (against === null) return [];
    const scores = `${wall.score.toFixed(2)} against ${first.score.toFixed(2)}`;
    return [
      {
        text: `${wallTitle(wall.candidate)} would score higher, ${scores}, and no rule forbids it, but ${against.text}.`,
        rule: against.rule,
      },
    ];
  });
}

/** What has to be said of a ranked wall before anything speaks for it. */
export function rankedBecause(wall: JudgedWall): Told[] {
  const known = GROUND_NAMES.flatMap((name) => {
    const text = GROUNDS[name].ranked_because;
    const rule = firingRule(name, wall);
    return text === null || rule === null || !holds(name, wall) ? [] : [{ text, rule }];
  });
  return [...known, ...forbiddenByLining(wall)];
}

function forbiddenByLining(wall: JudgedWall): Told[] {
  const found = wall.forbiddenLinings;
  const [first] = found;
  if (!first) return [];
  const isAnything = found.length === RETARDERS.length;
  const words = isAnything
    ? 'whatever it is'
    : `if ${listed(
        found.map((one) => one.words),
        'or',
      )}`;
  const why = found.length === 1 ? first.reason : `If ${first.words}: ${first.reason}`;
  return [
    {
      text: `What is behind the lining is not known, and a rule forbids this wall ${words}. ${why} Look behind it before ordering, and choose again then.`,
      rule: first.rule,
    },
  ];
}

/** Completes "… would score higher, and no rule forbids it, but …". */
function whatSpeaksAgainst(name: GroundName, wall: JudgedWall, first: JudgedWall): Told | null {
  if (name === 'lining-not-known') {
    const [found] = wall.forbiddenLinings;
    return found ? { text: `a rule does if ${found.words}, and nobody has looked`, rule: found.rule } : null;
  }
  const rule = firingRule(name, wall);
  const text = rule === null ? undefined : GROUNDS[name].rules[rule];
  if (rule === null || text === undefined) return null;
  return { text: holds(name, first) ? (GROUNDS[name].more ?? text) : text, rule };
}

function holds(name: GroundName, wall: JudgedWall): boolean {
  return (wall.standing & standingBy(name)) !== 0;
}

function firingRule(name: GroundName, wall: JudgedWall): string | null {
  return Object.keys(GROUNDS[name].rules).find((rule) => wall.verdicts.fires(rule)) ?? null;
}
