import type { Candidate, Face, RetarderChoice } from '../assembly/candidates.ts';
import type { Buck, Cladding, Price, SheathingEntry } from '../assembly/catalogue-schema.ts';
import type { FlangePlace } from '../assembly/flange-seat.ts';
import type { InsulationBuild } from '../assembly/insulation-builds.ts';
import { classAt, mapClasses, type WallSet } from '../assembly/wall-set.ts';
import {
  complianceJudge,
  type EnergyCompliance,
  type EnergyRequirement,
  energyRequirement,
} from '../calculators/energy-code.ts';
import type { SheathingDewPoint } from '../calculators/moisture/sheathing-dew-point.ts';
import { judgeRetarder } from '../calculators/vapour-code.ts';
import type { AnswerContext } from './answer-context.ts';
import { type BuckPart, buckPart } from './buck-part.ts';
import { type CostColumns, fastenerCost, installedCost, installedCosts, priceAt } from './cost-part.ts';
import type { CalculatedParts, VapourPart } from './fact-sheet.ts';
import { boardGroups, type FastenerCounts, type FastenerGroup, fastenerCounts } from './fastener-counts.ts';
import { type FasteningPart, fasteningParts } from './fastening-part.ts';
import {
  type Condensate,
  type CondensateOf,
  condensates,
  dewPointPart,
  inwardPermeance,
  outwardPermeance,
} from './moisture-part.ts';
import { type OnFurring, onFurringWork } from './on-furring.ts';
import { remember, rememberPair, rememberWhileThere } from './remember.ts';
import { namingScenarioFields } from './scenario-fields.ts';
import { type Held, type Shelf, shelfOf } from './shelf.ts';
import { type ThermalPart, thermalPart } from './thermal-part.ts';
import { type WindowsPart, windowsPart } from './windows-part.ts';

type OfVapour<R> = (build: InsulationBuild, inside: RetarderChoice, cladding: Cladding) => R;

type WaterWork = {
  readonly of: CondensateOf;
  /** The same for every class of the set's `water` slot. */
  readonly ofAll: (walls: WallSet) => readonly Condensate[];
};

type CostWork = {
  readonly of: (wall: Candidate) => Price;
  /** The same figures for a whole set at once. */
  readonly ofAll: (walls: WallSet) => CostColumns;
};

/** The calculators of one answer, each remembering the parts that it has worked out. */
export type Works = {
  readonly windows: Held<WindowsPart>;
  readonly requirement: Held<EnergyRequirement>;
  /** What holds a cladding to its furring. */
  readonly onFurring: Held<(cladding: Cladding) => OnFurring | null>;
  readonly fastening: Held<(face: Face) => FasteningPart>;
  /** What holds the boards until the cladding does; the same for every cladding. */
  readonly boards: Held<(build: InsulationBuild, sheathing: SheathingEntry) => readonly FastenerGroup[]>;
  readonly fasteners: Held<(face: Face) => FastenerCounts>;
  readonly thermal: Held<(face: Face) => ThermalPart>;
  readonly energy: Held<(face: Face) => EnergyCompliance>;
  readonly dewPoint: Held<(face: Face) => SheathingDewPoint>;
  readonly condensate: Held<WaterWork>;
  readonly vapour: Held<OfVapour<VapourPart>>;
  readonly buck: Held<(wall: Candidate) => BuckPart>;
  readonly cost: Held<CostWork>;
};

/** Runs the calculators for the candidates of one answer. Parts that walls share are worked out once. */
export type Assessor = {
  readonly works: Works;
  /** What the calculators find for one wall, each part when it is asked for. */
  readonly partsOf: (candidate: Candidate) => CalculatedParts;
  /** The same for the wall at a place of a set, from what is worked out for all its walls at once. */
  readonly partsAt: (walls: WallSet, place: number) => CalculatedParts;
};

/**
 * Calculators of earlier answers whose inputs are the same serve again, with all that they remember.
 *
 * @throws Refusal where a given value lies outside a method's range
 */
export function assessor(context: AnswerContext): Assessor {
  const works = worksOf(context, shelfOf(context.catalogue));
  return {
    works,
    partsOf: (candidate) => new WallParts(candidate, works, null, 0),
    partsAt: (walls, place) => {
      const candidate = walls.candidates[place];
      if (!candidate) throw new Error(`there is no wall ${place}`);
      return new WallParts(candidate, works, walls, place);
    },
  };
}

/** What rests on the place and the studs alone is kept for as many as a firm has: the next job there asks for it again. */
const MANY_PLACES = 120;

/** What a calculator reads of the context must stand in its list here. */
function worksOf(context: AnswerContext, shelf: Shelf): Works {
  const { brief, site, tables, catalogue, framed, outward_wind_psf, climate_zone } = context;
  const { code_edition, framing, cavity_insulation_r } = brief;
  const winter_f = site.climate?.winter_mean_temp_f;
  const months = JSON.stringify(site.climate?.monthly);
  const windowsGiven = JSON.stringify(brief.windows);

  const windows = shelf.hold('windows', [windowsGiven, months, tables.openings, tables.moisture], () =>
    windowsPart(context),
  );
  const requirement = shelf.hold(
    'requirement',
    [code_edition, climate_zone, framing.material, framing.spacing_in, tables.energy],
    () => namingScenarioFields(() => requirementOf(context)),
  );
  const onFurring = onFurringWork(context, shelf);
  const fastening = shelf.hold(
    'fastening',
    [
      onFurring,
      framing.material,
      framing.spacing_in,
      framing.species_gravity,
      context.fastening_framing,
      outward_wind_psf,
      context.field_wind_psf,
      code_edition,
      tables.fastening,
      catalogue,
    ],
    () => fasteningParts(context, onFurring.work),
  );
  const boards = shelf.hold(
    'boards',
    [framing.material, framing.spacing_in, context.fastening_framing, tables.fastening, catalogue],
    () =>
      rememberPair((build: InsulationBuild, sheathing: SheathingEntry) =>
        boardGroups({ build, sheathing }, context),
      ),
  );
  const { corner_area_ft2, field_area_ft2 } = context.corner_zone;
  const fasteners = shelf.hold('fasteners', [fastening, boards, corner_area_ft2, field_area_ft2], () =>
    remember((face: Face) =>
      fastenerCounts(fastening.work(face), boards.work(face.build, face.sheathing), context),
    ),
  );
  // Asked for once for each face: not kept.
  const driving = (face: Face) => fastenerCost(fasteners.work(face), context);
  const thermal = shelf.hold('thermal', [fasteners, framed, framing.material, tables.thermal], () =>
    remember((face: Face) => thermalPart(face, fasteners.work(face).bridging_per_100_ft2, context)),
  );
  const energy = shelf.hold('energy', [thermal, requirement, cavity_insulation_r], () => {
    const judge = complianceJudge(requirement.work);
    return remember((face: Face) =>
      judge({
        u_factor: thermal.work(face).u_factor,
        cavity_r: cavity_insulation_r,
        ci_r: face.build.r,
      }),
    );
  });
  const dewPoint = shelf.hold('dewPoint', [thermal, winter_f, tables.moisture, tables.thermal], () =>
    remember((face: Face) => dewPointPart(face, thermal.work(face), context)),
  );
  const condensate = shelf.hold(
    'condensate',
    [months, framed.cavity_r, framing.depth_in, brief.sheathing, tables.moisture],
    () => waterWork(context),
    MANY_PLACES,
  );
  const vapour = shelf.hold(
    'vapour',
    [code_edition, climate_zone, framing.depth_in, brief.sheathing, tables.vapour],
    () => vapourParts(context),
  );
  const buck = shelf.hold(
    'buck',
    [
      windows,
      framing.material,
      framing.depth_in,
      framing.species_gravity,
      outward_wind_psf,
      brief.wall_area_ft2,
      brief.rough_opening_can_change,
      tables.openings,
      tables.thermal,
      tables.moisture,
      catalogue,
    ],
    () => buckParts(windows.work, context),
  );
  const cost = shelf.hold('cost', [fasteners, buck, windowsGiven, brief.wall_area_ft2, catalogue], () => ({
    of: (wall: Candidate) => installedCost(wall, driving(wall.face), buck.work(wall).supports, context),
    ofAll: rememberWhileThere((walls: WallSet) => installedCosts(walls, driving, buck.work, context)),
  }));
  return {
    windows,
    requirement,
    onFurring,
    fastening,
    boards,
    fasteners,
    thermal,
    energy,
    dewPoint,
    condensate,
    vapour,
    buck,
    cost,
  };
}

class WallParts implements CalculatedParts {
  readonly #wall: Candidate;
  readonly #works: Works;
  /** The set for which everything is worked out at once, and where the wall stands in it. */
  readonly #walls: WallSet | null;
  readonly #place: number;

  constructor(wall: Candidate, works: Works, walls: WallSet | null, place: number) {
    this.#wall = wall;
    this.#works = works;
    this.#walls = walls;
    this.#place = place;
  }

  get thermal() {
    return this.#works.thermal.work(this.#wall.face);
  }
  get energy() {
    return this.#works.energy.work(this.#wall.face);
  }
  get dewPoint() {
    return this.#works.dewPoint.work(this.#wall.face);
  }
  get fastening() {
    return this.#works.fastening.work(this.#wall.face);
  }
  get fasteners() {
    return this.#works.fasteners.work(this.#wall.face);
  }
  get water() {
    const { face, barrier, inside } = this.#wall;
    const { of, ofAll } = this.#works.condensate.work;
    const walls = this.#walls;
    return walls ? classAt(ofAll(walls), walls, 'water', this.#place) : of(face, barrier, inside.retarder);
  }
  get moisture() {
    const { face, barrier, inside } = this.#wall;
    const { condensate_peak_g_m2, dries_within_year } = this.water;
    return {
      outward_permeance_perm: outwardPermeance(face, barrier),
      inward_permeance_perm: inwardPermeance(inside),
      condensate_peak_g_m2,
      dries_within_year,
    };
  }
  get vapour() {
    return this.#works.vapour.work(this.#wall.build, this.#wall.inside, this.#wall.cladding);
  }
  get buck() {
    return this.#works.buck.work(this.#wall);
  }
  get cost() {
    const { of, ofAll } = this.#works.cost.work;
    const walls = this.#walls;
    return walls ? priceAt(ofAll(walls), this.#place) : of(this.#wall);
  }
}

/**
 * The water of many walls at one place. A function of its own: closures made in `worksOf` would keep the works of their
 * whole answer for as long as they are kept themselves.
 */
function waterWork(context: AnswerContext): WaterWork {
  return {
    // What walls share on the way isn't kept: it takes far more room than the figures.
    of: (face, barrier, retarder) => condensates(context)(face, barrier, retarder),
    ofAll: rememberWhileThere((walls: WallSet) => {
      const of = condensates(context);
      return mapClasses(walls, 'water', ({ face, barrier, inside }) => of(face, barrier, inside.retarder));
    }),
  };
}

/** What the energy code asks of this wall: looked up once. */
function requirementOf({ brief, tables, climate_zone }: AnswerContext): EnergyRequirement {
  return energyRequirement(tables.energy, {
    edition: brief.code_edition,
    climate_zone,
    wall: brief.framing.material === 'wood' ? 'wood-frame' : 'steel-frame',
    ...(brief.framing.spacing_in === 24 ? { stud_spacing_in: 24 as const } : {}),
  });
}

/**
 * A buck in a plane carries the same windows behind every cladding, and over all boards of one thickness. Only where no
 * buck lines the opening does the corner feel what the boards are made of.
 */
function buckParts(windows: WindowsPart, context: AnswerContext): (wall: Candidate) => BuckPart {
  const inPlace = rememberPair((sheathing: SheathingEntry, place: FlangePlace) =>
    rememberPair((buck: Buck, build: InsulationBuild) =>
      buckPart({ buck, build, sheathing, place }, windows, context),
    ),
  );
  const asThick = new Map<number, InsulationBuild>();
  return ({ sheathing, seat, buck, build }) => {
    const { thickness_in } = build;
    const first = asThick.get(thickness_in) ?? build;
    asThick.set(thickness_in, first);
    return inPlace(sheathing, seat.place)(buck, buck.support === 'flange-over-insulation' ? build : first);
  };
}

/** The table knows a cladding as vented or not, no more. */
function vapourParts(context: AnswerContext): OfVapour<VapourPart> {
  const behind = (isVented: boolean) =>
    rememberPair((build: InsulationBuild, inside: RetarderChoice) =>
      vapourPart(build, inside, isVented, context),
    );
  const [vented, unvented] = [behind(true), behind(false)];
  return (build, inside, { drainage }) =>
    (drainage.counts_as_vented_cladding ? vented : unvented)(build, inside);
}

function vapourPart(
  build: InsulationBuild,
  { retarder }: RetarderChoice,
  isVented: boolean,
  { brief, tables, climate_zone }: AnswerContext,
): VapourPart {
  const { verdict, why, ...minima } = judgeRetarder(tables.vapour, {
    edition: brief.code_edition,
    climate_zone,
    framing_depth_in: brief.framing.depth_in,
    ci_r: build.r,
    retarder_class: retarder?.class ?? 'class-iii',
    sheathing: brief.sheathing,
    foam_plastic_ci: build.insulation.is_foam_plastic,
    cladding_listed_as_vented: isVented,
  });
  // The minima hold for any wall; a verdict is only given on a retarder that is known.
  return { ...minima, verdict: retarder ? verdict : null, why: retarder ? why : null };
}
