import type { Opening } from '../../advice/openings-schema.ts';
import { inches } from '../../base/inches.ts';
import { counted, measured, perimeter_ft, type TakeOffJob, type TakeOffLine } from './take-off-line.ts';

/** What windows and doors take: bucks, skin, pans, head flashing, beads, sealant. */
export function openingLines(job: TakeOffJob): TakeOffLine[] {
  const { wall, practice } = job;
  const { openings } = wall;
  if (openings.length === 0) return [];
  const { waste_percent } = practice;
  const sum = (of: (opening: Opening) => number) =>
    openings.reduce((total, opening) => total + opening.count * of(opening), 0);
  const jambs_ft = sum((one) => (2 * one.height_in) / 12);
  const round_ft = perimeter_ft(wall);
  // 1/4 in. is the least that a joint is made, whatever room the frame leaves.
  const joint_in2 = Math.max(
    ...openings.map(({ room }) => room.joint_width_in * Math.max(0.25, room.joint_depth_in)),
  );
  return [
    ...bucks(job),
    counted({
      group: 'windows',
      item: 'liquid-applied flashing over bucks and back onto the barrier',
      net: sum((one) => skin_ft2(one, practice.skin_onto_barrier_in.value)),
      unit: 'ft²',
      order_unit: 'ft² of coverage',
      waste: waste_percent.fluid,
      how: `perimeter by the buck's depth and ${inches(practice.skin_onto_barrier_in.value)} in. of barrier`,
    }),
    counted({
      group: 'windows',
      item: 'sill pan with back dam',
      net: sum((one) => (one.width_in + 2 * practice.pan_upturn_in.value) / 12),
      unit: 'ft',
      order_unit: 'ft',
      waste: waste_percent.trim,
      how: `widths and ${inches(practice.pan_upturn_in.value)} in. up each jamb`,
    }),
    counted({
      group: 'windows',
      item: 'head flashing with end dams',
      net: sum((one) => (one.width_in + 2 * practice.head_flashing_past_in.value) / 12),
      unit: 'ft',
      order_unit: 'ft',
      waste: waste_percent.trim,
      how: `widths and ${inches(practice.head_flashing_past_in.value)} in. past each side`,
    }),
    counted({
      group: 'windows',
      item: 'casing bead or trim round the openings',
      net: round_ft,
      unit: 'ft',
      order_unit: 'pieces 10 ft',
      waste: waste_percent.trim,
      per_piece: practice.bead_piece_ft,
      how: 'perimeter of all openings',
    }),
    counted({
      group: 'windows',
      item: 'backer rod, jambs outside and all four sides inside',
      net: jambs_ft + round_ft,
      unit: 'ft',
      order_unit: 'ft',
      waste: waste_percent.trim,
      how: 'heights twice outside, perimeter inside',
    }),
    counted({
      group: 'windows',
      item: 'sealant, one family throughout',
      net: (jambs_ft + round_ft) * 12 * joint_in2,
      unit: 'in³',
      order_unit: 'cartridges 10.1 fl oz',
      waste: waste_percent.sealant,
      per_piece: practice.cartridge_in3,
      how: `length of the backer rod by ${joint_in2.toFixed(3)} in² of joint`,
    }),
    measured(
      'windows',
      'setting blocks, shims, flange screws',
      'sets',
      'two blocks for each unit; screws as its maker says',
    ),
  ];
}

/** How far a buck covers: its depth outside the sheathing, and what laps onto the barrier. */
function skin_ft2({ width_in, height_in, flange_plane }: Opening, onto_barrier_in: number): number {
  const depth_in = Math.max(0, flange_plane.outside_framing_in) + onto_barrier_in;
  return (2 * (width_in + height_in) * depth_in) / 144;
}

/** Bucks of wood by kind; what an engineer must design is only named. */
function bucks({ wall, practice }: TakeOffJob): TakeOffLine[] {
  const kinds = [...new Map(wall.openings.map(({ carried_by }) => [carried_by.id, carried_by])).values()];
  return kinds.flatMap((kind): TakeOffLine[] => {
    const own = wall.openings.filter(({ carried_by }) => carried_by.id === kind.id);
    const round_ft = own.reduce(
      (sum, { count, rough_opening_needed_in: rough }) =>
        sum + (count * 2 * (rough.width_in + rough.height_in)) / 12,
      0,
    );
    const count = own.reduce((sum, one) => sum + one.count, 0);
    if (kind.support === 'flange-over-insulation') return [];
    if (kind.support === 'steel-bracket') {
      return [
        measured('windows', `${kind.label}, for ${count} openings`, 'sets', 'by the engineer’s drawing'),
      ];
    }
    const isPanel = /plywood/i.test(kind.label);
    const layers = /two .*layers/i.test(kind.label) ? 2 : 1;
    // A record from before the pieces were measured has only the reach of its buck.
    const depth_in = kind.depth_in ?? wall.buck.projection_in + framingDepth_in(wall);
    return [
      isPanel
        ? counted({
            group: 'windows',
            item: `buck: ${kind.label}`,
            net: (round_ft * depth_in * layers) / 12,
            unit: 'ft²',
            order_unit: 'sheets 4 x 8 ft',
            waste: practice.waste_percent.lumber,
            per_piece: practice.plywood_sheet_ft2,
            how: `perimeter of ${count} rough openings by ${inches(depth_in)} in.`,
          })
        : counted({
            group: 'windows',
            item: `buck: ${kind.label}`,
            net: round_ft,
            unit: 'ft',
            order_unit: 'ft',
            waste: practice.waste_percent.lumber,
            how: `perimeter of ${count} rough openings`,
          }),
    ];
  });
}

function framingDepth_in({ layers }: TakeOffJob['wall']): number {
  return layers
    .filter(({ role }) => role === 'framing')
    .reduce((sum, { thickness_in }) => sum + thickness_in, 0);
}
