import { z } from 'zod';
import { CODE_EDITIONS, type CodeEdition } from '../../base/code-editions.ts';
import { provenanceSchema as provenance } from '../../base/provenance.ts';

/** Fasteners that the fastening calculator knows. */
export const FASTENERS = [
  'nail-0.113',
  'nail-0.120',
  'nail-0.131',
  'nail-0.162',
  'wood-screw-8',
  'wood-screw-10',
  'wood-screw-12',
  'wood-screw-14',
  'lag-screw-1/4',
  'steel-screw-8',
  'steel-screw-10',
] as const;
export type FastenerId = (typeof FASTENERS)[number];

export const FRAMINGS = ['wood', 'steel-33mil', 'steel-43mil', 'steel-54mil'] as const;
export type Framing = (typeof FRAMINGS)[number];

export const SUPPORTS = ['direct', 'furring'] as const;
export type Support = (typeof SUPPORTS)[number];

export const FASTENING_EDITIONS = CODE_EDITIONS;
export type FasteningEdition = CodeEdition;

export type CellProvenance = z.output<typeof provenance>;

const inches = z.number().positive();
/** Thickest foam; null is the code's "design required". */
const cell = inches.nullable();
const citedFigure = z.strictObject({ provenance, source: z.string().min(5) });

const codeTableSchema = z
  .strictObject({
    id: z.enum(['direct-wood', 'furring-wood', 'direct-steel', 'furring-steel']),
    support: z.enum(SUPPORTS),
    framing: z.enum(['wood', 'steel']),
    citation: z.record(z.enum(FASTENING_EDITIONS), z.string().min(5)),
    what: z.string().min(5),
    side: z.enum(['cladding', 'furring']),
    /** Lightest first; an edition that isn't listed doesn't print the column. */
    columns: z
      .array(
        z.strictObject({
          cladding_psf: z.number().positive(),
          editions: z.array(z.enum(FASTENING_EDITIONS)).min(1),
          provenance,
          source: z.string().min(5),
        }),
      )
      .min(1),
    /** Cells of the 15 psf column whose recalled printed value differs from the computed one; the rows hold the smaller. */
    recalled_15_psf: z.array(
      z.strictObject({
        fastener: z.enum(FASTENERS),
        fastener_spacing_in: inches,
        framing_spacing_in: inches,
        computed_in: cell,
        recalled_in: cell,
      }),
    ),
    rows: z
      .array(
        z.strictObject({
          fastener: z.enum(FASTENERS),
          framing: z.array(z.enum(FRAMINGS)).min(1),
          fastener_spacing_in: inches,
          max_insulation_in: z.strictObject({ '16': z.array(cell), '24': z.array(cell) }),
        }),
      )
      .min(1),
    footnotes: z.array(z.strictObject({ text: z.string(), provenance })),
  })
  .refine(
    (table) =>
      table.rows.every(
        (row) =>
          row.max_insulation_in['16'].length === table.columns.length &&
          row.max_insulation_in['24'].length === table.columns.length,
      ),
    'Give one cell for each cladding weight in every row.',
  );
export type CodeTable = z.output<typeof codeTableSchema>;

/** `cladding-over-foam.table.json`: the four code tables, and the rule that reproduces the seen one. */
export const claddingOverFoamSchema = z.strictObject({
  schema: z.literal('cladwright-cladding-over-foam/1'),
  title: z.string(),
  framing_spacings_in: z.tuple([z.literal(16), z.literal(24)]),
  limits: z.strictObject({
    min_specific_gravity: z.number().positive(),
    max_cladding_psf: z.number().positive(),
    max_insulation_in: inches,
  }),
  limits_source: z.string(),
  rule: z.strictObject({
    divisor: z.number().positive(),
    specific_gravity: z.number().positive(),
    furring_side_in: inches,
    direct_side_in: inches,
    step_in: inches,
    least_in: inches,
    provenance,
    source: z.string(),
  }),
  tables: z.array(codeTableSchema).length(4),
});

const fastenerSchema = z.strictObject({
  id: z.enum(FASTENERS),
  label: z.string(),
  kind: z.enum(['smooth-nail', 'wood-screw', 'lag-screw', 'steel-screw']),
  diameter_in: inches,
  /** Shank of a nail, root of a threaded fastener: bears and bends. Null for screws into steel. */
  bearing_diameter_in: inches.nullable(),
  bending_yield_psi: z.number().positive().nullable(),
  head_diameter_in: inches,
  /** Into the stud; for steel screws, past the steel. */
  min_penetration_in: inches,
  /** Part of the point that doesn't count in withdrawal. */
  tip_in: z.number().min(0),
  threads_per_in: z.number().positive().nullable(),
  /** Largest gap that the code tables print for this size. */
  max_gap_in: inches,
  market_lengths_in: z.array(inches).min(1),
  sources: z.record(z.string(), citedFigure),
});
export type FastenerData = z.output<typeof fastenerSchema>;

const steelStudSchema = z.strictObject({
  framing: z.enum(FRAMINGS),
  design_thickness_in: inches,
  fy_psi: z.number().positive(),
  fu_psi: z.number().positive(),
  provenance,
  source: z.string(),
});
export type SteelStud = z.output<typeof steelStudSchema>;

const steelLineSchema = z.strictObject({
  fastener: z.enum(FASTENERS),
  framing: z.array(z.enum(FRAMINGS)).min(1),
  zero_load_gap_in: inches,
  gap_per_lb_in: z.number().positive(),
  max_gap_in: inches,
  provenance,
  source: z.string(),
});
export type SteelLine = z.output<typeof steelLineSchema>;

/** `fasteners.table.json`: sizes, holding and market lengths. */
export const fastenersTableSchema = z.strictObject({
  schema: z.literal('cladwright-fasteners/1'),
  title: z.string(),
  fasteners: z
    .array(fastenerSchema)
    .refine(
      (list) =>
        list.length === FASTENERS.length && FASTENERS.every((id) => list.some((entry) => entry.id === id)),
      'List every fastener once.',
    ),
  steel_studs: z.array(steelStudSchema).length(3),
  steel_gravity_lines: z.array(steelLineSchema).min(1),
});

/** Everything the fastening calculators read; loaded and checked by the caller. */
export type FasteningTables = {
  readonly foam: z.output<typeof claddingOverFoamSchema>;
  readonly fasteners: z.output<typeof fastenersTableSchema>;
};
