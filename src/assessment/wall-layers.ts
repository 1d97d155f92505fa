import { barrierLabel } from '../assembly/barrier-label.ts';
import type { Candidate, Face } from '../assembly/candidates.ts';
import type { Barrier, Cladding, Insulation, Sourced } from '../assembly/catalogue-schema.ts';
import { permFromPermeability } from '../calculators/moisture/permeance.ts';

/** 1/2 in. gypsum board (published tables, two sources). */
export const LINING = { label: 'gypsum board, 1/2 in.', thickness_in: 0.5, r: 0.45, bare_perm: 50 } as const;
/** Mineral-fibre cavity fill, perm·in (ASHRAE Fundamentals ch. 26, from memory). */
export const CAVITY_PERMEABILITY_PERM_IN = 110;

export type WallLayer = {
  readonly label: string;
  readonly role:
    | 'lining'
    | 'framing'
    | 'sheathing'
    | 'barrier'
    | 'insulation'
    | 'drainage'
    | 'furring'
    | 'lath'
    | 'finish';
  readonly thickness_in: number;
  /** What is counted, h·ft²·°F/Btu. */
  readonly r: number;
  readonly provenance: string;
};

/** Permeance of the whole exterior insulation: facers where it has them, else the board by its thickness, perm. */
export function insulationPermeance(insulation: Insulation, thickness_in: number, boards: number): number {
  if (insulation.facer_permeance_perm) return insulation.facer_permeance_perm.value / boards;
  const permeability = insulation.permeability_perm_in;
  if (!permeability)
    throw new Error(`${insulation.id}: the catalogue gives neither facer nor board permeance`);
  return permFromPermeability(permeability.value, thickness_in);
}

/** All layers of a wall, inside to outside, with the resistance that is counted for each. */
export function wallLayers(
  candidate: Candidate,
  framing: { depth_in: number; cavity_r: number; label: string },
): WallLayer[] {
  const { build, barrier, sheathing, cladding, inside } = candidate;
  const lining = inside.retarder
    ? `${LINING.label}, ${inside.retarder.label}`
    : `${LINING.label}, retarder not known`;
  return [
    {
      label: lining,
      role: 'lining',
      thickness_in: LINING.thickness_in,
      r: LINING.r,
      provenance: 'two-sources',
    },
    {
      label: framing.label,
      role: 'framing',
      thickness_in: framing.depth_in,
      r: framing.cavity_r,
      provenance: 'given',
    },
    ...(sheathing.thickness_in > 0
      ? [
          {
            label: sheathing.label,
            role: 'sheathing' as const,
            thickness_in: sheathing.thickness_in,
            r: sheathing.r.value,
            provenance: sheathing.r.provenance,
          },
        ]
      : []),
    {
      label: barrierLabel(barrier, sheathing),
      role: 'barrier',
      thickness_in: barrier.thickness_in,
      r: 0,
      provenance: barrier.permeance_perm.provenance,
    },
    ...build.boards_in.map((board_in, i) => ({
      label: boardLabel(build.insulation.label, build.boards_in.length, i),
      role: 'insulation' as const,
      thickness_in: board_in,
      r: board_in * build.insulation.r_per_in.value,
      provenance: build.insulation.r_per_in.provenance,
    })),
    ...cladding.layers.map((layer) => ({
      label: layer.label,
      role: layer.role,
      thickness_in: layer.thickness_in,
      r: countedR(cladding, layer.r),
      provenance: layer.r.provenance,
    })),
  ];
}

/** Outside a drained or ventilated space nothing is counted; a finish straight on the board counts. */
export function countedR({ drainage }: Cladding, r: Sourced): number {
  return drainage.kind === 'mat' || drainage.kind === 'furring-gap' ? 0 : r.value;
}

function boardLabel(material: string, boards: number, index: number): string {
  if (boards === 1) return material;
  const place =
    index === 0
      ? 'inner layer'
      : index === boards - 1
        ? 'outer layer, joints offset'
        : 'middle layer, joints offset';
  return `${material}, ${place}`;
}

/** What is added outside the sheathing, in. */
export function addedThickness({ cladding, build }: Face, barrier: Barrier): number {
  const outer = cladding.layers.reduce((sum, layer) => sum + layer.thickness_in, 0);
  return barrier.thickness_in + build.thickness_in + outer;
}
