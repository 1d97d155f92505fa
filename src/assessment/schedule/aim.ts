import type { FastenerData } from '../../calculators/fastening/fastening-tables.ts';
import type { ScheduleJob } from './schedule-job.ts';
import type { ScheduleStep } from './schedule-schema.ts';

/** Through more than this a screw can't be held square by eye (judgement). */
const JIG_ABOVE_IN = 2;

/**
 * How to hit a stud that nobody sees: how far away it is, how much room the point has, and what to do about it.
 *
 * Room: half the stud's face less the edge distance (wood 2.5 diameters without lead holes, from memory; steel 1/2
 * in., code page seen). Lean: the angle at which a fastener started on the line uses that room up.
 */
export function aim(
  head_to_stud_in: number,
  fastener: FastenerData,
  { context, practice, candidate }: ScheduleJob,
): NonNullable<ScheduleStep['aim']> {
  const { material } = context.brief.framing;
  const stud_face_in = practice.stud_face_in[material].value;
  const edge_distance_in =
    material === 'wood'
      ? context.tables.openings.wood.screws.min_edge_diameters * fastener.diameter_in
      : practice.steel_edge_distance_in.value;
  const room_each_side_in = Math.max(0, stud_face_in / 2 - edge_distance_in);
  const pilot_in = pilotOf(fastener, practice);
  const clearance_in = fastener.kind === 'lag-screw' ? fastener.diameter_in : null;
  const layers = candidate.build.boards_in.length;
  return {
    head_to_stud_in,
    stud_face_in,
    edge_distance_in,
    room_each_side_in,
    largest_lean_deg: (Math.atan(room_each_side_in / head_to_stud_in) * 180) / Math.PI,
    pilot_in,
    clearance_in,
    how: [
      'Find every stud before it is covered: snap its line on the barrier and prove it with a probe at top and bottom.',
      layers > 1
        ? `Each of the ${layers} board layers hides the line below: carry it up to marks above and below the boards and snap it again on every layer.`
        : 'The boards hide the line: carry it to marks above and below them and snap it again on their face.',
      ...(head_to_stud_in > JIG_ABOVE_IN
        ? [
            'Start on the line and drive through a jig: a block with a guide hole that holds the fastener square to the wall.',
          ]
        : []),
      ...holeWords(pilot_in, clearance_in),
      'One that spins has missed: take it out, close the hole in the barrier while it can still be reached, and set another on the line.',
    ],
  };
}

/** Hole for the threads, in.; null for nails and for screws into steel. */
function pilotOf(
  { kind, diameter_in, bearing_diameter_in }: FastenerData,
  practice: ScheduleJob['practice'],
): number | null {
  if (kind === 'lag-screw') return practice.lag_lead_share_of_shank.value * diameter_in;
  if (kind !== 'wood-screw' || bearing_diameter_in === null) return null;
  return practice.pilot_share_of_root.value * bearing_diameter_in;
}

/** A wood screw may be drilled for; a lag screw under a side load must be. */
function holeWords(pilot_in: number | null, clearance_in: number | null): string[] {
  if (pilot_in === null) return [];
  if (clearance_in === null) {
    return [
      `Where the wood splits or the screw wanders, drill a pilot of about ${pilot_in.toFixed(2)} in. through the jig.`,
    ];
  }
  return [
    `Drill for every lag screw, through the jig: ${clearance_in.toFixed(2)} in., as wide as the shank, through the strip; then a lead hole of about ${pilot_in.toFixed(2)} in. through board and sheathing into the stud, as deep as the point goes. Turn it in with a wrench, never hammer it. Undrilled it splits strip and stud; that thin lag screws may go without holds only where they are pulled, and these carry weight across as well.`,
  ];
}
