import { z } from 'zod';
import { CODE_EDITIONS } from '../base/code-editions.ts';
import { provenanceSchema as provenance } from '../base/provenance.ts';

const edition = z.enum(CODE_EDITIONS);
const occupancy = z.enum(['residential', 'building-code']);
/** The vapour tables know zones by number; only zone 4 Marine stands apart. */
const zone = z.enum(['0', '1', '2', '3', '4', '4C', '5', '6', '7', '8']);
const sheathing = z.enum(['wood-structural-panel', 'fibreboard', 'gypsum']);

/** One figure of a table: R in h·ft²·°F/Btu, how sure we are, and in what kind of document it was seen. */
const cell = z.strictObject({ r: z.number().min(0), provenance, seen_in: z.string().min(5) });
export type VapourCell = z.output<typeof cell>;

const permission = z.enum(['permitted', 'prohibited', 'by-table']);

/** `rules/vapour/retarders.table.json`: the vapour retarder tables of the model codes. */
export const vapourTableSchema = z.strictObject({
  schema: z.literal('cladwright-vapour-table/1'),
  classes: z.array(
    z.strictObject({
      class: z.enum(['i', 'ii', 'iii']),
      above_perm: z.number().nullable(),
      up_to_perm: z.number(),
      examples: z.array(z.string()),
    }),
  ),
  classes_source: z.strictObject({ text: z.string(), provenance }),
  /** How each edition calls its tables; null where it has none. */
  sections: z.array(
    z.strictObject({
      edition,
      occupancy,
      permission: z.string(),
      class_iii: z.string(),
      class_ii: z.string().nullable(),
      none: z.string().nullable(),
    }),
  ),
  permission: z.array(
    z.strictObject({
      edition,
      zone,
      class_i: permission,
      class_ii: permission,
      class_iii: permission,
      none: permission,
      provenance,
      seen_in: z.string().min(5),
    }),
  ),
  /** Least exterior R with a Class III retarder, and the sheathings over which vented cladding stands in for it. */
  class_iii_ci: z.array(
    z.strictObject({
      edition,
      occupancies: z.array(occupancy).min(1),
      zone,
      over_2x4: cell,
      over_2x6: cell,
      vented_over: z.array(sheathing),
      vented_provenance: provenance,
    }),
  ),
  /** Least exterior R with a Class II retarder under foam plastic. */
  class_ii_ci: z.array(z.strictObject({ edition, zone, over_2x4: cell, over_2x6: cell })),
  /** Least exterior R with no interior retarder at all. */
  no_retarder_ci: z.array(z.strictObject({ edition, zone, ci: cell })),
  no_retarder_max_inboard_r: cell,
  rules: z.array(
    z.strictObject({
      id: z.string(),
      editions: z.array(edition).min(1),
      text: z.string().min(10),
      source: z.string().min(3),
      provenance,
    }),
  ),
  vented_cladding: z.strictObject({
    counts: z.array(z.string()).min(1),
    remark: z.string(),
    source: z.string(),
    provenance,
  }),
});
export type VapourTable = z.output<typeof vapourTableSchema>;
export type VapourEdition = z.output<typeof edition>;
export type VapourOccupancy = z.output<typeof occupancy>;
export type VapourZone = z.output<typeof zone>;
export type ListedSheathing = z.output<typeof sheathing>;
