import { z } from 'zod';
import { CODE_EDITIONS } from '../../base/code-editions.ts';
import { parseInput } from '../../base/parse-input.ts';
import { provenanceSchema as provenance } from '../../base/provenance.ts';
import { FASTENERS } from '../../calculators/fastening/fastening-tables.ts';
import practiceJson from '../data/fastening-practice.json' with { type: 'json' };

const positive = z.number().positive();
const figure = z.strictObject({ value: positive, source: z.string().min(5), provenance });
const minutes = z
  .strictObject({ low: positive, likely: positive, high: positive })
  .refine(({ low, likely, high }) => low <= likely && likely <= high, 'Give low, likely and high in order.');
const lengths = z.array(positive).min(1);
const fastenerId = z.enum(FASTENERS);

const onFurringWaySchema = z.strictObject({
  fastener: fastenerId,
  label: z.string(),
  driven_as: z.enum(['nail', 'screw']),
  head_in: positive,
  /** In the order to try, widest first. */
  spacings_in: lengths,
  market_lengths_in: lengths,
  source: z.string(),
  provenance,
});
export type OnFurringWay = z.output<typeof onFurringWaySchema>;

const onFurringSchema = z.strictObject({
  /** Catalogue ids of the claddings that are fixed so. */
  claddings: z.array(z.string()).min(1),
  /** What the fastener goes through before the furring; null: the cladding's own thickness. */
  through_in: positive.nullable(),
  rows: z.string(),
  /** In the order to try, the customary one first. */
  ways: z.array(onFurringWaySchema).min(1),
});

/** What no calculator knows: how boards, mats, lath and siding are fixed on site, each figure with its source. */
const practiceSchema = z.strictObject({
  schema: z.literal('cladwright-fastening-practice/1'),
  waste_percent: figure,
  /** One person's minutes for one fastener, all in. */
  minutes_each: z.strictObject({
    source: z.string().min(5),
    provenance,
    screw_up_to_4_in: minutes,
    screw_up_to_6_in: minutes,
    longer_screw: minutes,
    /** Clearance and lead hole of one lag screw, on top of driving it. */
    lag_holes: minutes,
    nail: minutes,
    tack: minutes,
    tie: minutes,
  }),
  stud_face_in: z.strictObject({ wood: figure, steel: figure }),
  steel_edge_distance_in: figure,
  pilot_share_of_root: figure,
  /** Lead hole for the threads of a lag screw; the clearance hole is as wide as its shank. */
  lag_lead_share_of_shank: figure,
  boards: z.strictObject({
    row_spacing_in: figure,
    /** An inner layer is held at every so-manieth stud. */
    inner_layer_studs: figure,
    embedment_wood_in: figure,
    cap_washer_in: figure,
    /** Thinnest first; the first that is sold long enough is taken. */
    fasteners: z.strictObject({
      wood: z.array(fastenerId).min(1),
      steel: z.array(fastenerId).min(1),
    }),
  }),
  mat_tacks: z.strictObject({
    label: z.string(),
    spacing_in: figure,
    embedment_in: figure,
    market_lengths_in: lengths,
  }),
  plate_washer_in: figure,
  furring_strip_in: figure,
  lath: z.strictObject({
    max_spacing_in: z.record(z.enum(CODE_EDITIONS), figure),
    side_lap_tie_max_in: figure,
    sheet_width_in: figure,
    side_lap_in: figure,
    tie_label: z.string(),
  }),
  on_furring: z.strictObject({ lath: onFurringSchema, panel: onFurringSchema, lap: onFurringSchema }),
});
export type FasteningPractice = z.output<typeof practiceSchema>;

let loaded: FasteningPractice | undefined;

/**
 * The shipped practice figures, checked once per process.
 * @throws Refusal naming file and key when the data don't fit
 */
export function fasteningPractice(): FasteningPractice {
  loaded ??= parseInput(practiceSchema, practiceJson, 'fastening-practice.json');
  return loaded;
}
