import { z } from 'zod';
import { TEMP_RANGE_C } from './psychrometrics.ts';

const MONTH_NAMES = [
  'january',
  'february',
  'march',
  'april',
  'may',
  'june',
  'july',
  'august',
  'september',
  'october',
  'november',
  'december',
] as const;

const MONTH_MESSAGE =
  'Give the month as a whole number from 1 to 12, or by its English name or first three letters, for example 1, "Jan" or "January".';

/** 1 to 12 for a month given as a number, an English name or its first three letters; null for anything else. */
export function monthNumber(month: string | number): number | null {
  if (typeof month === 'number') return Number.isInteger(month) && month >= 1 && month <= 12 ? month : null;
  const word = month.trim().toLowerCase();
  const index = MONTH_NAMES.findIndex((name) => name === word || name.slice(0, 3) === word);
  return index < 0 ? null : index + 1;
}

const TEMP_MESSAGE = `Give a temperature in °C from ${TEMP_RANGE_C.min} to ${TEMP_RANGE_C.max}, for example 20.`;
const temp = z.number(TEMP_MESSAGE).min(TEMP_RANGE_C.min, TEMP_MESSAGE).max(TEMP_RANGE_C.max, TEMP_MESSAGE);

/** Names the slip of writing 50 for 50 %. */
function humidityMessage(input: unknown): string {
  const meant =
    typeof input === 'number' && input > 1 && input <= 100 ? `; did you mean ${input / 100}?` : '.';
  return `Give relative humidity as a share from 0 to 1, for example 0.5${meant}`;
}
const humidity = z
  .number({ error: (issue) => humidityMessage(issue.input) })
  .min(0, { error: (issue) => humidityMessage(issue.input) })
  .max(1, { error: (issue) => humidityMessage(issue.input) });

function figure(what: string, max: number, example: number) {
  const message = `Give ${what} from 0 to ${max}, for example ${example}.`;
  return z.number(message).min(0, message).max(max, message);
}

const CLASS_MESSAGE = 'Give a humidity class as a whole number from 1 to 5, for example 3.';
const ONE_OF_MESSAGE = 'Give either "rh" or "humidity_class" beside "temp_c", one of them.';

const insideSteady = z
  .strictObject({
    temp_c: temp,
    rh: humidity.optional(),
    humidity_class: z.int(CLASS_MESSAGE).min(1, CLASS_MESSAGE).max(5, CLASS_MESSAGE).optional(),
  })
  .refine((v) => (v.rh === undefined) !== (v.humidity_class === undefined), { error: ONE_OF_MESSAGE });

const TWELVE_INSIDE = 'Give twelve months of indoor air, in the order of the outdoor months.';
const TWELVE_OUTSIDE =
  'Give twelve months of outdoor air, each once, as [{"month","temp_c","rh"}, …]; the method needs a whole year.';

/** Input of `calc condensation`, SI units, layers from inside to outside. */
export const condensationInputSchema = z.strictObject({
  inside: z.union(
    [
      insideSteady,
      z.array(z.strictObject({ temp_c: temp, rh: humidity }), TWELVE_INSIDE).length(12, TWELVE_INSIDE),
    ],
    {
      error:
        'Give {"temp_c","rh"}, {"temp_c","humidity_class"}, or twelve entries {"temp_c","rh"} in the order of the outdoor months.',
    },
  ),
  outside: z
    .array(
      z.strictObject({
        month: z
          .union([z.string(), z.number()], { error: MONTH_MESSAGE })
          .refine((month) => monthNumber(month) !== null, { error: MONTH_MESSAGE }),
        temp_c: temp,
        rh: humidity,
      }),
      TWELVE_OUTSIDE,
    )
    .length(12, TWELVE_OUTSIDE),
  layers: z
    .array(
      z.strictObject({
        label: z.string('Give the layer a name in quotes.').min(1, 'Give the layer a name.').max(120),
        r_m2kw: figure('a thermal resistance in m²·K/W', 100, 0.25),
        sd_m: figure('an equivalent air layer thickness sd in m', 1e6, 0.3),
      }),
      'Give the layers from inside to outside, as [{"label","r_m2kw","sd_m"}, …].',
    )
    .min(1, 'Give at least one layer, from inside to outside.')
    .max(60, 'Give at most 60 layers.'),
  /** 0.13 and 0.04 m²·K/W where left out. */
  rsi_m2kw: figure('the inside surface resistance in m²·K/W', 1, 0.13).optional(),
  rse_m2kw: figure('the outside surface resistance in m²·K/W', 1, 0.04).optional(),
});
export type CondensationInput = z.output<typeof condensationInputSchema>;
