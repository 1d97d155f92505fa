import type { CodeEdition } from '../base/code-editions.ts';
import { refuseOtherSchema } from '../base/other-schema.ts';
import { parseInput } from '../base/parse-input.ts';
import { Refusal, showValue } from '../base/refusal.ts';
import { readScenario, SCENARIO_SCHEMA } from '../brief/read-scenario.ts';
import type { FINISHES, Place, Scenario } from '../brief/scenario.ts';
import { FIRM_SCHEMA, type Firm, type FirmFraming, firmSchema } from './firm-file.ts';
import { framingText } from './framing-text.ts';

const FIRM_OR_SCENARIO = `Give a firm’s file, "${FIRM_SCHEMA}", or a scenario, "${SCENARIO_SCHEMA}".`;

export const USUAL_WITHIN = 0.05;
/** A judgement takes some tenths of a second: beyond this nobody would wait, or read it. */
export const MOST_CELLS = 400;

/** What a matrix is made of. An axis that is null is the base's own single value. */
export type MatrixPlan = {
  readonly name: string;
  readonly base: Omit<Scenario, 'place'>;
  readonly places: readonly Place[];
  readonly framings: readonly FirmFraming[] | null;
  readonly finishes: readonly (typeof FINISHES)[number][] | null;
  readonly budgets: readonly (number | null)[] | null;
  readonly within_score: number;
};

/** What stands on the command line goes before what stands in the file. */
export type Axes = {
  readonly places?: readonly Place[];
  readonly framings?: readonly FirmFraming[];
  readonly finishes?: readonly (typeof FINISHES)[number][];
  readonly budgets?: readonly (number | null)[];
  readonly within_score?: number;
  readonly edition?: CodeEdition;
};

/** One wall of the matrix: where it stands in it, and as a scenario of its own. */
export type PlannedCell = {
  readonly place: string;
  /** Null: the base's own, or the assumption where it has none. */
  readonly framing: string | null;
  readonly finish: (typeof FINISHES)[number] | null;
  readonly budget_usd_per_ft2: number | null;
  readonly scenario: Scenario;
};

/**
 * Reads a firm's file, or a scenario to be taken as the base.
 *
 * @param data  parsed JSON
 * @param name  how messages call it
 * @throws Refusal for what is neither, doubled values on an axis, too many cells
 */
export function planMatrix(data: unknown, name: string, axes: Axes = {}): MatrixPlan {
  if (typeof data !== 'object' || data === null || Array.isArray(data)) {
    throw new Refusal({ field: name, value: showValue(data), accepted: FIRM_OR_SCENARIO });
  }
  refuseOtherSchema(data, [FIRM_SCHEMA, SCENARIO_SCHEMA], FIRM_OR_SCENARIO, name);
  const plan = isFirm(data)
    ? planOfFirm(parseInput(firmSchema, data, name), axes)
    : planOfScenario(readScenario(data, name, FIRM_OR_SCENARIO), axes);
  refuseDoubles(plan);
  const cells = cellsOf(plan).length;
  if (cells > MOST_CELLS) {
    throw new Refusal({
      field: 'matrix',
      value: `${cells} cells`,
      accepted: `Give at most ${MOST_CELLS} cells: fewer zones, framings, finishes or budgets.`,
    });
  }
  return plan;
}

function isFirm(data: object): boolean {
  return 'schema' in data && data.schema === FIRM_SCHEMA;
}

function planOfFirm(firm: Firm, axes: Axes): MatrixPlan {
  return {
    name: firm.name,
    base: baseOf({ ...firm.base, schema: 'cladwright-scenario/1' }, axes),
    places: axes.places ?? firm.places,
    framings: axes.framings ?? firm.framings,
    finishes: axes.finishes ?? firm.finishes ?? null,
    budgets: axes.budgets ?? firm.budgets_usd_per_ft2 ?? null,
    within_score: axes.within_score ?? firm.within_score ?? USUAL_WITHIN,
  };
}

function planOfScenario({ place, name, ...base }: Scenario, axes: Axes): MatrixPlan {
  return {
    name: name?.trim() || 'Wall standard',
    base: baseOf(base, axes),
    places: axes.places ?? [place],
    framings: axes.framings ?? null,
    finishes: axes.finishes ?? null,
    budgets: axes.budgets ?? null,
    within_score: axes.within_score ?? USUAL_WITHIN,
  };
}

function baseOf(base: Omit<Scenario, 'place'>, { edition }: Axes): Omit<Scenario, 'place'> {
  return edition === undefined ? base : { ...base, code_edition: edition };
}

/** The cells in the order of reading: finish, budget, place, framing. */
export function cellsOf(plan: MatrixPlan): PlannedCell[] {
  const finishes = plan.finishes ?? [null];
  const budgets = plan.budgets ?? [undefined];
  const framings = plan.framings ?? [null];
  return finishes.flatMap((finish) =>
    budgets.flatMap((budget) =>
      plan.places.flatMap((place) => framings.map((framing) => cellOf(plan, place, framing, finish, budget))),
    ),
  );
}

function cellOf(
  { base }: MatrixPlan,
  place: Place,
  framing: FirmFraming | null,
  finish: (typeof FINISHES)[number] | null,
  budget: number | null | undefined,
): PlannedCell {
  const { framing: ownFraming, cavity_insulation_r, finish: ownFinish, budget_usd_per_ft2, ...rest } = base;
  const scenario: Scenario = {
    ...rest,
    place,
    ...(framing ? framed(framing, ownFraming) : present({ framing: ownFraming, cavity_insulation_r })),
    ...present({ finish: finish ?? ownFinish }),
    ...present({ budget_usd_per_ft2: budget === undefined ? budget_usd_per_ft2 : (budget ?? undefined) }),
  };
  const money = scenario.budget_usd_per_ft2;
  return {
    place: placeText(place),
    framing: framing && framingText(framing),
    finish,
    budget_usd_per_ft2: typeof money === 'number' ? money : null,
    scenario,
  };
}

/**
 * The base's cavity insulation belongs to the base's studs: other studs bring their own or the usual fill. Steel that the
 * base names is the firm's, whatever the depth of the studs.
 */
function framed(
  { name: _, cavity_insulation_r, material, depth_in, spacing_in, species_gravity, ...own }: FirmFraming,
  base: Scenario['framing'],
) {
  const ofBase = typeof base === 'object' && base.material === 'steel' ? base.steel_thickness_mil : undefined;
  const steel_thickness_mil = own.steel_thickness_mil ?? (material === 'steel' ? ofBase : undefined);
  return {
    framing: { material, depth_in, spacing_in, ...present({ species_gravity, steel_thickness_mil }) },
    ...present({ cavity_insulation_r }),
  };
}

/** The same object without the keys that nothing was given for. */
function present<T extends object>(given: T): { [K in keyof T]?: Exclude<T[K], undefined> } {
  const entries = Object.entries(given).filter(([, value]) => value !== undefined);
  return Object.fromEntries(entries) as { [K in keyof T]?: Exclude<T[K], undefined> };
}

/** "5B", "Boulder, CO", "twelve months" */
export function placeText(place: Place): string {
  if ('climate_zone' in place) return place.climate_zone;
  return 'county' in place ? `${place.county}, ${place.state.toUpperCase()}` : 'twelve months';
}

function refuseDoubles({ places, framings, finishes, budgets }: MatrixPlan): void {
  refuseDouble('places', places.map(placeText));
  refuseDouble('framings', (framings ?? []).map(framingText));
  refuseDouble('finishes', finishes ?? []);
  refuseDouble(
    'budgets_usd_per_ft2',
    (budgets ?? []).map((usd) => (usd === null ? 'none' : `${usd}`)),
  );
}

function refuseDouble(field: string, values: readonly string[]): void {
  const double = values.find((value, i) => values.indexOf(value) !== i);
  if (double === undefined) return;
  throw new Refusal({
    field,
    value: showValue(double),
    accepted: 'Give each value once; this one stands twice.',
  });
}
