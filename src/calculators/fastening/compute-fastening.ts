import { type Evaluation, evaluateFastening, type TableVerdict } from './evaluate-fastening.ts';
import { type FasteningCase, type FasteningInput, fasteningCase } from './fastening-input.ts';
import type { FasteningTables } from './fastening-tables.ts';
import { type SteelChecks, steelChecks } from './steel-checks.ts';

export type FasteningResult = {
  readonly table: {
    readonly source: string;
    readonly max_insulation_in: number | null;
    readonly verdict: TableVerdict;
  };
  readonly load_per_fastener_lb: { readonly gravity: number; readonly wind: number };
  /** By the equation behind the table; null outside its limits. */
  readonly gravity_capacity_lb: number | null;
  readonly gravity_utilisation: number | null;
  readonly wind_checks: { readonly holding_lb: number | null; readonly pull_through_lb: number | null };
  readonly wind_capacity_lb: number | null;
  readonly wind_utilisation: number | null;
  /** Weight and wind together by the timber standard, whatever the gap; null for steel studs. */
  readonly combined_utilisation: number | null;
  /** Null for wood studs. */
  readonly steel_checks: SteelChecks | null;
  readonly min_length_in: number;
  /** Next stock length; null when none reaches. */
  readonly length_in: number | null;
  readonly verdict: 'permitted' | 'design-required';
  readonly source: readonly string[];
  readonly notes: readonly string[];
};

/**
 * Cladding or furring fastened through exterior insulation to the studs: what the code table says, what one
 * fastener carries and holds, and how long it must be.
 *
 * Inside the code table the table decides the weight. Outside it (a fastener, spacing or weight that it doesn't
 * list, a fibrous board, light wood, more than 4 in) the overall verdict is always "design-required"; the equation
 * behind the table then still gives an estimate up to 4 in, 25 psf and specific gravity 0.42. Wind is checked
 * apart, and in wood together with the weight; "permitted" needs all.
 *
 * @param input   checked by `fasteningInputSchema`, which holds the ranges
 * @param tables  code tables and fastener data
 * @throws Refusal when a value lies outside the range of one of the equations
 * Source: IRC R703.15 to R703.17 tables; NDS-2018 withdrawal and head pull-through; AISI S100 pull-out.
 */
export function computeFastening(input: FasteningInput, tables: FasteningTables): FasteningResult {
  const asked = fasteningCase(input);
  const e = evaluateFastening(asked, tables);
  return {
    table: {
      source: tableSource(e),
      max_insulation_in: e.max_insulation_in,
      verdict: e.table_verdict,
    },
    load_per_fastener_lb: { gravity: e.gravity_load_lb, wind: e.wind_load_lb },
    gravity_capacity_lb: e.gravity_capacity_lb,
    gravity_utilisation: e.gravity_utilisation,
    wind_checks: { holding_lb: e.wind.holding_lb, pull_through_lb: e.wind.pull_through_lb },
    wind_capacity_lb: e.wind.capacity_lb,
    wind_utilisation: e.wind_utilisation,
    combined_utilisation: e.combined()?.weight_and_wind ?? null,
    steel_checks: steelChecks(asked, e.fastener, tables),
    min_length_in: e.min_length_in,
    length_in: e.length_in,
    verdict: e.verdict,
    source: sources(asked, e, tables),
    notes: fasteningNotes(asked, e, tables),
  };
}

/** Of weight and wind together. */
export const COMBINED_SOURCE =
  'ANSI/AWC NDS-2018 12.4.1 (screws) and 12.4.2 (nails), from memory, with the gap of AWC Technical Report 12 (gap equations from memory), load duration 1.6';

const PROVENANCE_WORDS = {
  verified: 'cell seen in the code',
  'two-sources': 'cell seen in two sources',
  computed: 'cell computed, the printed one not seen',
  memory: 'cell from memory, check it in the code',
  proposal: 'cell proposed',
  'common-practice': 'common practice, no source',
} as const;

/** The table by name, with how sure we are of the cell. */
export function tableSource(e: Evaluation): string {
  const { citation, found } = e.look_up;
  return found ? `${citation}; ${PROVENANCE_WORDS[found.provenance]}` : citation;
}

function sources(asked: FasteningCase, e: Evaluation, tables: FasteningTables): string[] {
  const list = [tableSource(e)];
  if (e.gravity_capacity_lb !== null) {
    list.push(
      asked.framing === 'wood'
        ? tables.foam.rule.source
        : (tables.fasteners.steel_gravity_lines[0]?.source ?? 'straight line through the recalled cells'),
    );
  }
  if (e.wind.holding_lb !== null) {
    list.push(
      asked.framing === 'wood'
        ? 'ANSI/AWC NDS-2018 12.2, withdrawal, load duration 1.6'
        : 'AISI S100 J4.4.1 pull-out, J4.4.2 pull-over, J4.3.1 shear, safety factor 3.0 (section numbers from memory)',
    );
  }
  if (e.wind.pull_through_lb !== null) {
    list.push('ANSI/AWC NDS-2018 12.2.5, head pull-through for round heads (from memory), load duration 1.6');
  }
  if (e.combined() !== null) list.push(COMBINED_SOURCE);
  return list;
}

/** Plain sentences on what governs and where the method stops. */
export function fasteningNotes(asked: FasteningCase, e: Evaluation, tables: FasteningTables): string[] {
  const notes: string[] = [];
  const { found } = e.look_up;
  if (found) {
    notes.push(
      `Looked up at ${found.column_psf} psf, fasteners at ${found.row_spacing_in} in, framing at ${found.column_framing_spacing_in} in (next heavier, next wider; never interpolated).`,
    );
  }
  if (e.outside.length > 0) notes.push(`Outside the code tables: ${e.outside.join('; ')}.`);
  if (e.table_verdict === 'design-required') {
    notes.push(
      e.max_insulation_in === null
        ? 'The code table says "design required" for this weight and spacing.'
        : `The code table stops at ${e.max_insulation_in} in here; the gap is ${e.gap_in} in.`,
    );
  }
  notes.push(...estimateNotes(asked, e));
  notes.push(...windNotes(asked, e));
  if (asked.framing !== 'wood' && e.fastener.kind === 'steel-screw') {
    notes.push(
      'The shear figure is for steel plies in contact: an upper bound that insulation between them takes away, so it decides nothing.',
    );
  }
  if (e.length_in === null) {
    notes.push(`No market length of ${e.fastener.label} reaches the ${e.min_length_in} in needed.`);
  }
  notes.push(...minimumSizeNote(asked, tables));
  notes.push(
    e.verdict === 'permitted'
      ? 'Holds for foam of at least 15 psi and wood of specific gravity 0.42 or more; the local building department decides.'
      : 'A design professional must size this fastening before it is built.',
  );
  return notes;
}

function estimateNotes(asked: FasteningCase, e: Evaluation): string[] {
  if (e.table_verdict === 'permitted') return [];
  if (e.gravity_capacity_lb === null) {
    return [
      'No gravity figure: the case lies outside the limits in which the equation behind the table holds.',
    ];
  }
  const fibrous =
    asked.insulation_kind === 'fibrous'
      ? ' It counts the board as empty space; how far the board compresses under the fastener must be limited by detail.'
      : '';
  return asked.framing === 'wood'
    ? [`The gravity figure is an engineering estimate by the equation behind the code table.${fibrous}`]
    : [
        `The gravity figure is read off a straight line through recalled table cells, an order of magnitude only.${fibrous}`,
      ];
}

function windNotes(asked: FasteningCase, e: Evaluation): string[] {
  const notes: string[] = [];
  if (e.wind.holding_lb === null) {
    notes.push(
      asked.framing === 'wood'
        ? 'No published method for a self-drilling steel screw in wood: take a wood screw.'
        : 'A nail, wood screw or lag screw is not a fastener for a cold-formed steel stud: take a steel screw.',
    );
    return notes;
  }
  if (e.wind.pull_through_lb === null) {
    notes.push(
      'The wind capacity is what the stud holds. How the lath or cladding holds at the fastener head has no published equation: take it from the tested wind pressure of the cladding.',
    );
  } else {
    notes.push(
      asked.framing === 'wood'
        ? 'Head pull-through is for a round head through wood furring of specific gravity 0.42 at most; a countersunk head may hold less.'
        : 'Head pull-through is for a round head through 1x wood furring of specific gravity 0.42; over 33 mil steel furring the pull-over figure takes its place.',
    );
  }
  if (e.wind_utilisation !== null && e.wind_utilisation > 1) {
    notes.push(
      `The wind takes ${Math.round(e.wind_utilisation * 100)} % of what the fastener holds: closer or stronger fasteners.`,
    );
  }
  const together = e.combined()?.weight_and_wind ?? 0;
  if (together > 1 && (e.wind_utilisation ?? 0) <= 1) {
    notes.push(
      `Weight and wind together take ${Math.round(together * 100)} % of what the timber standard lets the fastener carry: closer or stronger fasteners.`,
    );
  }
  return notes;
}

/** The code's column head reads "fastener type and minimum size": a thicker wood screw may use the row of No. 10. */
function minimumSizeNote(asked: FasteningCase, tables: FasteningTables): string[] {
  const thicker = asked.fastener === 'wood-screw-12' || asked.fastener === 'wood-screw-14';
  if (!thicker || asked.framing !== 'wood' || asked.support !== 'furring') return [];
  const row = evaluateFastening({ ...asked, fastener: 'wood-screw-10' }, tables);
  if (row.outside.length > 0) return [];
  return [
    row.max_insulation_in === null
      ? 'The table gives sizes as minimums; its row of No. 10 screws says "design required" here.'
      : `The table gives sizes as minimums; its row of No. 10 screws allows ${row.max_insulation_in} in here, if the plan reviewer accepts it.`,
  ];
}
