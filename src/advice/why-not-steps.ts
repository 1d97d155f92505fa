import type { InsulationBuild } from '../assembly/insulation-builds.ts';
import { CREW_RANK } from '../assessment/fact-sheet.ts';
import { addedThickness } from '../assessment/wall-layers.ts';
import { inches } from '../base/inches.ts';
import type { Brief } from '../brief/brief.ts';
import type { OpenAssumption } from '../brief/resolve-brief.ts';
import { CREW_SKILLS, FINISHES, RETARDERS, SHEATHINGS } from '../brief/scenario.ts';
import type { JudgedWall } from './judge-walls.ts';
import type { NamedAssembly } from './named-assembly.ts';

/** One answer given otherwise, or the wall itself built a little otherwise. */
export type Option = {
  readonly to: string;
  /** Completes "It would be admitted if …". */
  readonly words: string;
  /** How far it is from what stands; the smaller, the sooner it is tried. */
  readonly movement: number;
  readonly change?: Partial<Brief>;
  readonly builds?: readonly InsulationBuild[];
};

/** What can be changed, with its options nearest first. */
export type Step = {
  readonly field: string;
  readonly from: string;
  readonly options: readonly Option[];
  /**
   * For an amount of which more never hurts: the option for a number of units, from the least to try to the most. The
   * options above then hold only the most.
   */
  readonly amount?: {
    readonly least: number;
    readonly most: number;
    readonly at: (units: number) => Option;
    /** How many units a wall seems to need: where to look first. */
    readonly needOf?: (wall: JudgedWall) => number;
  };
};

/** Fillings that are on the market or found in walls, h·ft²·°F/Btu. */
const CAVITY_R = [0, 11, 13, 15, 19, 20, 21, 23, 25, 30, 38];

/** The densest that is laid between studs: R-15 batts in 3-1/2 in. (recalled), h·ft²·°F/Btu for an inch. */
const MOST_R_PER_IN = 4.3;

/** More than any budget or wall needs. */
const MOST_USD = 1000;
const MOST_ROOM_IN = 20;
const STEPS_PER_INCH = 8;

const plain = (value: string) => value.replaceAll('-', ' ');

/**
 * Every single change that is tried, of answers that somebody can give otherwise and of the wall itself. Movements are
 * proportions (of the budget, the room, the thickness, ten R of filling) and ranks (half a point for each rank of crew,
 * one for a choice in new work, two for opening up a standing wall, half for something that may turn out so anyhow).
 */
export function stepsFrom(
  brief: Brief,
  assumptions: readonly OpenAssumption[],
  named: NamedAssembly,
  allBuilds: readonly InsulationBuild[],
): Step[] {
  const isNew = brief.project === 'new';
  const assumed = new Set(assumptions.map(({ field }) => field));
  const steps: Step[] = [
    boards(named, allBuilds),
    choice('finish', FINISHES, brief.finish, 1, (finish) => ({ finish }), {
      'cement-stucco': 'only true cement stucco were wanted',
      'stucco-look': 'the look of stucco were enough',
      any: 'any finish would do',
    }),
    crew(brief),
    {
      field: 'cavity_insulation_r',
      from: `R-${brief.cavity_insulation_r}`,
      options: fillings(brief).map((r) => ({
        to: `R-${r}`,
        words: r === 0 ? 'the stud bays were empty' : `the stud bays held R-${r}`,
        movement: Math.abs(r - brief.cavity_insulation_r) / 10 + (isNew ? 0 : 1),
        change: { cavity_insulation_r: r },
      })),
    },
    choice(
      'interior_vapour_retarder',
      OFFERED_RETARDERS,
      brief.interior_vapour_retarder,
      isNew ? 1 : assumed.has('interior_vapour_retarder') ? 0.5 : 2,
      (interior_vapour_retarder) => ({ interior_vapour_retarder }),
      {
        'class-iii': 'the vapour retarder inside were Class III (latex paint)',
        'class-ii': 'the vapour retarder inside were Class II (kraft facing or primer)',
        'class-i': 'the vapour retarder inside were Class I (polyethylene)',
        responsive: 'the vapour retarder inside were a responsive membrane',
      },
    ),
    {
      field: 'rough_opening_can_change',
      from: brief.rough_opening_can_change ? 'yes' : 'no',
      options: brief.rough_opening_can_change
        ? []
        : [
            {
              to: 'yes',
              words: 'the rough openings could be enlarged',
              movement: isNew ? 1 : 2,
              change: { rough_opening_can_change: true },
            },
          ],
    },
    spacing(brief, isNew),
    sheathing(brief, assumed.has('sheathing')),
    windowsOtherwise(brief),
    budget(brief),
    room(brief),
  ];
  const own = new Set(steps.map(({ field }) => field));
  const others = assumptions
    .filter(({ field, alternatives }) => alternatives.length > 0 && !own.has(field) && field !== 'priorities')
    .map(
      ({ field, value, alternatives }): Step => ({
        field,
        from: value === null ? 'not known' : String(value),
        options: alternatives.map(({ label, change }) => ({
          to: label,
          words: `it turned out that ${label}`,
          movement: 0.5,
          change,
        })),
      }),
    );
  return [...steps, ...others]
    .map((step) => ({ ...step, options: [...step.options].sort((a, b) => a.movement - b.movement) }))
    .filter(({ options }) => options.length > 0);
}

/** Other fillings that the bays hold; nobody empties the bays of a standing wall to admit another cladding. */
function fillings({ project, framing, cavity_insulation_r: now }: Brief): number[] {
  return CAVITY_R.filter(
    (r) => r !== now && r <= MOST_R_PER_IN * framing.depth_in && (project === 'new' || r > now),
  );
}

/** Paint is always at hand and never worse for the wall: nobody is told to leave the lining bare. */
const OFFERED_RETARDERS = RETARDERS.filter((kind) => kind !== 'none');

function choice<T extends string>(
  field: keyof Brief,
  values: readonly T[],
  now: T | null,
  movement: number,
  change: (value: T) => Partial<Brief>,
  words: Readonly<Record<string, string>>,
): Step {
  return {
    field,
    from: now === null ? 'not known' : plain(now),
    options: values
      .filter((value) => value !== now)
      .map((value) => ({
        to: plain(value),
        words: words[value] ?? plain(value),
        movement,
        change: change(value),
      })),
  };
}

/**
 * What is found on the studs of a standing wall is a fact, and the rules on opened bays read it as found: new sheathing
 * doesn't undo that the bays stood open.
 */
function sheathing({ project, sheathing: now }: Brief, isAssumed: boolean): Step {
  if (project === 'retrofit' && !isAssumed) return { field: 'sheathing', from: plain(now), options: [] };
  return choice('sheathing', SHEATHINGS, now, isAssumed ? 0.5 : 1, (kind) => ({ sheathing: kind }), {
    ...Object.fromEntries(SHEATHINGS.map((kind) => [kind, `the sheathing were ${kind}`])),
    none: 'there were no sheathing',
  });
}

function crew({ crew_skill }: Brief): Step {
  const now = CREW_RANK[crew_skill];
  return {
    field: 'crew_skill',
    from: plain(crew_skill),
    options: CREW_SKILLS.filter((skill) => CREW_RANK[skill] > now).map((skill) => ({
      to: plain(skill),
      words: `the crew were ${plain(skill).replace('general', 'a general one')}`,
      movement: (CREW_RANK[skill] - now) / 2,
      change: { crew_skill: skill },
    })),
  };
}

function spacing({ framing }: Brief, isNew: boolean): Step {
  const isWide = framing.spacing_in > 16;
  return {
    field: 'framing.spacing_in',
    from: `${framing.spacing_in} in.`,
    options:
      isNew && isWide
        ? [
            {
              to: '16 in.',
              words: 'the studs stood at 16 in. on center',
              movement: 1,
              change: { framing: { ...framing, spacing_in: 16 } },
            },
          ]
        : [],
  };
}

function windowsOtherwise({ windows }: Brief): Step {
  const isTriple = windows.some((window) => window.glazing === 'triple');
  const isFlangeless = windows.some((window) => window.mounting === 'flangeless');
  const options: Option[] = [];
  if (isTriple)
    options.push({
      to: 'double-glazed',
      words: 'the triple-glazed windows were double-glazed (and weighed what such windows do)',
      movement: 1,
      change: {
        windows: windows.map((window) =>
          window.glazing === 'triple' ? { ...window, glazing: 'double' as const, weight_lb: null } : window,
        ),
      },
    });
  if (isFlangeless)
    options.push({
      to: 'flanged',
      words: 'the windows without a flange had one',
      movement: 1,
      change: { windows: windows.map((window) => ({ ...window, mounting: 'flanged' as const })) },
    });
  const now = [...(isTriple ? ['triple-glazed'] : []), ...(isFlangeless ? ['without a flange'] : [])];
  return { field: 'windows', from: now.join(', '), options };
}

function budget({ budget_usd_per_ft2: now }: Brief): Step {
  const from = now === null ? 'open' : `$${now}`;
  if (now === null) return { field: 'budget_usd_per_ft2', from, options: [] };
  const at = (usd: number): Option => ({
    to: `$${usd}`,
    words: `the budget were $${usd} a square foot`,
    movement: (usd - now) / now,
    change: { budget_usd_per_ft2: usd },
  });
  const least = Math.floor(now) + 1;
  return {
    field: 'budget_usd_per_ft2',
    from,
    options: [at(MOST_USD)],
    amount: { least, most: MOST_USD, at, needOf: (wall) => Math.ceil(wall.parts.cost.low) },
  };
}

function room({ max_added_thickness_in: now }: Brief): Step {
  const from = now === null ? 'open' : `${inches(now)} in.`;
  if (now === null || now >= MOST_ROOM_IN) return { field: 'max_added_thickness_in', from, options: [] };
  const at = (eighths: number): Option => {
    const wide_in = eighths / STEPS_PER_INCH;
    return {
      to: `${inches(wide_in)} in.`,
      words: `${inches(wide_in)} in. could be added outside the sheathing`,
      movement: (wide_in - now) / now,
      change: { max_added_thickness_in: wide_in },
    };
  };
  const least = Math.floor(now * STEPS_PER_INCH) + 1;
  const most = MOST_ROOM_IN * STEPS_PER_INCH;
  const needOf = ({ candidate }: JudgedWall) =>
    Math.ceil(addedThickness(candidate.face, candidate.barrier) * STEPS_PER_INCH);
  return { field: 'max_added_thickness_in', from, options: [at(most)], amount: { least, most, at, needOf } };
}

/** Other thicknesses and layers of the insulation that was named. */
function boards(named: NamedAssembly, allBuilds: readonly InsulationBuild[]): Step {
  const sizes = [...new Set(named.builds.map(({ thickness_in }) => thickness_in))];
  const from = `${sizes.map(inches).join(' or ')} in.`;
  if (!named.isSized) return { field: 'wall', from, options: [] };
  const kinds = new Set(named.builds.map(({ insulation }) => insulation.id));
  const layers = new Set(named.builds.map(({ boards_in }) => boards_in.length));
  const groups = new Map<string, InsulationBuild[]>();
  for (const build of allBuilds) {
    if (!kinds.has(build.insulation.id) || named.builds.includes(build)) continue;
    const key = `${build.thickness_in}/${build.boards_in.length}`;
    groups.set(key, [...(groups.get(key) ?? []), build]);
  }
  const options = [...groups.values()].flatMap((builds): Option[] => {
    const [build] = builds;
    if (!build) return [];
    const away = Math.min(...sizes.map((size) => Math.abs(size - build.thickness_in) / size));
    const count = build.boards_in.length;
    const size = `${inches(build.thickness_in)} in. in ${count === 1 ? 'one layer' : `${count} layers`}`;
    return [
      {
        to: size,
        words: `the insulation were ${size}`,
        movement: away + (layers.has(count) ? 0 : 0.25),
        builds,
      },
    ];
  });
  return { field: 'wall', from, options };
}
