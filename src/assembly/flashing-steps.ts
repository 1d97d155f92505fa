import { z } from 'zod';
import { parseInput } from '../base/parse-input.ts';
import { provenanceSchema as provenance } from '../base/provenance.ts';
import stepsJson from './catalogue/flashing-steps.json' with { type: 'json' };
import { BARRIER_KINDS, BUCK_SUPPORTS } from './catalogue-schema.ts';

/** What a step can depend on, with every value that it can have. */
export const OPENING_TRAITS = {
  support: BUCK_SUPPORTS,
  window: ['flanged', 'flangeless', 'door'],
  project: ['new', 'retrofit'],
  barrier: BARRIER_KINDS,
  /** What the barrier lies on. */
  ground: ['sheathing', 'open-studs'],
  foam: ['polystyrene', 'other'],
  finish: ['plaster', 'boards'],
  /** Where the flange lies to the furring that the cladding hangs on, if any. */
  furring: ['none', 'outside-flange', 'in-line-with-flange'],
} as const;
type Traits = typeof OPENING_TRAITS;
/** One opening as the flashing sees it. */
export type OpeningTraits = { readonly [T in keyof Traits]: Traits[T][number] };

/** The work in its order; "insulation-first" is the way without a buck. */
export const PHASES = [
  'prepare',
  'barrier',
  'support',
  'insulation-first',
  'skin',
  'pan',
  'insulation',
  'furring-first',
  'window',
  'flange',
  'head',
  'furring-after',
  'finish',
  'inside',
] as const;

function anyOf<const T extends readonly [string, ...string[]]>(values: T) {
  return z.array(z.enum(values)).min(1).optional();
}

/** Holds where every trait named has one of the values listed; with nothing named, always. */
const when = z.strictObject({
  support: anyOf(OPENING_TRAITS.support),
  window: anyOf(OPENING_TRAITS.window),
  project: anyOf(OPENING_TRAITS.project),
  barrier: anyOf(OPENING_TRAITS.barrier),
  ground: anyOf(OPENING_TRAITS.ground),
  foam: anyOf(OPENING_TRAITS.foam),
  finish: anyOf(OPENING_TRAITS.finish),
  furring: anyOf(OPENING_TRAITS.furring),
});
export type When = z.output<typeof when>;

const noteSchema = z.strictObject({ id: z.string().min(3), when, text: z.string().min(20) });

const flashingStepsSchema = z.strictObject({
  schema: z.literal('cladwright-flashing-steps/1'),
  source: z.string().min(10),
  provenance,
  /** In the order of the work. */
  steps: z
    .array(
      noteSchema.extend({
        phase: z.enum(PHASES),
        /** What must be looked at before the work goes on. */
        hold: z.string().min(10).optional(),
      }),
    )
    .min(1),
  /** The choice that lets a window be replaced later. */
  replace_later: z.array(noteSchema).min(1),
  /** What must not touch what. */
  compatibility: z.array(noteSchema).min(1),
});
export type FlashingSteps = z.output<typeof flashingStepsSchema>;

let loaded: FlashingSteps | undefined;

/**
 * The shipped steps, checked once per process.
 * @throws Refusal naming the step and key that don't fit the schema
 */
export function loadFlashingSteps(): FlashingSteps {
  loaded ??= parseInput(flashingStepsSchema, stepsJson, 'flashing-steps.json');
  return loaded;
}
