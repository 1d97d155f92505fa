import type { Buck, SheathingEntry } from '../assembly/catalogue-schema.ts';
import type { BriefWindow } from '../brief/brief.ts';
import type { BuckVerdict } from '../calculators/buck/buck-types.ts';
import { judgeBuck } from '../calculators/buck/judge-buck.ts';
import { unitArea_ft2, windowWeight } from '../calculators/window-weight.ts';
import type { AnswerContext } from './answer-context.ts';

/** A window with the weight that it is judged by. */
export type WeighedBriefWindow = BriefWindow & {
  /** As given, or the high end of what its make-up can weigh. */
  readonly judged_weight_lb: number;
  readonly area_ft2: number;
};

export type WindowsPart = {
  readonly windows: readonly WeighedBriefWindow[];
  readonly count: number;
  /** Null when there is no window. */
  readonly heaviest_lb: number | null;
  readonly largest_ft2: number | null;
  readonly any_flangeless: boolean;
  readonly any_door: boolean;
  readonly any_large_fixed_triple: boolean;
  readonly heaviest_large_fixed_triple_lb: number;
};

/** Weighs the windows of a job; the same for every candidate. */
export function windowsPart(context: AnswerContext): WindowsPart {
  const table = context.tables.openings.windows;
  const windows = context.brief.windows.map(
    (window): WeighedBriefWindow => ({
      ...window,
      judged_weight_lb: window.weight_lb ?? windowWeight(window, table).high_lb,
      area_ft2: unitArea_ft2(window.width_in, window.height_in),
    }),
  );
  const { area_ft2, weight_lb } = table.large;
  const largeTriples = windows.filter(
    (w) =>
      w.glazing === 'triple' &&
      w.operation === 'fixed' &&
      (w.area_ft2 >= area_ft2 || w.judged_weight_lb >= weight_lb),
  );
  const most = (values: readonly number[]) => (values.length > 0 ? Math.max(...values) : null);
  return {
    windows,
    count: windows.reduce((sum, window) => sum + window.count, 0),
    heaviest_lb: most(windows.map((w) => w.judged_weight_lb)),
    largest_ft2: most(windows.map((w) => w.area_ft2)),
    any_flangeless: windows.some((w) => w.mounting === 'flangeless'),
    any_door: windows.some((w) => w.operation === 'door'),
    any_large_fixed_triple: largeTriples.length > 0,
    heaviest_large_fixed_triple_lb: most(largeTriples.map((w) => w.judged_weight_lb)) ?? 0,
  };
}

export type BuckPart = {
  /** The window that fares worst; null when the wall has none. */
  readonly worst: {
    readonly verdict: BuckVerdict;
    /** The highest of all its checks; null where none can be worked out. */
    readonly utilisation: number | null;
    readonly screws_per_side: number | null;
    readonly min_screw_length_in: number | null;
  } | null;
  readonly why: string;
};

const SEVERITY: Readonly<Record<BuckVerdict, number>> = { fits: 0, engineer: 1, 'does-not-fit': 2 };

/** Holds one buck against every window of the job; the worst speaks. */
export function buckPart(
  buck: Buck,
  projection_in: number,
  sheathing: SheathingEntry,
  { windows }: WindowsPart,
  context: AnswerContext,
): BuckPart {
  if (windows.length === 0) return { worst: null, why: 'No windows in this wall.' };
  const judged = windows.map((window) => {
    const judgement = judgeBuck(
      {
        support: buck.support,
        member: buck.member,
        screw: buck.screw,
        screw_spacing_in: buck.screw?.spacing_in ?? null,
        max_projection_in: buck.max_projection_in,
      },
      { ...window, weight_lb: window.judged_weight_lb },
      {
        projection_in,
        outward_wind_psf: context.outward_wind_psf,
        framing_gravity:
          context.brief.framing.material === 'wood' ? context.brief.framing.species_gravity : null,
        framing_depth_in: context.brief.framing.depth_in,
        gap_in: sheathing.thickness_in,
      },
      context.tables.openings,
    );
    const uses = Object.values(judgement.utilisation).filter((use) => use !== null);
    return { window, judgement, utilisation: uses.length > 0 ? Math.max(...uses) : null };
  });
  const worst = judged.reduce((a, b) => (isWorse(b, a) ? b : a));
  const { window, judgement } = worst;
  const size = `${window.width_in} x ${window.height_in} in.`;
  const named = windows.length > 1 ? `Worst window, ${size}: ` : '';
  return {
    worst: {
      verdict: judgement.verdict,
      utilisation: worst.utilisation,
      screws_per_side: judgement.screws_per_side,
      min_screw_length_in: judgement.min_screw_length_in,
    },
    why: named + judgement.why,
  };
}

type Judged = { readonly judgement: { readonly verdict: BuckVerdict }; readonly utilisation: number | null };

function isWorse(a: Judged, b: Judged): boolean {
  const bySeverity = SEVERITY[a.judgement.verdict] - SEVERITY[b.judgement.verdict];
  return bySeverity !== 0 ? bySeverity > 0 : (a.utilisation ?? 0) > (b.utilisation ?? 0);
}
