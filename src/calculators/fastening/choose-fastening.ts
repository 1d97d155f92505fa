import { Refusal } from '../../base/refusal.ts';
import { fasteningNotes, tableSource } from './compute-fastening.ts';
import { type Evaluation, evaluationsBySpacing, type TableVerdict } from './evaluate-fastening.ts';
import { type FasteningCase, knownFastener } from './fastening-input.ts';
import type { FastenerData, FastenerId, FasteningTables } from './fastening-tables.ts';

/** One way to fasten, from a catalogue; the first listed is the first tried. */
export type FasteningOption = {
  readonly fastener: string;
  readonly spacings_in: readonly number[];
  readonly washer: string;
};

/** The wall, without the fastener. `outward_wind_psf` is the corner zone's suction, positive, allowable-stress level. */
export type FasteningContext = Omit<FasteningCase, 'fastener' | 'fastener_spacing_in'>;

export type FasteningSchedule = {
  readonly fastener: FastenerId;
  readonly kind: FastenerData['kind'];
  readonly label: string;
  readonly washer: string;
  readonly fastener_spacing_in: number;
  readonly framing_spacing_in: number;
  readonly count_per_100_ft2: number;
  readonly table: {
    readonly source: string;
    readonly max_insulation_in: number | null;
    readonly verdict: TableVerdict;
    /** All that puts the case outside; null where it lies inside. */
    readonly outside_because: string | null;
  };
  readonly gravity_load_lb: number;
  readonly gravity_capacity_lb: number | null;
  readonly gravity_utilisation: number | null;
  /** See `Evaluation`: also where `gravity_utilisation` has no figure. */
  readonly weight_use_at_least: number | null;
  readonly wind_load_lb: number;
  readonly wind_capacity_lb: number | null;
  readonly wind_utilisation: number | null;
  /** Weight alone under a load that never leaves, by the timber standard; null where it gives no figure. */
  readonly weight_alone_utilisation: number | null;
  /** Weight and wind together by the timber standard; null where it gives no figure, as for steel studs. */
  readonly combined_utilisation: number | null;
  readonly min_length_in: number;
  readonly length_in: number | null;
  readonly verdict: 'permitted' | 'design-required';
  /** One plain sentence or two. */
  readonly why: () => string;
  readonly notes: () => readonly string[];
};

type Tried = {
  readonly fastener: FastenerId;
  readonly spacing_in: number;
  readonly option: FasteningOption;
  readonly e: Evaluation;
};

/**
 * The schedule for one wall: the first option, from its widest spacing down, that the code table permits, that
 * holds the corner-zone wind alone and together with the weight, and that can be bought long enough.
 *
 * When none does, the first whose figures (weight by the equation behind the tables and by the timber standard, wind,
 * and both together) are all at or under 1 and that can be bought; failing that, the least overloaded. Both come back as "design-required".
 *
 * @param options  in the order to try; only for this wall's framing material
 * @throws Refusal for an empty list, an unknown fastener or a spacing that is not above zero
 * Trusts `context`: it comes from checked scenarios. Same sources as `computeFastening`.
 */
export function chooseFastening(
  options: readonly FasteningOption[],
  context: FasteningContext,
  tables: FasteningTables,
): FasteningSchedule {
  const tried: Tried[] = [];
  for (const option of options) {
    const fastener = knownFastener(option.fastener, 'fastenings.fastener');
    const evaluate = evaluationsBySpacing(fastener, context, tables);
    for (const spacing_in of [...option.spacings_in].sort((a, b) => b - a)) {
      if (!(spacing_in > 0)) {
        throw new Refusal({
          field: 'fastenings.spacings_in',
          value: String(spacing_in),
          accepted: 'Give inches above zero.',
        });
      }
      const one = { fastener, spacing_in, option, e: evaluate(spacing_in) };
      if (one.e.verdict === 'permitted' && one.e.length_in !== null) return schedule(one, context, tables);
      tried.push(one);
    }
  }
  const best = tried.find(({ e }) => worksByEquation(e)) ?? leastOverloaded(tried);
  if (!best) {
    throw new Refusal({
      field: 'fastenings',
      value: '[]',
      accepted: 'List at least one fastener with a spacing for this framing.',
    });
  }
  return schedule(best, context, tables);
}

function worksByEquation(e: Evaluation): boolean {
  return (
    e.length_in !== null && isHeld(e.gravity_utilisation) && isHeld(e.wind_utilisation) && timberUse(e) <= 1
  );
}

/** The greater of what the timber standard makes of weight alone and of weight and wind; 0 where it gives no figure. */
function timberUse(e: Evaluation): number {
  const combined = e.combined();
  return combined ? Math.max(combined.weight_alone, combined.weight_and_wind) : 0;
}

function isHeld(utilisation: number | null): boolean {
  return utilisation !== null && utilisation <= 1;
}

/** Figures before blanks, bought before not to be had, then the smallest governing use. */
function leastOverloaded(tried: readonly Tried[]): Tried | undefined {
  let best: Tried | undefined;
  for (const one of tried) {
    if (!best || badness(one.e) < badness(best.e)) best = one;
  }
  return best;
}

function badness(e: Evaluation): number {
  const blanks = Number(e.gravity_utilisation === null) + Number(e.wind_utilisation === null);
  // Without a gravity figure, less weight on each fastener is the better start for the designer.
  const use = Math.max(
    e.weight_use_at_least ?? e.gravity_load_lb / 1000,
    e.wind_utilisation ?? 0,
    timberUse(e),
  );
  return blanks * 1e9 + (e.length_in === null ? 1e6 : 0) + Math.min(use, 1e5);
}

function schedule(
  { fastener, spacing_in, option, e }: Tried,
  context: FasteningContext,
  tables: FasteningTables,
): FasteningSchedule {
  const verdict = e.verdict === 'permitted' && e.length_in !== null ? 'permitted' : 'design-required';
  const asked = (): FasteningCase => ({ ...context, fastener, fastener_spacing_in: spacing_in });
  return {
    fastener,
    kind: e.fastener.kind,
    label: e.fastener.label,
    washer: option.washer,
    fastener_spacing_in: spacing_in,
    framing_spacing_in: context.framing_spacing_in,
    count_per_100_ft2: countPer100Ft2(spacing_in, context.framing_spacing_in),
    table: {
      source: tableSource(e),
      max_insulation_in: e.max_insulation_in,
      verdict: e.table_verdict,
      outside_because: e.outside.length > 0 ? e.outside.join('; ') : null,
    },
    gravity_load_lb: e.gravity_load_lb,
    gravity_capacity_lb: e.gravity_capacity_lb,
    gravity_utilisation: e.gravity_utilisation,
    weight_use_at_least: e.weight_use_at_least,
    wind_load_lb: e.wind_load_lb,
    wind_capacity_lb: e.wind.capacity_lb,
    wind_utilisation: e.wind_utilisation,
    weight_alone_utilisation: e.combined()?.weight_alone ?? null,
    combined_utilisation: e.combined()?.weight_and_wind ?? null,
    min_length_in: e.min_length_in,
    length_in: e.length_in,
    verdict,
    // Hundreds of walls are scheduled for one that is shown: the words are written when somebody reads them.
    why: () => why(asked(), e, verdict),
    notes: () => fasteningNotes(asked(), { ...e, verdict }, tables),
  };
}

/** Fasteners in 100 ft² of plain wall, edges and openings left out. */
export function countPer100Ft2(fastener_spacing_in: number, framing_spacing_in: number): number {
  return (100 * 144) / (fastener_spacing_in * framing_spacing_in);
}

function why(asked: FasteningCase, e: Evaluation, verdict: FasteningSchedule['verdict']): string {
  const what = `${e.fastener.label} every ${asked.fastener_spacing_in} in into studs at ${asked.framing_spacing_in} in`;
  if (verdict === 'permitted') {
    return `${what}: the code table allows ${e.max_insulation_in} in of foam at this weight and the wall has ${e.gap_in} in; wind on the corner zone takes ${percent(e.wind_utilisation)} of what each one holds${togetherWords(e)}.`;
  }
  const figures =
    e.gravity_utilisation === null
      ? 'No method gives a figure for the weight'
      : `By estimate the weight takes ${percent(e.gravity_utilisation)} of each fastener`;
  const wind =
    e.wind_utilisation === null
      ? 'none is known for the wind'
      : `the wind on the corner zone takes ${percent(e.wind_utilisation)}${togetherWords(e)}`;
  return `${what} is not settled by the code table: ${reason(e)}. ${figures}, and ${wind}; a design professional must size it.`;
}

function togetherWords(e: Evaluation): string {
  const together = e.combined();
  return together === null ? '' : ` (weight and wind together ${percent(together.weight_and_wind)})`;
}

function reason(e: Evaluation): string {
  const [first] = e.outside;
  if (first) return first;
  if (e.table_verdict === 'design-required') {
    return e.max_insulation_in === null
      ? 'it says "design required" at this weight'
      : `it stops at ${e.max_insulation_in} in and the wall has ${e.gap_in} in`;
  }
  if (e.wind_utilisation === null || e.wind_utilisation > 1) {
    return 'it settles the weight, but the wind asks more than the fastener holds';
  }
  if ((e.combined()?.weight_and_wind ?? 0) > 1) {
    return 'it settles the weight, but weight and wind together ask more than the timber standard lets the fastener carry';
  }
  return 'no market length reaches the stud';
}

function percent(use: number | null): string {
  return use === null ? 'an unknown share' : `${Math.round(use * 100)} %`;
}
