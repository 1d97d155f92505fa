import { DEAD } from './screw-capacity.ts';
import { type BuckMember, lumberBending, type WoodTable } from './wood-table.ts';

/** A buck that lines the opening and projects past the framing, as far as its pieces bend. */
export type ProjectingBuck = {
  readonly member: BuckMember;
  readonly gravity: number;
  /** Of the window alone: what its blocks stand on the sill with. */
  readonly window_lb: number;
  /** Window and buck, lb. */
  readonly weight_lb: number;
  /** Of that weight outside the face of the framing, in. */
  readonly eccentricity_in: number;
  /** Opening, in. */
  readonly width_in: number;
  readonly height_in: number;
  /** Length of sill over which the blocks spread their load across the wall, in. */
  readonly spread_length_in: number;
  /** Share of the sill's thickness that a kerf leaves. */
  readonly uncut: number;
};

/** One way for the weight to the framing: use 1 is the limit; sag before creep. */
export type Way = { readonly use: number; readonly sag_in: number };

/**
 * The sill piece bends across the wall, a cantilever past the framing: M = W·e, sag W·e³/(3·E·I), over the length that
 * the setting blocks spread it. A panel has a strength that way, across its weaker axis, which goes with the square of
 * what a kerf leaves; flat lumber would bend across its grain, for which there is no design value, so its use is null.
 * Its stiffness that way is known, and what doesn't break sags by it.
 *
 * Source: beam formulas; own derivation.
 */
export function acrossSill(
  buck: ProjectingBuck,
  table: WoodTable,
): { readonly use: number | null; readonly sag_in: number } {
  const { weight_lb, eccentricity_in: e, spread_length_in, uncut, member } = buck;
  if (e <= 0) return { use: 0, sag_in: 0 };
  const feet = spread_length_in / 12;
  const strength = ofPanel(member, table.panel_bending.lb_in_per_ft_by_nominal);
  const panelStiffness = ofPanel(member, table.panel_bending.stiffness_lb_in2_per_ft_by_nominal);
  const stiffness =
    panelStiffness === null
      ? lumberBending(buck.gravity, table).e_psi *
        table.bending.across_stiffness_ratio *
        member.thickness_in ** 3
      : panelStiffness;
  return {
    use: strength === null ? null : (weight_lb * e) / (strength * uncut ** 2 * DEAD * feet),
    sag_in: (weight_lb * e ** 3) / (3 * stiffness * uncut ** 3 * feet),
  };
}

/**
 * The projecting strip of the sill piece brings the load of the setting blocks along the wall to the jambs: a beam
 * between the jambs with half the weight at a distance a from each, M = W·a/2, sag at the block
 * W·a²(3L − 4a)/(12·E·I). Only the strip under the frame counts, along the grain or along a panel's stronger axis; so
 * it is for a frame that stands wholly outside the framing.
 *
 * Source: beam formulas; own derivation.
 */
export function alongSill(buck: ProjectingBuck, table: WoodTable): Way {
  const { member, window_lb, width_in } = buck;
  const strip_in = table.statics.frame_behind_flange_in;
  const a = Math.min(table.statics.setting_block_from_jamb_in, width_in / 4);
  const moment = (window_lb / 2) * a;
  const panelStrength = ofPanel(member, table.panel_bending.along_lb_in_per_ft_by_nominal);
  const panelStiffness = ofPanel(member, table.panel_bending.along_stiffness_lb_in2_per_ft_by_nominal);
  const { fb_psi, e_psi } = lumberBending(buck.gravity, table);
  const strength =
    panelStrength === null
      ? (fb_psi * strip_in * member.thickness_in ** 2) / 6
      : (panelStrength * strip_in) / 12;
  const stiffness =
    panelStiffness === null
      ? (e_psi * strip_in * member.thickness_in ** 3) / 12
      : (panelStiffness * strip_in) / 12;
  return {
    use: moment / (strength * DEAD),
    sag_in: (window_lb * a ** 2 * (3 * width_in - 4 * a)) / (12 * stiffness),
  };
}

/** The two jambs as brackets in their own plane. */
export type JambBracket = {
  /** Shear along the grain at the face of the framing, 1 is the limit. */
  readonly shear_use: number;
  /** Tension across the grain at the top of that section, psi; a panel's crossed layers take it. */
  readonly across_grain_psi: number;
  /** In-plane bending and shear at the weight, before creep. */
  readonly sag_in: number;
};

/**
 * Each jamb carries half the weight as a short deep bracket, as deep as the window is high: shear along its grain
 * 1.5·V/(t·H), at the face of the framing a moment V·e whose edge stress 6·V·e/(t·H²) acts across the grain. Sag: shear
 * 1.2·V·e/(G·t·H) with G = E/16, and bending V·e³/(3·E·I) with the stiffness across the grain.
 *
 * Source: beam formulas; G = E/16 for lumber, common practice from memory.
 */
export function jambBracket(buck: ProjectingBuck, table: WoodTable): JambBracket {
  const { member, weight_lb, height_in } = buck;
  const e = Math.max(0, buck.eccentricity_in);
  const { fv_psi, e_psi } = lumberBending(buck.gravity, table);
  const shear_lb = weight_lb / 2;
  const section_in2 = member.thickness_in * height_in;
  const across_psi = e_psi * table.bending.across_stiffness_ratio;
  return {
    shear_use: (1.5 * shear_lb) / section_in2 / (fv_psi * DEAD),
    across_grain_psi:
      member.kind === 'panel' ? 0 : (6 * shear_lb * e) / (member.thickness_in * height_in ** 2),
    sag_in:
      (1.2 * shear_lb * e) / ((e_psi / 16) * section_in2) +
      (shear_lb * e ** 3) / ((3 * across_psi * member.thickness_in * height_in ** 3) / 12),
  };
}

/** What a table of panels says of this member; null for lumber. */
function ofPanel({ nominal }: BuckMember, rows: Readonly<Record<string, number>>): number | null {
  return Object.entries(rows).find(([name]) => name === nominal)?.[1] ?? null;
}

/**
 * Use of the sill piece of a frame on the face of the framing between two of its screws, half the weight standing on a
 * block midway: M = W/2·s/4 along the grain. 1 is the limit.
 *
 * @param depth_in   of the piece across the wall
 * @param height_in  of the piece up the wall, the way that it bends
 *
 * Source: beam formulas; own derivation.
 */
export function betweenScrewsUse(
  weight_lb: number,
  spacing_in: number,
  depth_in: number,
  height_in: number,
  gravity: number,
  table: WoodTable,
): number {
  const moment = ((weight_lb / 2) * spacing_in) / 4;
  return moment / (((lumberBending(gravity, table).fb_psi * depth_in * height_in ** 2) / 6) * DEAD);
}
