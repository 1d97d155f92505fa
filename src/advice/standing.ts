import { partitionOf, type WallSet, wallAt } from '../assembly/wall-set.ts';
import type { VerdictTable } from '../rulebook/verdicts.ts';
import type { Judged, JudgedWall } from './judge-walls.ts';
import { wallTitle } from './titles.ts';

/** Fires where the sheathing lies too far below the winter dew point for a wall to compete with warmer ones. */
export const COLD_SHEATHING = 'vapour.cold-sheathing';

/** Something for which a wall comes after all others without it, whatever it scores. */
type Ground = {
  /**
   * Rules of which one firing is enough, each completing "… would score higher, and no rule forbids it, but …"; none
   * where the catalogue tells.
   */
  readonly rules: Readonly<Record<string, string>>;
  /** Completes "Whatever its score, …". */
  readonly only_where: string;
  /** Said of a wall that is ranked all the same, before anything speaks for it. */
  readonly ranked_because: string | null;
};

/**
 * The mildest first. An exception that the code itself makes is a question for the official; a weight of which nothing at
 * all is known is one for an engineer, who may not find an answer; a sheathing that is too
 * cold can rot the wall; what burns endangers people, the boards behind a face less than a face or a gap that flames and
 * embers reach. The synthetic finish is what the job is meant to do without.
 */
const NAMES = [
  'energy-exception',
  'weight-without-a-figure',
  'cold-sheathing',
  'burns-behind-the-face',
  'burns-in-the-open',
  'synthetic-finish',
] as const;
type GroundName = (typeof NAMES)[number];

const LEANS =
  'it misses the tables of the energy code and leans on what the building official may allow in alterations';

const GROUNDS: Readonly<Record<GroundName, Ground>> = {
  'energy-exception': {
    rules: { 'energy.alteration-exception': LEANS, 'energy.alteration-unsettled-2024': LEANS },
    only_where: 'it is ranked only where no wall passes that meets the tables of the energy code.',
    ranked_because:
      'It does not meet the tables of the energy code. It is ranked because no wall passes here that meets them and keeps as dry and as safe from fire. Read its caution on alterations first, and ask the building official before ordering.',
  },
  'weight-without-a-figure': {
    rules: {
      'structure.steel-weight-without-a-figure':
        'nothing is known of what its screws carry across so much insulation, and no score makes up for that',
    },
    only_where: 'it is ranked only where no wall passes whose screws are known to carry the weight.',
    ranked_because: null,
  },
  'cold-sheathing': {
    rules: {
      [COLD_SHEATHING]:
        'its sheathing lies so far below the indoor dew point in winter that no score makes up for it',
    },
    only_where: 'it is ranked only where no wall passes whose sheathing is warmer in winter.',
    ranked_because: null,
  },
  'burns-behind-the-face': {
    rules: {
      'fire.insulation-burns-close-to-the-line':
        'its insulation burns, and the wall stands so close to the lot line that no score makes up for it',
    },
    only_where:
      'it is ranked only where no wall passes whose insulation does not burn, this close to the lot line.',
    ranked_because: null,
  },
  'burns-in-the-open': {
    rules: {
      'fire.combustible-close-to-the-line':
        'its cladding burns, and the wall stands so close to the lot line that no score makes up for it',
      'fire.wildfire-burns-in-the-open':
        'in a wildfire area embers reach what burns in it, its cladding or the insulation behind its open gap, and no score makes up for that',
    },
    only_where:
      'it is ranked only where no wall passes of which less burns within reach of flames and embers.',
    ranked_because: null,
  },
  'synthetic-finish': {
    rules: {},
    only_where: 'the synthetic finish is ranked only where nothing else passes.',
    ranked_because: null,
  },
};

/**
 * Who competes with whom: a wall competes only where none of a lower standing is admitted. One bit for each ground that
 * holds, the weightiest in the highest place, so that two walls are told apart by the weightiest ground that only one of
 * them has. 0: none holds.
 */
export type Standing = number;

/** The standing of a wall on which these grounds hold. */
export function standingBy(...names: readonly GroundName[]): Standing {
  return names.reduce((sum, name) => sum | (1 << NAMES.indexOf(name)), 0);
}

/** The standing of every wall of a set, in its order. */
export function standings(set: WallSet, verdicts: VerdictTable): Uint8Array {
  const standing = new Uint8Array(set.candidates.length);
  for (const name of NAMES) {
    const bit = standingBy(name);
    for (const rule of Object.keys(GROUNDS[name].rules)) {
      if (!verdicts.firesAnywhere(rule)) continue;
      const holds = verdicts.firing(rule);
      for (let i = 0; i < standing.length; i++) if (holds(i)) standing[i] = (standing[i] ?? 0) | bit;
    }
  }
  const last = standingBy('synthetic-finish');
  const { at, first } = partitionOf(set, ['cladding']);
  const isSynthetic = Array.from(first, (place) => wallAt(set, place).cladding.is_insulated_finish);
  for (let i = 0; i < standing.length; i++) {
    if (isSynthetic[at[i] ?? 0]) standing[i] = (standing[i] ?? 0) | last;
  }
  return standing;
}

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
    const rule = firingRule(name, wall);
    if (rule === null) return [];
    const scores = `${wall.score.toFixed(2)} against ${first.score.toFixed(2)}`;
    return [
      {
        text: `${wallTitle(wall.candidate)} would score higher, ${scores}, and no rule forbids it, but ${GROUNDS[name].rules[rule]}.`,
        rule,
      },
    ];
  });
}

/** What has to be said of a ranked wall before anything speaks for it. */
export function rankedBecause(wall: JudgedWall): Told[] {
  return NAMES.flatMap((name) => {
    const text = GROUNDS[name].ranked_because;
    const rule = firingRule(name, wall);
    return text === null || rule === null || (wall.standing & standingBy(name)) === 0 ? [] : [{ text, rule }];
  });
}

function firingRule(name: GroundName, wall: JudgedWall): string | null {
  return Object.keys(GROUNDS[name].rules).find((rule) => wall.verdicts.fires(rule)) ?? null;
}

/** The weightiest ground of a standing above 0. */
function weightiest(standing: Standing): GroundName {
  const name = NAMES[31 - Math.clz32(standing)];
  if (!name) throw new Error(`no ground makes a standing of ${standing}`);
  return name;
}
