import { z } from 'zod';

export const THERMAL_METHODS = [
  'parallel-path',
  'isothermal-planes',
  'iso-6946',
  'steel-correction-factor',
] as const;
export type ThermalMethod = (typeof THERMAL_METHODS)[number];

/** The label of the framed layer in interfaces and in `air_gap_layer`. */
export const CAVITY_LABEL = 'cavity insulation';

function amount(min: number, max: number, unit: string, example: number) {
  const message = `Give ${unit} from ${min} to ${max}, for example ${example}.`;
  return z.number(message).min(min, message).max(max, message);
}

const LABEL = 'Give the layer a label of 1 to 120 characters, for example "gypsum board".';
const layersSchema = z
  .array(
    z.strictObject(
      { label: z.string(LABEL).min(1, LABEL).max(120, LABEL), r: amount(0, 200, 'h·ft²·°F/Btu', 0.45) },
      'Give a layer, for example {"label":"gypsum board","r":0.45}.',
    ),
    'Give a list of layers, inside to outside, for example [{"label":"gypsum board","r":0.45}].',
  )
  .max(40, 'Give at most 40 layers.');

const FILM = 'Give a surface film resistance above 0 and up to 2 h·ft²·°F/Btu, for example';
const film = (example: number) =>
  z.number(`${FILM} ${example}.`).positive(`${FILM} ${example}.`).max(2, `${FILM} ${example}.`);

const cavityBase = {
  depth_in: amount(0.5, 24, 'the actual cavity depth in inches', 5.5),
  spacing_in: amount(4, 96, 'the stud spacing in inches on center', 16),
  insulation_r: amount(0, 200, 'the R-value of the cavity insulation, h·ft²·°F/Btu,', 20),
};
const framingFraction = amount(0, 1, 'the share of the wall that is framing', 0.25);
const framingR = z
  .number('Give the R-value of the stud, above 0, for example 6.88.')
  .positive('Give the R-value of the stud, above 0, for example 6.88.')
  .max(100, 'Give the R-value of the stud, at most 100, for example 6.88.');

const CAVITY =
  'Give the framed layer, for example {"framing":"wood","depth_in":5.5,"spacing_in":16,"framing_fraction":0.25,"framing_r":6.88,"insulation_r":20}.';
const woodCavity = z.strictObject(
  {
    framing: z.literal(
      'wood',
      'This method is for "wood"; steel framing needs the method "steel-correction-factor".',
    ),
    ...cavityBase,
    framing_fraction: framingFraction,
    framing_r: framingR,
  },
  CAVITY,
);
const steelCavity = z.strictObject(
  {
    framing: z.literal(
      'steel',
      'The method "steel-correction-factor" is for "steel"; wood framing takes "parallel-path".',
    ),
    ...cavityBase,
    framing_fraction: framingFraction.optional(),
    framing_r: framingR.optional(),
  },
  CAVITY,
);

const common = {
  film_inside_r: film(0.68),
  inside_layers: layersSchema,
  outside_layers: layersSchema,
  film_outside_r: film(0.17),
  fasteners: z
    .strictObject(
      {
        through: z.string('Give the label of the layer the fasteners pass, for example "board".').min(1),
        per_ft2: amount(0, 20, 'fasteners per square foot', 0.75),
        chi_btu_h_f: amount(0, 1, 'the point thermal transmittance of one in Btu/(h·°F)', 0.003),
      },
      'Give the fasteners, for example {"through":"board","per_ft2":0.75,"chi_btu_h_f":0.003}.',
    )
    .optional(),
  inside_temp_f: amount(-80, 140, '°F', 70).optional(),
  outside_temp_f: amount(-80, 140, '°F', 10).optional(),
};

/** Input of `calc thermal`. Which fields the framed layer needs depends on the method. */
export const thermalInputSchema = z.discriminatedUnion(
  'method',
  [
    z.strictObject({ method: z.enum(['parallel-path', 'isothermal-planes']), ...common, cavity: woodCavity }),
    z.strictObject({
      method: z.literal('iso-6946'),
      ...common,
      cavity: woodCavity,
      /** Of ISO 6946 Annex F: 0 no gaps or minor ones, 1 gaps from face to face, 2 air moving behind too. */
      air_gap_level: z
        .union([z.literal(0), z.literal(1), z.literal(2)], { error: 'Give an air-gap level: 0, 1 or 2.' })
        .optional(),
      /** The layer with the gaps; the one of highest resistance where not given. */
      air_gap_layer: z.string(`Give the label of a layer, or "${CAVITY_LABEL}".`).min(1).optional(),
    }),
    z.strictObject({ method: z.literal('steel-correction-factor'), ...common, cavity: steelCavity }),
  ],
  { error: `Give an object with a method: ${THERMAL_METHODS.map((m) => `"${m}"`).join(', ')}.` },
);

export type ThermalInput = z.output<typeof thermalInputSchema>;
export type IsoInput = Extract<ThermalInput, { method: 'iso-6946' }>;
