import { z } from 'zod';
import { provenanceSchema as provenance } from '../base/provenance.ts';
import { inRange, Refusal, showValue } from '../base/refusal.ts';

const cited = { source: z.string().min(5), provenance };
const positive = z.number().positive();

/** `windows.table.json`: glass and frame weights, and when a window counts as large. */
export const windowsTableSchema = z
  .strictObject({
    schema: z.literal('cladwright-windows/1'),
    title: z.string(),
    glass: z.strictObject({
      /** One lite, by nominal thickness in inches. */
      lb_per_ft2: z.record(z.string(), positive),
      thin_1_8_lb_per_ft2: positive,
      thin_note: z.string(),
      ...cited,
    }),
    lites: z.strictObject({ double: z.literal(2), triple: z.literal(3) }),
    lite_thickness: z.strictObject({
      /** Nominal thicknesses in use, thinnest first. */
      steps: z.array(z.string()).min(2),
      likely_by_area: z.array(z.strictObject({ to_ft2: positive, nominal_in: z.string() })).min(1),
      note: z.string(),
      ...cited,
    }),
    frame: z.strictObject({
      lb_per_ft: z.strictObject({
        vinyl: positive,
        fibreglass: positive,
        'aluminium-thermally-broken': positive,
        'wood-clad': positive,
      }),
      sash_lb_per_ft: positive,
      sight_line_in: positive,
      ...cited,
    }),
    large: z.strictObject({ area_ft2: positive, weight_lb: positive, why: z.string(), ...cited }),
  })
  .refine(
    (table) =>
      [
        ...table.lite_thickness.steps,
        ...table.lite_thickness.likely_by_area.map((row) => row.nominal_in),
      ].every((nominal) => nominal in table.glass.lb_per_ft2),
    'Every glass thickness named needs a weight in glass.lb_per_ft2.',
  );
export type WindowsTable = z.output<typeof windowsTableSchema>;

export type Glazing = 'double' | 'triple';
export type FrameKind = keyof WindowsTable['frame']['lb_per_ft'];
export type Operation = 'fixed' | 'casement' | 'awning' | 'hung' | 'sliding' | 'door';

/** A window whose weight is asked for; `null` is unknown and widens the answer. */
export type WeighedWindow = {
  readonly width_in: number;
  readonly height_in: number;
  readonly glazing: Glazing | null;
  readonly operation: Operation | null;
  readonly frame?: FrameKind | null;
  /** Nominal thickness of each lite, for example "3/16". */
  readonly lite?: string | null;
};

export type WindowWeight = {
  readonly low_lb: number;
  readonly likely_lb: number;
  readonly high_lb: number;
  readonly source: readonly string[];
  readonly notes: readonly string[];
};

/** Area of the whole unit, ft². */
export function unitArea_ft2(width_in: number, height_in: number): number {
  return (width_in * height_in) / 144;
}

/**
 * Weight of the glass alone, lb: lites × weight per ft² × the area inside the sight lines.
 *
 * @param lb_per_ft2  of one lite
 */
export function glassWeight_lb(
  width_in: number,
  height_in: number,
  glazing: Glazing,
  lb_per_ft2: number,
  table: WindowsTable,
): number {
  const { sight_line_in } = table.frame;
  const glass_ft2 = unitArea_ft2(width_in - 2 * sight_line_in, height_in - 2 * sight_line_in);
  return table.lites[glazing] * lb_per_ft2 * glass_ft2;
}

/**
 * Weight of a window from its make-up, lb, as low, likely and high.
 *
 * Glass inside the sight lines plus frame (and sash, where it opens) along the perimeter. Unknown frame, glazing,
 * operation or glass thickness widen the range; take the high figure for a structural check.
 *
 * @param window  unit size 6 to 240 by 6 to 180 in.
 * @throws Refusal outside that size, or for a glass thickness not in the table
 *
 * Source: glass weights from a trade data sheet and a metric rule (two sources); frame masses from memory.
 */
export function windowWeight(window: WeighedWindow, table: WindowsTable): WindowWeight {
  const width = inRange(window.width_in, 'width_in', 6, 240, 'the unit width in inches');
  const height = inRange(window.height_in, 'height_in', 6, 180, 'the unit height in inches');
  const lite = liteWeights(unitArea_ft2(width, height), window.lite ?? null, table);
  const frame = frameWeights(window.frame ?? null, table);
  const sash = sashWeights(window.operation, table);
  const perimeter_ft = (2 * (width + height)) / 12;
  const total = (glazing: Glazing, end: 'low' | 'likely' | 'high') =>
    glassWeight_lb(width, height, glazing, lite[end], table) + perimeter_ft * (frame[end] + sash[end]);
  const { glazing } = window;
  return {
    low_lb: total(glazing ?? 'double', 'low'),
    likely_lb: glazing
      ? total(glazing, 'likely')
      : (total('double', 'likely') + total('triple', 'likely')) / 2,
    high_lb: total(glazing ?? 'triple', 'high'),
    source: [
      `Glass: ${table.glass.source}`,
      `Frame: ${table.frame.source}`,
      ...(window.lite ? [] : [`Glass thickness: ${table.lite_thickness.source}`]),
    ],
    notes: weightNotes(window),
  };
}

type Range = Readonly<Record<'low' | 'likely' | 'high', number>>;

function liteWeights(area_ft2: number, given: string | null, table: WindowsTable): Range {
  const { steps, likely_by_area } = table.lite_thickness;
  if (given) {
    const only = liteWeight(given, table);
    return { low: given === '1/8' ? table.glass.thin_1_8_lb_per_ft2 : only, likely: only, high: only };
  }
  const likely = likely_by_area.find((row) => area_ft2 <= row.to_ft2) ?? likely_by_area.at(-1);
  const at = Math.max(0, steps.indexOf(likely?.nominal_in ?? ''));
  const step = (index: number) => liteWeight(steps[Math.min(index, steps.length - 1)] ?? '', table);
  return {
    low: at === 0 ? table.glass.thin_1_8_lb_per_ft2 : step(at - 1),
    likely: step(at),
    high: step(at + 1),
  };
}

function liteWeight(nominal: string, table: WindowsTable): number {
  const known = Object.entries(table.glass.lb_per_ft2);
  const found = known.find(([name]) => name === nominal);
  if (!found) {
    throw new Refusal({
      field: 'lite',
      value: showValue(nominal),
      accepted: `Give a nominal glass thickness in inches: ${known.map(([name]) => name).join(', ')}.`,
    });
  }
  return found[1];
}

function frameWeights(kind: FrameKind | null, table: WindowsTable): Range {
  const { lb_per_ft } = table.frame;
  if (kind) return { low: lb_per_ft[kind], likely: lb_per_ft[kind], high: lb_per_ft[kind] };
  const all = Object.values(lb_per_ft);
  return {
    low: Math.min(...all),
    likely: all.reduce((sum, each) => sum + each, 0) / all.length,
    high: Math.max(...all),
  };
}

function sashWeights(operation: Operation | null, table: WindowsTable): Range {
  const { sash_lb_per_ft } = table.frame;
  if (operation === 'fixed') return { low: 0, likely: 0, high: 0 };
  if (operation === null) return { low: 0, likely: sash_lb_per_ft, high: sash_lb_per_ft };
  return { low: sash_lb_per_ft, likely: sash_lb_per_ft, high: sash_lb_per_ft };
}

function weightNotes(window: WeighedWindow): string[] {
  return [
    'An estimate: ask the supplier for the unit weight. Frame masses are from memory.',
    ...(window.glazing === null ? ['Glazing not known: from double (low) to triple (high).'] : []),
    ...(window.operation === null ? ['Operation not known: from fixed (low) to opening (high).'] : []),
    ...(window.frame ? [] : ['Frame not known: from the lightest kind to the heaviest.']),
    ...(window.operation === 'door'
      ? ['A door’s panels and track are heavier than a sash; take the supplier’s figure.']
      : []),
  ];
}

/** Share of the lightest glass below which a given weight is asked about. */
const FAR_BELOW_GLASS = 0.8;
/** Multiple of the high estimate above which a given weight is asked about. */
const FAR_ABOVE_ESTIMATE = 1.75;

export type PlausibleWeight = {
  readonly is_plausible: boolean;
  /** Lightest glass that could be meant, lb. */
  readonly glass_lb: number;
  /** What to ask the user; null when the weight is plausible. It is a question, never an error. */
  readonly question: string | null;
};

/**
 * Whether a given unit weight can be right for its size and glazing. A weight far below the glass alone, or far
 * above the heaviest estimate, becomes a question to the user.
 *
 * @param weight_lb  as given
 * @throws Refusal for a size outside the range of {@link windowWeight}
 */
export function plausibleWeight(
  weight_lb: number,
  window: WeighedWindow,
  table: WindowsTable,
): PlausibleWeight {
  const estimate = windowWeight(window, table);
  const glass_lb = glassWeight_lb(
    window.width_in,
    window.height_in,
    window.glazing ?? 'double',
    table.glass.thin_1_8_lb_per_ft2,
    table,
  );
  if (weight_lb < FAR_BELOW_GLASS * glass_lb) {
    return {
      is_plausible: false,
      glass_lb,
      question: `Is ${weight_lb} lb right? The glass of a ${window.glazing ?? 'double'}-glazed unit this size weighs about ${Math.round(glass_lb)} lb by itself.`,
    };
  }
  if (weight_lb > FAR_ABOVE_ESTIMATE * estimate.high_lb) {
    return {
      is_plausible: false,
      glass_lb,
      question: `Is ${weight_lb} lb right for one unit? A window this size is estimated at ${Math.round(estimate.low_lb)} to ${Math.round(estimate.high_lb)} lb.`,
    };
  }
  return { is_plausible: true, glass_lb, question: null };
}
