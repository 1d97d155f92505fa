import { combinedScrewUse } from '../connections/combined.ts';
import { unitArea_ft2 } from '../window-weight.ts';
import {
  ASSUMED,
  type BuckContext,
  type BuckOption,
  type BuckStrength,
  type BuckWindow,
  NO_UTILISATION,
} from './buck-types.ts';
import { lengthShortfall, type MemberAndScrew, minimumScrewLength_in, percent } from './check-parts.ts';
import { type FaceForces, faceForces } from './face-statics.ts';
import { betweenScrewsUse } from './member-bending.ts';
import {
  DEAD,
  DEAD_AND_WIND,
  type ScrewCapacity,
  screwCapacity,
  screwStiffness_lb_per_in,
} from './screw-capacity.ts';
import { frameLayout } from './screw-layout.ts';
import type { WoodTable } from './wood-table.ts';

/** No more than this of the member is counted as bearing under the screw head. */
const SIDE_COUNTED_IN = 1.5;

/** Laid flat against the wall up to this projection, on edge beyond. */
export function isFlatFrame(projection_in: number, table: WoodTable): boolean {
  return projection_in <= table.face_fastened.flat_frame_max_projection_in;
}

/**
 * Use of the most loaded screw of a face-fastened buck (1 is the limit).
 *
 * @param forces         on one screw, lb
 * @param capacity       reference values, lb
 * @param load_duration  0.9 for dead load alone, 1.6 with wind
 *
 * Source: NDS-2018 12.4.1, with withdrawal capped by head pull-through.
 */
export function faceScrewUse(forces: FaceForces, capacity: ScrewCapacity, load_duration: number): number {
  return combinedScrewUse(
    forces.shear_lb,
    forces.gravity_tension_lb + forces.wind_tension_lb,
    capacity.lateral_lb * load_duration,
    capacity.tension_lb * load_duration,
  );
}

/**
 * Strength of a lumber frame screwed to the face of the framing through the sheathing, nothing under it.
 *
 * Rests on the whole frame only where its corners are joined; otherwise on the sill piece alone.
 *
 * @throws Refusal outside the ranges of the connection formulas
 */
export function checkFace(
  option: BuckOption,
  parts: MemberAndScrew,
  window: BuckWindow,
  context: BuckContext & { readonly framing_gravity: number },
  table: WoodTable,
): BuckStrength {
  const { member, gravity, screw, spacing_in } = parts;
  const { statics, serviceability } = table;
  const gap_in = context.gap_in ?? ASSUMED.gap_in;
  const flat = isFlatFrame(context.projection_in, table);
  const through_in = flat ? member.thickness_in : context.projection_in;
  const piece_in = flat ? member.depth_in : member.thickness_in;
  const layout = frameLayout(
    window.width_in,
    window.height_in,
    spacing_in,
    piece_in,
    statics.first_screw_from_corner_in,
  );
  const min_screw_length_in = minimumScrewLength_in(through_in, gap_in, screw, table);
  const fixed = {
    screws_per_side: layout.per_jamb,
    min_screw_length_in,
    screw_count: `Screws: ${layout.per_jamb} in each jamb, ${layout.per_sill} in the sill and ${layout.per_sill} in the head, into solid framing all round.`,
  };

  const blocked =
    member.kind === 'panel'
      ? 'A panel’s edge does not hold a frame to the face of the framing: use lumber, or let the panel box bear on the rough sill.'
      : lengthShortfall(screw, min_screw_length_in);
  if (blocked) {
    return {
      ...fixed,
      utilisation: NO_UTILISATION,
      failures: [blocked],
      sag_in: null,
      notes: [],
    };
  }

  const buck_lb =
    (((2 * (window.width_in + window.height_in) + 4 * piece_in) * member.thickness_in * member.depth_in) /
      1728) *
    statics.buck_density_pcf;
  const weight_lb = window.weight_lb + buck_lb;
  const eccentricity_in = gap_in + (context.projection_in * (window.weight_lb + buck_lb / 2)) / weight_lb;
  const suction_lb = Math.abs(context.outward_wind_psf) * unitArea_ft2(window.width_in, window.height_in);
  const capacity = screwCapacity({
    screw,
    member_gravity: gravity,
    framing_gravity: context.framing_gravity,
    side_in: Math.min(through_in, SIDE_COUNTED_IN),
    penetration_in: Math.min(screw.length_in - through_in - gap_in, context.framing_depth_in),
    thread_length_in: option.thread_length_in ?? ASSUMED.thread_length_in,
    head_diameter_in: option.head_diameter_in ?? ASSUMED.head_diameter_in,
    gap_in,
    wet_service: context.wet_service ?? false,
  });
  const forcesOf = (rows: typeof layout.rows) =>
    faceForces({
      weight_lb,
      eccentricity_in,
      suction_lb,
      rows,
      suction_screws: layout.total,
      contact_in: statics.face_contact_strip_in,
    });
  const frame = forcesOf(layout.rows);
  const sill = forcesOf([{ height_in: piece_in / 2, count: layout.per_sill }]);
  const joined = option.corners_joined ?? true;
  const counted = joined ? frame : sill;

  const withoutWind = { ...counted, wind_tension_lb: 0 };
  const gravityUse = faceScrewUse(withoutWind, capacity, DEAD);
  const wind = counted.wind_tension_lb / (capacity.tension_lb * DEAD_AND_WIND);
  const combined = faceScrewUse(counted, capacity, DEAD_AND_WIND);
  const sillAlone = faceScrewUse({ ...sill, wind_tension_lb: 0 }, capacity, DEAD);
  const wholeFrame = faceScrewUse({ ...frame, wind_tension_lb: 0 }, capacity, DEAD);

  const between = betweenScrewsUse(
    weight_lb,
    spacing_in,
    flat ? member.thickness_in : context.projection_in,
    piece_in,
    gravity,
    table,
  );

  return {
    ...fixed,
    utilisation: { gravity: gravityUse, wind, combined, bearing: null },
    failures: [
      ...faceFailures(gravityUse, wind, combined, joined, wholeFrame),
      ...(between > 1
        ? [
            `Between its screws the sill piece bends to ${percent(between)} of its strength under the setting blocks: close up the screws or set the blocks over them.`,
          ]
        : []),
    ],
    sag_in:
      (serviceability.creep_factor * counted.shear_lb) /
      screwStiffness_lb_per_in(screw, gap_in, serviceability.slip_lb_per_in_1_5),
    notes: [
      `The sill piece by itself would be used to ${percent(sillAlone)} by the weight, the whole frame to ${percent(wholeFrame)}. ` +
        (joined
          ? 'The verdict rests on the frame: sill, jambs and head must be screwed to each other and the jamb screws must be in the schedule.'
          : 'The corners are not joined, so the verdict rests on the sill piece.'),
      flat
        ? 'The lumber is taken laid flat against the wall.'
        : `The lumber is taken on edge, ripped to the projection, its ${member.thickness_in} in. edge against the wall; the screws go through ${context.projection_in} in. of it.`,
      `Between two screws the sill piece bends to ${percent(between)} of its strength under a setting block (along the grain).`,
      'Screw heads are taken as round heads of the given diameter; pull-through is from memory. Hardened structural screws have tested values in their evaluation reports, to be used instead.',
    ],
  };
}

function faceFailures(
  gravity: number,
  wind: number,
  combined: number,
  joined: boolean,
  frameGravity: number,
): string[] {
  if (gravity > 1) {
    return !joined && frameGravity <= 1
      ? [
          `The sill piece alone is used to ${percent(gravity)} by the weight: join sill, jambs and head at the corners so that the whole frame carries, or let the buck bear on the rough sill.`,
        ]
      : [
          `The weight uses the screws to ${percent(gravity)}: close up the screws, use thicker ones, or let the buck bear on the rough sill.`,
        ];
  }
  if (wind > 1) {
    return [
      `Suction uses the screws to ${percent(wind)}: close up the screws or drive longer threads into the framing.`,
    ];
  }
  return combined > 1
    ? [`Weight and suction together use the screws to ${percent(combined)}: close up the screws.`]
    : [];
}
