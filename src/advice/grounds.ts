import { RETARDERS } from '../brief/scenario.ts';

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
export const GROUND_NAMES = [
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
export type GroundName = (typeof GROUND_NAMES)[number];

/**
 * Grounds that hold by degrees: as many places as degrees, filled from the lowest, so that the milder comes first. The
 * sheathing is told apart by every 5 °F that it is colder (our choice: less is within what a winter differs by).
 */
export const DEGREES: Partial<Readonly<Record<GroundName, number>>> = {
  'cold-sheathing': 8,
  'lining-not-known': RETARDERS.length,
};
export const COLD_STEP_F = 5;

const LEANS =
  'it misses the tables of the energy code and leans on what the building official may allow in alterations';

export const GROUNDS: Readonly<Record<GroundName, Ground>> = {
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
