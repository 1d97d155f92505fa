import { z } from 'zod';
import { provenanceSchema as provenance } from '../../base/provenance.ts';
import { Refusal, showValue } from '../../base/refusal.ts';
import type { WindowsTable } from '../window-weight.ts';

const positive = z.number().positive();
const source = z.string().min(5);

const memberSchema = z.strictObject({
  nominal: z.string().min(2),
  /** What a reader calls the size. */
  called: z.string().min(2),
  /** What a buck of it is made of, whatever its depth. */
  made_of: z.string().min(2),
  kind: z.enum(['lumber', 'panel']),
  thickness_in: positive,
  /** Net width across the wall, in. */
  depth_in: positive,
  /** How far outside the framing it is let carry a window. */
  max_projection_in: positive,
});
export type BuckMember = z.output<typeof memberSchema>;

/** `wood.table.json`: wood values and the trade's rules for window bucks. */
export const woodTableSchema = z.strictObject({
  schema: z.literal('cladwright-wood/1'),
  title: z.string(),
  fc_perp: z.strictObject({
    rows: z
      .array(z.strictObject({ species: z.string(), specific_gravity: positive, psi: positive, provenance }))
      .min(1),
    wet_factor: positive.max(1),
    wet_provenance: provenance,
    note: z.string(),
    source,
  }),
  bending: z.strictObject({
    rows: z
      .array(
        z.strictObject({
          species: z.string(),
          specific_gravity: positive,
          fb_psi: positive,
          fv_psi: positive,
          e_psi: positive,
          provenance,
        }),
      )
      .min(1),
    note: z.string(),
    source,
    across_stiffness_ratio: positive.max(1),
    across_stiffness_source: source,
    across_stiffness_provenance: provenance,
    across_tension_limit_psi: positive,
    across_tension_source: source,
    across_tension_provenance: provenance,
  }),
  panel_bending: z.strictObject({
    lb_in_per_ft_by_nominal: z.record(z.string(), positive),
    along_lb_in_per_ft_by_nominal: z.record(z.string(), positive),
    stiffness_lb_in2_per_ft_by_nominal: z.record(z.string(), positive),
    along_stiffness_lb_in2_per_ft_by_nominal: z.record(z.string(), positive),
    note: z.string(),
    source,
    provenance,
  }),
  members: z.strictObject({ rows: z.array(memberSchema).min(1), source, provenance }),
  face_fastened: z.strictObject({
    max_projection_in: positive,
    max_projection_source: source,
    max_projection_provenance: provenance,
    flat_frame_max_projection_in: positive,
    flat_frame_source: source,
    flat_frame_provenance: provenance,
  }),
  flange_over_insulation: z.strictObject({ max_projection_in: positive, source, provenance }),
  statics: z.strictObject({
    sill_strip_in: positive,
    setting_blocks: z.number().int().positive(),
    setting_block_length_in: positive,
    /** Middle of a block from the jamb that carries it, under large units. */
    setting_block_from_jamb_in: positive,
    frame_behind_flange_in: positive,
    face_contact_strip_in: positive,
    first_screw_from_corner_in: positive,
    /** Weight of the buck itself, whatever the species. */
    buck_density_pcf: positive,
    source,
    provenance,
  }),
  screws: z.strictObject({
    min_penetration_in: positive,
    min_penetration_source: source,
    min_spacing_diameters: positive,
    min_edge_diameters: positive,
    spacing_source: source,
    provenance,
  }),
  serviceability: z.strictObject({
    sag_limit_in: positive,
    creep_factor: positive,
    slip_lb_per_in_1_5: positive,
    source,
    provenance,
  }),
});
export type WoodTable = z.output<typeof woodTableSchema>;

/** Both tables that the buck calculator reads. */
export type BuckTables = { readonly wood: WoodTable; readonly windows: WindowsTable };

/**
 * Compression strength perpendicular to grain for a gravity of 0.3 to 0.75, psi: the lowest of the listed species
 * of that gravity or more, so that denser wood never counts for less.
 */
export function compressionPerp_psi(specific_gravity: number, table: WoodTable): number {
  const { rows } = table.fc_perp;
  const denser = rows.filter((row) => row.specific_gravity >= specific_gravity - 1e-9);
  const highest = Math.max(...rows.map((row) => row.specific_gravity));
  const counted = denser.length > 0 ? denser : rows.filter((row) => row.specific_gravity === highest);
  return Math.min(...counted.map((row) => row.psi));
}

export type LumberBending = { readonly fb_psi: number; readonly fv_psi: number; readonly e_psi: number };

/**
 * Bending and shear strength along the grain and stiffness of lumber of that gravity, psi: the lowest of the listed
 * species of that gravity or more, as for {@link compressionPerp_psi}.
 */
export function lumberBending(specific_gravity: number, { bending: { rows } }: WoodTable): LumberBending {
  const denser = rows.filter((row) => row.specific_gravity >= specific_gravity - 1e-9);
  const highest = Math.max(...rows.map((row) => row.specific_gravity));
  const counted = denser.length > 0 ? denser : rows.filter((row) => row.specific_gravity === highest);
  const least = (pick: (row: (typeof rows)[number]) => number) => Math.min(...counted.map(pick));
  return {
    fb_psi: least((row) => row.fb_psi),
    fv_psi: least((row) => row.fv_psi),
    e_psi: least((row) => row.e_psi),
  };
}

/** The member of that nominal size. @throws Refusal that lists the known sizes */
export function memberNamed(nominal: string, table: WoodTable): BuckMember {
  const found = table.members.rows.find((row) => row.nominal === nominal);
  if (!found) {
    throw new Refusal({
      field: 'member.nominal',
      value: showValue(nominal),
      accepted: `Choose one of ${table.members.rows.map((row) => `"${row.nominal}"`).join(', ')}.`,
    });
  }
  return found;
}
