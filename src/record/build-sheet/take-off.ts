import type { RankedAssembly } from '../../advice/advice-schema.ts';
import { isWindowless } from '../../advice/windowless.ts';
import { inches } from '../../base/inches.ts';
import { fastenerLines } from './take-off-fasteners.ts';
import { counted, measured, perimeter_ft, type TakeOffJob, type TakeOffLine } from './take-off-line.ts';
import { openingLines } from './take-off-openings.ts';

/**
 * What a wall takes to build. Areas are those of the whole wall, openings not taken off: never too little of what
 * covers it. Quantities are for getting quotes; whoever orders measures again.
 *
 * @param job.wall_area_ft2  above 0
 */
export function takeOff(job: TakeOffJob): TakeOffLine[] {
  return [
    ...barrierLines(job),
    ...boardLines(job),
    ...claddingLines(job),
    ...openingLines(job),
    ...fastenerLines(job),
  ];
}

function barrierLines({ wall, wall_area_ft2, practice }: TakeOffJob): TakeOffLine[] {
  const isFluid = /fluid|liquid/i.test(wall.water_resistive_barrier);
  const sheets = /^two /i.test(wall.water_resistive_barrier) ? 2 : 1;
  return [
    counted({
      group: 'boards and barrier',
      item: wall.water_resistive_barrier,
      net: wall_area_ft2 * (isFluid ? 1 : sheets),
      unit: 'ft²',
      order_unit: isFluid ? 'ft² of coverage' : 'ft² of sheet',
      waste: isFluid ? practice.waste_percent.fluid : practice.waste_percent.sheets,
      how: `wall area${sheets === 2 && !isFluid ? ', two layers' : ''}`,
    }),
  ];
}

/** One line for each layer: joints are offset, so every layer is cut by itself. */
function boardLines({ wall, wall_area_ft2, practice }: TakeOffJob): TakeOffLine[] {
  const { id, material, board_thicknesses_in: boards } = wall.insulation;
  const isFibre = ['mineral-wool', 'wood-fibre'].includes(id);
  const size = isFibre ? practice.board_ft2.fibre : practice.board_ft2.foam;
  return boards.map((board_in, i) =>
    counted({
      group: 'boards and barrier',
      item: `${material}, ${inches(board_in)} in.${boards.length > 1 ? `, layer ${i + 1}` : ''}`,
      net: wall_area_ft2,
      unit: 'ft²',
      order_unit: isFibre ? 'boards 2 x 4 ft' : 'boards 4 x 8 ft',
      waste: i === 0 ? practice.waste_percent.boards : practice.waste_percent.offset_layer,
      per_piece: size,
      how: i === 0 ? 'wall area' : 'wall area; joints offset from the layer below',
    }),
  );
}

function claddingLines(job: TakeOffJob): TakeOffLine[] {
  return job.wall.layers.flatMap((layer): TakeOffLine[] => {
    const { wall_area_ft2, practice, wall } = job;
    const area = { group: 'cladding' as const, net: wall_area_ft2, unit: 'ft²', how: 'wall area' };
    switch (layer.role) {
      case 'drainage':
        return [
          counted({ ...area, item: layer.label, order_unit: 'ft²', waste: practice.waste_percent.mat }),
        ];
      case 'lath':
        return [
          counted({
            ...area,
            item: plain(layer.label),
            order_unit: 'sheets 27 x 96 in.',
            waste: practice.waste_percent.lath,
            per_piece: practice.lath_sheet_ft2,
          }),
        ];
      case 'furring': {
        const spacing_in = wall.fastening.stud_spacing_in;
        return [
          counted({
            group: 'cladding',
            item: layer.label,
            net: (wall_area_ft2 * 12) / spacing_in + perimeter_ft(wall),
            unit: 'ft',
            order_unit: 'pieces 8 ft',
            waste: practice.waste_percent.furring,
            per_piece: practice.furring_piece_ft,
            how: `a strip at every stud, ${inches(spacing_in)} in. apart${isWindowless(wall) ? '' : ', and one round each opening'}`,
          }),
          measured(
            'cladding',
            'insect screen at top and bottom of the space',
            'ft',
            'length of foot and head of the wall',
          ),
        ];
      }
      case 'finish':
        return finishLines(job, layer);
      default:
        return [];
    }
  });
}

function finishLines(
  { wall, wall_area_ft2, practice }: TakeOffJob,
  layer: RankedAssembly['layers'][number],
): TakeOffLine[] {
  const { waste_percent } = practice;
  const isPlaster =
    /plaster|one-coat/i.test(layer.label) || /stucco\b/i.test(wall.cladding.split(' on ')[0] ?? '');
  if (isPlaster && !/panel|veneer/i.test(layer.label)) {
    const coats = /three-coat/i.test(layer.label)
      ? Object.entries(practice.coats_in).map(([name, depth]) => ({
          name: `${name} coat`,
          depth_in: depth.value,
        }))
      : [{ name: layer.label, depth_in: layer.thickness_in }];
    return [
      ...coats.map(({ name, depth_in }) =>
        counted({
          group: 'cladding',
          item: `plaster, ${name}`,
          net: (wall_area_ft2 * depth_in) / 12,
          unit: 'ft³',
          order_unit: 'ft³ mixed',
          waste: waste_percent.plaster,
          how: `wall area by ${inches(depth_in)} in.`,
        }),
      ),
      measured('cladding', 'weep screed', 'ft', 'length of the foot of the wall; deep enough for the boards'),
      measured('cladding', 'outside corner beads', 'ft', 'height of each corner'),
      measured(
        'cladding',
        `control joints: at least ${Math.ceil(wall_area_ft2 / practice.control_joint_panel_ft2.value - 1e-6)} panels`,
        'ft',
        `panels of at most ${practice.control_joint_panel_ft2.value} ft²; draw the lines on the elevations first`,
      ),
    ];
  }
  const isPanel = /panel/i.test(layer.label);
  return [
    counted({
      group: 'cladding',
      item: layer.label,
      net: wall_area_ft2,
      unit: 'ft²',
      order_unit: isPanel ? 'panels 4 x 8 ft' : 'ft² laid',
      waste: waste_percent.cladding,
      ...(isPanel ? { per_piece: practice.panel_ft2 } : {}),
      how: isPanel ? 'wall area' : 'wall area; add the laps of the product',
    }),
    measured('cladding', 'corner and joint trim', 'ft', 'corners and joints of the layout'),
  ];
}

function plain(label: string): string {
  return label.replace(/ \(weight counted[^)]*\)/, '');
}
