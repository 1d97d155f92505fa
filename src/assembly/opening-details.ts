import { z } from 'zod';
import { parseInput } from '../base/parse-input.ts';
import detailsJson from './catalogue/opening-details.json' with { type: 'json' };
import { sourced } from './catalogue-schema.ts';

const openingDetailsSchema = z.strictObject({
  schema: z.literal('cladwright-opening-details/1'),
  /** Shim and seal space between unit and opening, on each side. */
  clearance_in: sourced,
  sill_slope_deg: sourced,
  back_dam_in: sourced,
  /** Depth of a window frame on either side of its flange. */
  frame_outside_flange_in: sourced,
  frame_inside_flange_in: sourced,
  flange_width_in: sourced,
  joint_width_in: sourced,
  /** Least overlap of finish and frame that a sealant joint needs. */
  joint_depth_in: sourced,
  drip_past_face_in: sourced,
});
/** Measures of an opening that every buck shares. */
export type OpeningDetails = z.output<typeof openingDetailsSchema>;

let loaded: OpeningDetails | undefined;

/**
 * The shipped measures, checked once per process.
 * @throws Refusal naming the key that doesn't fit the schema
 */
export function loadOpeningDetails(): OpeningDetails {
  loaded ??= parseInput(openingDetailsSchema, detailsJson, 'opening-details.json');
  return loaded;
}
