import { z } from 'zod';
import { provenanceSchema } from '../calculators/thermal/sourced.ts';

const published = { source: z.string().min(3), provenance: provenanceSchema };

/** What a layer is made of. Dry, at about 75 °F mean. */
export const materialSchema = z
  .strictObject({
    id: z.string().regex(/^[a-z0-9]+(-[a-z0-9]+)*$/),
    label: z.string(),
    /** Null where the layer has one resistance as a whole. */
    conductivity_w_mk: z.strictObject({ value: z.number().positive(), ...published }).nullable(),
    /** Of the layer as a whole, h·ft²·°F/Btu: facings, films, lapped siding. */
    r: z.strictObject({ value: z.number().min(0), ...published }).nullable(),
    /** Null for films and papers: their weight counts nowhere. */
    density_kg_m3: z.strictObject({ value: z.number().positive(), ...published }).nullable(),
    /** Other published conductivities of the same kind of material: how far the sources lie apart. */
    also_published: z.array(
      z.strictObject({ conductivity_w_mk: z.number().positive(), what: z.string(), ...published }),
    ),
    /** The layers that it stands for: "lining", "sheathing/osb", "finish/plaster-on-furred-lath". */
    used_for: z.array(z.string().min(1)).min(1),
  })
  .refine(
    (material) => (material.conductivity_w_mk === null) !== (material.r === null),
    'Give either a conductivity or a resistance of the whole layer.',
  );
export type Material = z.output<typeof materialSchema>;
