import { z } from 'zod';
import { provenanceSchema } from './thermal/sourced.ts';

const sourceIds = z.array(z.string()).min(1);
const sourced = { sources: sourceIds, provenance: provenanceSchema };

const maxUSchema = z.strictObject({ value: z.number().positive(), ...sourced });
const optionSchema = z.strictObject({
  cavity_r: z.number().min(0),
  ci_r: z.number().min(0),
  ...sourced,
});
export type TableOption = z.output<typeof optionSchema>;

const residentialRowSchema = z.strictObject({
  /** "0" to "8"; "4M" for marine zone 4. */
  zone: z.string().regex(/^([0-8]|4M)$/),
  wood_frame: z.strictObject({ max_u_factor: maxUSchema, options: z.array(optionSchema).min(1) }),
  mass: z.strictObject({
    max_u_factor: maxUSchema,
    max_u_factor_interior_insulation: maxUSchema,
    /** At least half of the insulation outside the mass or in it. */
    exterior_r: maxUSchema,
    /** More than half of it inside the mass. */
    interior_r: maxUSchema,
  }),
  notes: z.array(z.string()),
});
export type ResidentialRow = z.output<typeof residentialRowSchema>;

const steelRowSchema = z.strictObject({
  /** The wood-frame option that these stand in for. */
  wood: z.strictObject({ cavity_r: z.number(), ci_r: z.number() }),
  stud_spacing_in: z.union([z.literal(16), z.literal(24)]),
  options: z.array(optionSchema).min(1),
  notes: z.array(z.string()),
});

const residentialEditionSchema = z.strictObject({
  edition: z.string(),
  code: z.string(),
  u_table: z.string(),
  r_table: z.string(),
  steel_table: z.string(),
  notes: z.array(z.string()),
  rows: z.array(residentialRowSchema).min(1),
});
export type ResidentialEdition = z.output<typeof residentialEditionSchema>;

const commercialRowSchema = z.strictObject({
  wall: z.enum(['wood-frame', 'steel-frame', 'mass']),
  zone: z.string().regex(/^[0-8]$/),
  nonresidential: maxUSchema,
  residential: maxUSchema,
});
const commercialEditionSchema = z.strictObject({
  edition: z.string(),
  code: z.string(),
  u_table: z.string(),
  notes: z.array(z.string()),
  rows: z.array(commercialRowSchema).min(1),
});
export type CommercialEdition = z.output<typeof commercialEditionSchema>;

/** `rules/energy/walls.table.json`: what energy codes ask of walls. A new edition is a new entry, never an edit. */
export const energyTableSchema = z
  .strictObject({
    schema: z.literal('cladwright-energy-walls/1'),
    title: z.string(),
    sources: z.array(z.strictObject({ id: z.string(), what: z.string().min(3) })).min(1),
    residential_editions: z.array(residentialEditionSchema).min(1),
    /** Equivalents of wood-frame options on steel studs; taken as the same in all residential editions. */
    steel_frame: z.strictObject({
      /** Editions whose table was seen; in others the rows are no surer than memory. */
      seen_for_editions: z.array(z.string()),
      /** How sure it is that a steel-frame wall may meet the U-factor of the wood-frame row instead. */
      u_factor_rule: z.strictObject(sourced),
      notes: z.array(z.string()),
      rows: z.array(steelRowSchema).min(1),
    }),
    commercial_editions: z.array(commercialEditionSchema),
  })
  .superRefine((table, context) => {
    const known = new Set(table.sources.map((source) => source.id));
    for (const id of namedSources(table)) {
      if (!known.has(id)) {
        context.addIssue({
          code: 'custom',
          path: ['sources'],
          message: `The source "${id}" is named but not listed.`,
        });
      }
    }
  });

export type EnergyTable = z.output<typeof energyTableSchema>;

/** Every source id that some figure of the table names, wherever it stands. */
function namedSources(value: unknown): string[] {
  if (Array.isArray(value)) return value.flatMap(namedSources);
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) =>
    key === 'sources' && Array.isArray(inner)
      ? inner.filter((id): id is string => typeof id === 'string')
      : namedSources(inner),
  );
}
