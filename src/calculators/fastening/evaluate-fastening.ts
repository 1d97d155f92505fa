import { type CombinedUse, combinedUse, lateralAcrossGap_lb } from './combined-use.ts';
import type { FasteningCase } from './fastening-input.ts';
import type { FastenerData, FasteningTables, Framing } from './fastening-tables.ts';
import {
  gapCapacityAtMost_lb,
  gapCapacitySteel_lb,
  gapCapacityWood_lb,
  gravityLoad_lb,
  ruleSide_in,
} from './gap-rule.ts';
import { cellsBySpacing, type LookUp } from './table-lookup.ts';
import { type WindCapacity, windCapacity_lb } from './wind-capacity.ts';

/** Lengths are sums of sixteenths; this absorbs binary noise. */
const ROUNDING = 1e-9;

export const TABLE_VERDICTS = ['permitted', 'design-required', 'outside-table'] as const;
export type TableVerdict = (typeof TABLE_VERDICTS)[number];

export type Evaluation = {
  readonly fastener: FastenerData;
  readonly look_up: LookUp;
  /** Why the code table doesn't cover the case; empty when it does. */
  readonly outside: readonly string[];
  readonly max_insulation_in: number | null;
  readonly table_verdict: TableVerdict;
  /** Insulation and mat. */
  readonly gap_in: number;
  readonly gravity_load_lb: number;
  readonly gravity_capacity_lb: number | null;
  readonly gravity_utilisation: number | null;
  /**
   * The same where it is known; past the limits of its equation what it comes to at the least, to rule walls out by and
   * never to let one pass. Null where nothing is known.
   */
  readonly weight_use_at_least: number | null;
  readonly wind_load_lb: number;
  readonly wind: WindCapacity;
  readonly wind_utilisation: number | null;
  /**
   * Weight alone, and weight and wind together, by the timber standard, whatever the gap; null for steel studs and for a
   * fastener that can't hold in wood.
   */
  readonly combined: () => CombinedUse | null;
  readonly min_length_in: number;
  readonly length_in: number | null;
  readonly verdict: 'permitted' | 'design-required';
};

/** All figures of one fastening case, without words. Expects a checked case; see `computeFastening`. */
export function evaluateFastening(asked: FasteningCase, tables: FasteningTables): Evaluation {
  return evaluationsBySpacing(asked.fastener, asked, tables)(asked.fastener_spacing_in);
}

/** One fastening case without its fasteners. */
type Wall = Omit<FasteningCase, 'fastener' | 'fastener_spacing_in'>;

/** {@link evaluateFastening} for one fastener at several spacings, in: what the spacing doesn't touch is worked out once. */
export function evaluationsBySpacing(
  id: FasteningCase['fastener'],
  asked: Wall,
  tables: FasteningTables,
): (fastener_spacing_in: number) => Evaluation {
  const fastener = fastenerData(id, tables);
  const lookUp = cellsBySpacing(id, asked, tables);
  const gap_in = asked.insulation_thickness_in + asked.mat_thickness_in;
  const outsideAnyway = outsideReasons(asked, gap_in, tables);
  const isKnown = knowsMaterials(asked, tables);
  const gravity_capacity_lb = gravityCapacity(asked, fastener, gap_in, tables);
  const wind = windCapacity_lb(asked, fastener, tables);
  const min_length_in = minLength_in(asked, fastener, tables);
  const length_in = nextMarketLength_in(min_length_in, fastener);
  const furring_in = asked.outboard_thickness_in - asked.mat_thickness_in;
  const most_lb =
    gravity_capacity_lb ??
    gapCapacityAtMost_lb(fastener, ruleSide_in(asked.support, furring_in, tables), gap_in, asked, tables);
  let lateral_lb: number | null | undefined;
  const lateral = () => {
    if (lateral_lb === undefined) lateral_lb = lateralAcrossGap_lb(asked, fastener, gap_in, tables);
    return lateral_lb;
  };

  return (fastener_spacing_in) => {
    const look_up = lookUp(fastener_spacing_in);
    const outside = outsideAnyway.length === 0 ? look_up.outside : [...look_up.outside, ...outsideAnyway];
    const max_insulation_in = isKnown ? (look_up.found?.max_insulation_in ?? null) : null;
    const table_verdict: TableVerdict =
      outside.length > 0
        ? 'outside-table'
        : max_insulation_in !== null && gap_in <= max_insulation_in + ROUNDING
          ? 'permitted'
          : 'design-required';
    const gravity_load_lb = gravityLoad_lb(asked.cladding_psf, fastener_spacing_in, asked.framing_spacing_in);
    const wind_load_lb = gravityLoad_lb(
      asked.outward_wind_psf,
      fastener_spacing_in,
      asked.framing_spacing_in,
    );
    const wind_utilisation = wind.capacity_lb === null ? null : wind_load_lb / wind.capacity_lb;
    const together = (): CombinedUse | null => {
      const lateral_reference_lb = lateral();
      const { capacity_lb: wind_capacity_lb } = wind;
      if (lateral_reference_lb === null || wind_capacity_lb === null) return null;
      return combinedUse({ fastener, gravity_load_lb, wind_load_lb, lateral_reference_lb, wind_capacity_lb });
    };
    // Asked for by those only that pass all else, or when nothing does. No getters: they make every one of thousands slow.
    let known: CombinedUse | null | undefined;
    const combined = () => {
      if (known === undefined) known = together();
      return known;
    };
    const isHeldAlone = table_verdict === 'permitted' && wind_utilisation !== null && wind_utilisation <= 1;
    const isHeld = isHeldAlone && (combined()?.weight_and_wind ?? 0) <= 1;
    return {
      fastener,
      look_up,
      outside,
      max_insulation_in,
      table_verdict,
      gap_in,
      gravity_load_lb,
      gravity_capacity_lb,
      gravity_utilisation: gravity_capacity_lb === null ? null : gravity_load_lb / gravity_capacity_lb,
      weight_use_at_least: most_lb === null ? null : gravity_load_lb / most_lb,
      wind_load_lb,
      wind,
      wind_utilisation,
      combined,
      min_length_in,
      length_in,
      verdict: isHeld ? 'permitted' : 'design-required',
    };
  };
}

export function fastenerData(id: FasteningCase['fastener'], tables: FasteningTables): FastenerData {
  const found = tables.fasteners.fasteners.find((f) => f.id === id);
  // The schema demands every fastener.
  if (!found) throw new Error(`no data for ${id}`);
  return found;
}

/** Boards and wood that the code table was made for. */
function knowsMaterials(asked: Wall, tables: FasteningTables): boolean {
  return (
    asked.insulation_kind === 'foam' && isDenseEnough(asked, tables) && isFurringThickEnough(asked, tables)
  );
}

function isDenseEnough(asked: Wall, tables: FasteningTables): boolean {
  return (
    asked.framing !== 'wood' || asked.specific_gravity >= tables.foam.limits.min_specific_gravity - ROUNDING
  );
}

function isFurringThickEnough(asked: Wall, tables: FasteningTables): boolean {
  const furring_in = asked.outboard_thickness_in - asked.mat_thickness_in;
  return (
    asked.support === 'direct' ||
    asked.framing !== 'wood' ||
    furring_in >= tables.foam.rule.furring_side_in - ROUNDING
  );
}

/** Why the code table doesn't cover the case at any spacing, but for what the look-up itself says. */
function outsideReasons(asked: Wall, gap_in: number, tables: FasteningTables): string[] {
  const { limits, rule } = tables.foam;
  const reasons: string[] = [];
  if (asked.insulation_kind !== 'foam') {
    reasons.push('the code tables are for foam of at least 15 psi; a fibrous board is not in them');
  }
  if (!isDenseEnough(asked, tables)) {
    reasons.push(`the code table needs wood of specific gravity ${limits.min_specific_gravity} or more`);
  }
  if (!isFurringThickEnough(asked, tables)) {
    reasons.push(`the code table needs wood furring of at least ${rule.furring_side_in} in`);
  }
  if (gap_in > limits.max_insulation_in + ROUNDING) {
    reasons.push(`the code tables stop at ${limits.max_insulation_in} in of insulation (with any mat)`);
  }
  return reasons;
}

/** By the equation behind the tables, and only inside the limits in which it was proved. */
function gravityCapacity(
  asked: Wall,
  fastener: FastenerData,
  gap_in: number,
  tables: FasteningTables,
): number | null {
  const { limits } = tables.foam;
  const inLimits =
    gap_in <= limits.max_insulation_in + ROUNDING &&
    asked.cladding_psf <= limits.max_cladding_psf + ROUNDING &&
    isDenseEnough(asked, tables);
  if (!inLimits) return null;
  if (asked.framing !== 'wood') return gapCapacitySteel_lb(fastener, asked.framing, gap_in, tables);
  const furring_in = asked.outboard_thickness_in - asked.mat_thickness_in;
  return gapCapacityWood_lb(fastener, ruleSide_in(asked.support, furring_in, tables), gap_in, tables);
}

/** Everything outboard of the stud plus what the stud needs, in. */
function minLength_in(asked: Wall, fastener: FastenerData, tables: FasteningTables): number {
  const stack = asked.outboard_thickness_in + asked.insulation_thickness_in + asked.sheathing_thickness_in;
  if (asked.framing === 'wood') return tidy(stack + fastener.min_penetration_in);
  return tidy(stack + minimumSteelReach_in(asked.framing, fastener, tables));
}

/** Through the stud's steel and at least three threads, or the fastener's least penetration, past it, in. */
export function minimumSteelReach_in(
  framing: Framing,
  fastener: FastenerData,
  tables: FasteningTables,
): number {
  const stud = tables.fasteners.steel_studs.find((s) => s.framing === framing);
  const threads = fastener.threads_per_in === null ? 0 : 3 / fastener.threads_per_in;
  return (stud?.design_thickness_in ?? 0) + Math.max(threads, fastener.min_penetration_in);
}

/** Sixteenths and decimals added up leave binary noise behind; millionths of an inch are noise. */
function tidy(length_in: number): number {
  return Math.round(length_in * 1e6) / 1e6;
}

/** The next stock length, in; null when none is long enough. */
export function nextMarketLength_in(min_length_in: number, fastener: FastenerData): number | null {
  return fastener.market_lengths_in.find((length) => length >= min_length_in - ROUNDING) ?? null;
}
