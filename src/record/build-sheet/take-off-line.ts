import type { RankedAssembly } from '../../advice/advice-schema.ts';
import type { Sourced } from '../../assembly/catalogue-schema.ts';
import type { SitePractice } from './site-practice.ts';

/** One thing to buy. */
export type TakeOffLine = {
  readonly group: 'boards and barrier' | 'cladding' | 'windows' | 'fasteners';
  readonly item: string;
  /** Without waste; null where it has to be measured on site. */
  readonly net: number | null;
  readonly unit: string;
  readonly waste_percent: number;
  /** With waste, in whole pieces as they are sold; null where it has to be measured. */
  readonly order: number | null;
  readonly order_unit: string;
  readonly how: string;
  readonly provenance: string;
};

export type TakeOffJob = {
  readonly wall: RankedAssembly;
  /** Openings not taken off. */
  readonly wall_area_ft2: number;
  readonly practice: SitePractice;
};

/** With waste, rounded up to whole pieces; binary noise doesn't buy one more. */
export function toOrder(net: number, waste_percent: number, per_piece = 1): number {
  return Math.max(0, Math.ceil((net * (100 + waste_percent)) / 100 / per_piece - 1e-6));
}

/** A line whose net quantity is known. */
export function counted(
  line: Pick<TakeOffLine, 'group' | 'item' | 'unit' | 'order_unit' | 'how'> & {
    readonly net: number;
    readonly waste: Sourced;
    readonly per_piece?: Sourced;
  },
): TakeOffLine {
  const { waste, per_piece, net, ...rest } = line;
  return {
    ...rest,
    net: Number(net.toFixed(2)),
    waste_percent: waste.value,
    order: toOrder(net, waste.value, per_piece?.value ?? 1),
    provenance: waste.provenance,
  };
}

/** A line that only the site can tell. */
export function measured(group: TakeOffLine['group'], item: string, unit: string, how: string): TakeOffLine {
  return {
    group,
    item,
    net: null,
    unit,
    waste_percent: 0,
    order: null,
    order_unit: unit,
    how,
    provenance: 'common-practice',
  };
}

/** Round all openings, ft. */
export function perimeter_ft({ openings }: RankedAssembly): number {
  return openings.reduce((sum, one) => sum + (one.count * 2 * (one.width_in + one.height_in)) / 12, 0);
}
