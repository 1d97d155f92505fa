import { inches } from '../../base/inches.ts';
import { unitArea_ft2 } from '../window-weight.ts';
import { bearingForces, jambScrewShear_lb } from './bearing-statics.ts';
import {
  ASSUMED,
  type BuckContext,
  type BuckOption,
  type BuckStrength,
  type BuckWindow,
  NO_UTILISATION,
} from './buck-types.ts';
import { lengthShortfall, type MemberAndScrew, minimumScrewLength_in, percent } from './check-parts.ts';
import { acrossSill, alongSill, jambBracket, type ProjectingBuck } from './member-bending.ts';
import {
  DEAD,
  DEAD_AND_WIND,
  screwCapacity,
  screwStiffness_lb_per_in,
  screwTension,
} from './screw-capacity.ts';
import { screwsAlong } from './screw-layout.ts';
import { compressionPerp_psi, type WoodTable } from './wood-table.ts';

/** Tie screws stand this far from the inner edge of the framing. */
const TIE_FROM_INSIDE_IN = 0.75;
/** Penetration counted in trimmer and king stud together. */
const TRIMMERS_IN = 3;
/** A rough sill is one 2x laid flat: a longer thread under the sill piece has nothing to hold in. */
const ROUGH_SILL_IN = 1.5;

/**
 * Strength of a buck that lines the opening, bears on the rough sill and projects past the framing.
 *
 * Checks the bearing of the sill piece, its ties, and the way the weight gets from outside the face to the
 * framing: a panel sill may bend across the wall; a lumber sill may not (it would bend across its grain), so the
 * jambs carry, as brackets. A large unit stands on its setting blocks, and the sill must bring their load to the jambs
 * first. Wind goes through the jamb and head screws in shear.
 *
 * @throws Refusal outside the ranges of the connection formulas
 */
export function checkBearing(
  option: BuckOption,
  parts: MemberAndScrew,
  window: BuckWindow,
  context: BuckContext & { readonly framing_gravity: number; readonly stands_on_blocks: boolean },
  table: WoodTable,
): BuckStrength {
  const { member, gravity, screw, spacing_in } = parts;
  const { statics, serviceability } = table;
  const corner = statics.first_screw_from_corner_in;
  const perJamb = screwsAlong(window.height_in, spacing_in, corner);
  const perSill = screwsAlong(window.width_in, spacing_in, corner);
  const min_screw_length_in = minimumScrewLength_in(member.thickness_in, 0, screw, table);
  const fixed = {
    screws_per_side: perJamb,
    min_screw_length_in,
    screw_count: `Screws: ${perJamb} in each jamb, ${perSill} in the head and ${perSill} tying the sill down.`,
  };

  const tie_distance_in = context.framing_depth_in - TIE_FROM_INSIDE_IN;
  if (tie_distance_in <= statics.sill_strip_in / 2) {
    return {
      ...fixed,
      utilisation: NO_UTILISATION,
      failures: [
        `A wall ${context.framing_depth_in} in. deep gives the sill piece no lever to be held down by: use a frame on the face of the framing, or an engineer’s bracket.`,
      ],
      sag_in: null,
      notes: [],
    };
  }

  const width_in = context.projection_in + context.framing_depth_in;
  const buck_lb =
    (((2 * (window.width_in + window.height_in) + 8 * member.thickness_in) * member.thickness_in * width_in) /
      1728) *
    statics.buck_density_pcf;
  const weight_lb = window.weight_lb + buck_lb;
  const eccentricity_in =
    (window.weight_lb * context.projection_in +
      (buck_lb * (context.projection_in - context.framing_depth_in)) / 2) /
    weight_lb;

  const spread_length_in =
    statics.setting_blocks * (statics.setting_block_length_in + 2 * member.thickness_in);
  const forces = bearingForces({
    weight_lb,
    eccentricity_in,
    bearing_length_in: context.framing_depth_in,
    tie_distance_in,
    spread_length_in,
    strip_in: statics.sill_strip_in,
  });
  const wet = context.wet_service ?? false;
  const strength_psi =
    compressionPerp_psi(Math.min(gravity, context.framing_gravity), table) *
    (wet ? table.fc_perp.wet_factor : 1);
  const bearing = forces.stress_psi / strength_psi;

  const short = lengthShortfall(screw, min_screw_length_in);
  if (short) {
    return {
      ...fixed,
      utilisation: { gravity: null, wind: null, combined: null, bearing },
      failures: [short],
      sag_in: null,
      notes: [],
    };
  }

  const joint = {
    screw,
    member_gravity: gravity,
    framing_gravity: context.framing_gravity,
    side_in: member.thickness_in,
    thread_length_in: option.thread_length_in ?? ASSUMED.thread_length_in,
    head_diameter_in: option.head_diameter_in ?? ASSUMED.head_diameter_in,
    wet_service: wet,
  };
  const reach_in = screw.length_in - member.thickness_in;
  const capacity = screwCapacity({ ...joint, penetration_in: Math.min(reach_in, TRIMMERS_IN), gap_in: 0 });
  const inSill = screwTension({ ...joint, penetration_in: Math.min(reach_in, ROUGH_SILL_IN) });
  const tie = forces.tie_lb / perSill / (inSill.tension_lb * DEAD);

  const lever_in = Math.max(0, eccentricity_in + context.framing_depth_in / 2);
  const jamb = jambScrewShear_lb({
    weight_lb: weight_lb / 2,
    lever_in,
    screws: perJamb,
    spacing_in: jambSpacing_in(window.height_in, perJamb, corner),
  });
  const throughJambs = Math.hypot(jamb.direct_lb, jamb.couple_lb) / (capacity.lateral_lb * DEAD);
  const joined = option.corners_joined ?? true;
  const uncut = 1 - (option.sill_kerf_in ?? 0) / member.thickness_in;
  const projecting: ProjectingBuck = {
    member,
    gravity,
    window_lb: window.weight_lb,
    weight_lb,
    eccentricity_in,
    width_in: window.width_in,
    height_in: window.height_in,
    spread_length_in,
    uncut,
  };
  const across = acrossSill(projecting, table);
  const along = alongSill(projecting, table);
  const bracket = jambBracket(projecting, table);
  // A smaller unit may hang on its flange or jamb screws; a large one stands on its blocks.
  const onBlocks = context.stands_on_blocks && context.projection_in > statics.frame_behind_flange_in;
  const viaJambs = Math.max(throughJambs, bracket.shear_use, onBlocks ? along.use : 0);
  const blocksDecide = onBlocks && viaJambs === along.use;
  // More than all of the sill outside the framing can't be found by any engineer.
  const wholeStrip = (along.use * statics.frame_behind_flange_in) / context.projection_in;
  const path = wayToFraming(across.use, viaJambs, joined);
  const gravityUse = Math.max(tie, path ?? viaJambs);

  const suction_lb = Math.abs(context.outward_wind_psf) * unitArea_ft2(window.width_in, window.height_in);
  const eachWind_lb = suction_lb / (2 * perJamb + perSill);
  const wind = eachWind_lb / (capacity.lateral_lb * DEAD_AND_WIND);
  const combined = Math.max(
    (gravityUse * DEAD) / DEAD_AND_WIND,
    Math.hypot(jamb.direct_lb, jamb.couple_lb + eachWind_lb) / (capacity.lateral_lb * DEAD_AND_WIND),
  );

  const stiffness = screwStiffness_lb_per_in(screw, 0, serviceability.slip_lb_per_in_1_5);
  const outermost_in = (jambSpacing_in(window.height_in, perJamb, corner) * (perJamb - 1)) / 2;
  const slip_in = (jamb.direct_lb + (jamb.couple_lb * lever_in) / outermost_in) / stiffness;
  const sagViaJambs_in = slip_in + bracket.sag_in + (onBlocks ? along.sag_in : 0);
  const sag_in =
    serviceability.creep_factor *
    (!joined ? across.sag_in : onBlocks ? Math.min(sagViaJambs_in, across.sag_in) : sagViaJambs_in);

  return {
    ...fixed,
    utilisation: { gravity: gravityUse, wind, combined, bearing },
    failures: [
      ...(path === null
        ? [
            'A lumber sill past the framing bends across its grain, for which no design value exists, and with open corners the jambs can’t carry: screw sill, jambs and head together, or use a panel sill.',
          ]
        : []),
      ...(tie > 1
        ? [
            `The screws that hold the inner edge of the sill down are used to ${percent(tie)}: close them up, use thicker ones with longer threads, or have an engineer design a bracket.`,
          ]
        : []),
      ...(path !== null && path > 1 && !blocksDecide
        ? [
            `The weight outside the face uses the buck to ${percent(path)}: bring the window inward, close up the jamb screws or use thicker ones.`,
          ]
        : []),
      ...(wind > 1
        ? [
            `Suction uses the jamb and head screws to ${percent(wind)}: close up the screws or use thicker ones.`,
          ]
        : []),
      ...(gravityUse <= 1 && wind <= 1 && combined > 1
        ? [`Weight and suction together use the jamb screws to ${percent(combined)}: close up the screws.`]
        : []),
      ...(bearing > 1
        ? [`The rough sill is crushed (${percent(bearing)} of its strength): use longer setting blocks.`]
        : []),
      ...(path !== null && path > 1 && blocksDecide && wholeStrip > 1
        ? [
            `The setting blocks use the sill piece past the framing to ${percent(wholeStrip)} in bringing their load to the jambs, even if all ${inches(context.projection_in)} in. of it bend together. Use a thicker or laminated sill piece, bring the window inward until its frame stands over the rough sill, or have an engineer design brackets.`,
          ]
        : []),
    ],
    doubts: [
      ...(path !== null && path > 1 && blocksDecide && wholeStrip <= 1
        ? [
            `The projecting strip of the sill piece is used to ${percent(along.use)} by bringing the load of the setting blocks to the jambs, with the blocks ${statics.setting_block_from_jamb_in} in. from them; across the sill nothing more may be counted. Use a thicker or laminated sill piece, bring the window inward until its frame stands over the rough sill, or ask an engineer.`,
          ]
        : []),
      ...(bracket.across_grain_psi > table.bending.across_tension_limit_psi
        ? [
            `The jambs would be pulled across their grain by ${bracket.across_grain_psi.toFixed(1)} psi: use panel jambs, or have an engineer look.`,
          ]
        : []),
    ],
    sag_in,
    notes: [
      `Counted as bearing on all ${inches(context.framing_depth_in)} in. of the rough sill: sill, jamb and head pieces are ${inches(width_in)} in. deep, each in one piece across, ${inches(context.framing_depth_in)} in. of it on the framing and ${inches(context.projection_in)} in. outside.`,
      member.kind === 'lumber'
        ? 'A flat lumber sill past the framing would bend across its grain, which has no design value: the jambs are counted, not the sill.'
        : 'The panel sill is counted in bending across its weaker axis (strength from memory), or the jambs where the corners are joined.',
      `Each jamb as a bracket in its own plane: shear along the grain ${percent(bracket.shear_use)}${
        member.kind === 'lumber'
          ? `, tension across it ${bracket.across_grain_psi.toFixed(1)} psi, for which sawn lumber has no design value (held under ${table.bending.across_tension_limit_psi} psi)`
          : ''
      }.`,
      ...(onBlocks
        ? [
            `A unit this large stands on its setting blocks, no further than ${statics.setting_block_from_jamb_in} in. from the jambs, with the window maker’s consent: the strip of the sill past the framing brings their load to the jambs (${percent(along.use)}).`,
          ]
        : []),
      ...(option.sill_kerf_in
        ? [
            `A drip kerf ${option.sill_kerf_in} in. deep is counted where the sill bends most; keep it outside the rough sill, or it takes bearing away as well.`,
          ]
        : []),
    ],
  };
}

function jambSpacing_in(height_in: number, screws: number, from_corner_in: number): number {
  return (height_in - 2 * Math.min(from_corner_in, height_in / 3)) / (screws - 1);
}

/** The better of the ways that may be counted; null when none may. */
function wayToFraming(acrossSill: number | null, throughJambs: number, joined: boolean): number | null {
  if (!joined) return acrossSill;
  return acrossSill === null ? throughJambs : Math.min(acrossSill, throughJambs);
}
