import { partitionOf, type WallSet, wallAt } from '../assembly/wall-set.ts';
import type { Works } from '../assessment/assess.ts';
import { listed } from '../base/listed.ts';
import { RETARDERS } from '../brief/scenario.ts';
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
  /** Said in place of these where the wall before it has some of the same, but less. */
  readonly more?: string;
  /** Completes "Whatever its score, …". */
  readonly only_where: string;
  /** Said of a wall that is ranked all the same, before anything speaks for it. */
  readonly ranked_because: string | null;
};

/**
 * The mildest first. An exception that the code itself makes is a question for the official; a weight of which nothing at
 * all is known is one for an engineer, who may not find an answer; what rain keeps wet wears out; a sheathing that is too
 * cold can rot the wall, and so can a lining that nobody has looked behind; what burns endangers people, the boards behind
 * a face less than a face or a gap that flames and embers reach. What stands on the land next door can't be built unless
 * its owner agrees. The synthetic finish is what the job is meant to do
 * without.
 */
const NAMES = [
  'energy-exception',
  'weight-without-a-figure',
  'stays-wet',
  'cold-sheathing',
  'lining-not-known',
  'foam-high-up',
  'face-burns-high-up',
  'burns-behind-the-face',
  'burns-in-the-open',
  'over-the-line',
  'synthetic-finish',
] as const;
type GroundName = (typeof NAMES)[number];

/**
 * Grounds that hold by degrees: as many places as degrees, filled from the lowest, so that the milder comes first. The
 * sheathing is told apart by every 5 °F that it is colder (our choice: less is within what a winter differs by).
 */
const DEGREES: Partial<Readonly<Record<GroundName, number>>> = {
  'cold-sheathing': 8,
  'lining-not-known': RETARDERS.length,
};
const COLD_STEP_F = 5;

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
  'stays-wet': {
    rules: {
      'rain.extreme-rain-wants-air':
        'its cladding stores rain, and where so much falls nothing but gravity to dry its back is too little',
    },
    only_where:
      'where so much rain falls it is ranked only if no wall passes whose cladding stores none, or is dried by air from behind.',
    ranked_because: null,
  },
  'cold-sheathing': {
    rules: {
      [COLD_SHEATHING]:
        'its sheathing lies so far below the indoor dew point in winter that no score makes up for it',
    },
    more: 'its sheathing lies colder still in winter, and no score makes up for that',
    only_where: 'it is ranked only where no wall passes whose sheathing is warmer in winter.',
    ranked_because: null,
  },
  'lining-not-known': {
    rules: {},
    only_where:
      'it is ranked only where no wall passes with more of what may be behind the lining, which is not known.',
    ranked_because: null,
  },
  'foam-high-up': {
    rules: {
      'fire.tall-foam-wall':
        'its insulation burns, and on a wall this tall that may need the whole wall tested for fire, so that no score makes up for it',
    },
    only_where:
      'it is ranked only where no wall passes whose insulation does not burn, on a building this tall.',
    ranked_because: null,
  },
  'face-burns-high-up': {
    rules: {
      'fire.combustible-cladding-height':
        'its cladding burns, and the building is taller than the code lets most of such coverings go, so that no score makes up for it',
    },
    only_where:
      'it is ranked only where no wall passes whose cladding does not burn, on a building this tall.',
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
  'over-the-line': {
    rules: {
      'fire.added-thickness-over-the-line':
        'its face would stand on the lot line or on the land next door, and no score makes up for that',
    },
    only_where: 'it is ranked only where no wall passes whose face stays off the lot line.',
    ranked_because:
      'Its face would stand on the lot line or on the land next door: no wall passes here that stays off it. Without the neighbour’s written consent and the approval of the building and zoning offices it can’t be built. Have the line surveyed first.',
  },
  'synthetic-finish': {
    rules: {},
    only_where: 'the synthetic finish is ranked only where nothing else passes.',
    ranked_because: null,
  },
};

/**
 * Who competes with whom: a wall competes only where none of a lower standing is admitted. One bit for each ground that
 * holds (one for each degree, where it holds by degrees), the weightiest in the highest place, so that two walls are told
 * apart by the weightiest ground that only one of them has, or has more of. 0: none holds.
 */
export type Standing = number;

/** The ground that each bit stands for, from the lowest. */
const BITS: readonly GroundName[] = NAMES.flatMap((name) =>
  new Array<GroundName>(DEGREES[name] ?? 1).fill(name),
);

/** The standing of a wall on which these grounds hold, in the first degree. */
export function standingBy(...names: readonly GroundName[]): Standing {
  return names.reduce((sum, name) => sum | degrees(name, 1), 0);
}

/** The bits of so many degrees of a ground; no more than it has. */
function degrees(name: GroundName, count: number): Standing {
  const filled = 2 ** Math.min(count, DEGREES[name] ?? 1) - 1;
  return filled << BITS.indexOf(name);
}

/** The standing of every wall of a set, in its order. */
export function standings({
  set,
  verdicts,
  assess: { works },
  linings,
}: Pick<Judged, 'set' | 'verdicts' | 'assess' | 'linings'>): Uint32Array {
  const standing = new Uint32Array(set.candidates.length);
  const add = (place: number, bits: Standing) => {
    standing[place] = (standing[place] ?? 0) | bits;
  };
  for (const name of NAMES) {
    for (const rule of Object.keys(GROUNDS[name].rules)) {
      if (!verdicts.firesAnywhere(rule)) continue;
      const fires = verdicts.firing(rule);
      const bitsOf = name === 'cold-sheathing' ? coldness(set, works) : () => degrees(name, 1);
      for (let i = 0; i < standing.length; i++) if (fires(i)) add(i, bitsOf(i));
    }
  }
  for (const { forbids } of linings) {
    for (let i = 0; i < standing.length; i++)
      if (forbids(i)) add(i, oneMore(standing[i] ?? 0, 'lining-not-known'));
  }
  const last = standingBy('synthetic-finish');
  const { at, first } = partitionOf(set, ['cladding']);
  const isSynthetic = Array.from(first, (place) => wallAt(set, place).cladding.is_insulated_finish);
  for (let i = 0; i < standing.length; i++) if (isSynthetic[at[i] ?? 0]) add(i, last);
  return standing;
}

/** One more degree of a ground than a standing has. */
function oneMore(standing: Standing, name: GroundName): Standing {
  const all = degrees(name, DEGREES[name] ?? 1);
  return (((standing & all) << 1) | standingBy(name)) & all;
}

/** How cold the sheathing of each wall is, where it counts as too cold. */
function coldness(set: WallSet, works: Works): (place: number) => Standing {
  const { at, first } = partitionOf(set, ['face']);
  const bits = Array.from(first, (place) => {
    const below_f = -(works.dewPoint.work(wallAt(set, place).face).dew_point_margin_f ?? 0);
    return degrees('cold-sheathing', Math.max(1, Math.floor(below_f / COLD_STEP_F)));
  });
  return (place) => bits[at[place] ?? -1] ?? 0;
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
  const known = NAMES.flatMap((name) => {
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

/** The weightiest ground of a standing above 0. */
function weightiest(standing: Standing): GroundName {
  const name = BITS[31 - Math.clz32(standing)];
  if (!name) throw new Error(`no ground makes a standing of ${standing}`);
  return name;
}
