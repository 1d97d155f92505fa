import { z } from 'zod';
import { sourced } from '../../assembly/catalogue-schema.ts';
import { parseInput } from '../../base/parse-input.ts';
import practiceJson from '../data/site-practice.json' with { type: 'json' };

const words = z.array(z.string().min(3)).min(1);

const practiceSchema = z.strictObject({
  schema: z.literal('cladwright-site-practice/1'),
  waste_percent: z.strictObject({
    boards: sourced,
    offset_layer: sourced,
    sheets: sourced,
    fluid: sourced,
    mat: sourced,
    lath: sourced,
    furring: sourced,
    plaster: sourced,
    cladding: sourced,
    lumber: sourced,
    trim: sourced,
    sealant: sourced,
  }),
  board_ft2: z.strictObject({ foam: sourced, fibre: sourced }),
  lath_sheet_ft2: sourced,
  panel_ft2: sourced,
  plywood_sheet_ft2: sourced,
  furring_piece_ft: sourced,
  bead_piece_ft: sourced,
  cartridge_in3: sourced,
  pan_upturn_in: sourced,
  head_flashing_past_in: sourced,
  skin_onto_barrier_in: sourced,
  coats_in: z.strictObject({ scratch: sourced, brown: sourced, finish: sourced }),
  control_joint_panel_ft2: sourced,
  tools: z.strictObject({ always: words, plaster: words, furring: words, panels: words }),
  photograph: z.strictObject({
    always: words,
    openings: words,
    fasteners: words,
    glue: words,
    lath: words,
    coats: words,
    end: words,
  }),
});
/** Waste, market sizes, tools and pictures: what a site goes by. */
export type SitePractice = z.output<typeof practiceSchema>;

let loaded: SitePractice | undefined;

/**
 * The shipped practice, checked once per process.
 * @throws Refusal naming the key that doesn't fit the schema
 */
export function sitePractice(): SitePractice {
  loaded ??= parseInput(practiceSchema, practiceJson, 'site-practice.json');
  return loaded;
}
