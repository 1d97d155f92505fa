import { inches } from '../base/inches.ts';
import { loadBuckStock } from './buck-stock.ts';
import type { Buck, SheathingEntry } from './catalogue-schema.ts';
import { projection_in } from './flange-projection.ts';
import type { FlangePlace } from './flange-seat.ts';
import type { InsulationBuild } from './insulation-builds.ts';

/** What decides the size of a buck's pieces. */
export type BuckPlace = {
  readonly buck: Buck;
  readonly build: InsulationBuild;
  readonly sheathing: SheathingEntry;
  readonly place: FlangePlace;
};

/** A buck as it is built. */
export type BuiltBuck = {
  /** What it is called: its pieces by what is bought and what becomes of it. */
  readonly label: string;
  /** Null where it has no pieces of wood: flanges on the board, brackets. */
  readonly piece: {
    /** Across the wall, in. */
    readonly depth_in: number;
    /** Its other side, in. */
    readonly thickness_in: number;
    /** Nothing sold is as deep: it is put together of several. */
    readonly is_built_up: boolean;
  } | null;
};

const SAME_IN = 1e-6;

/**
 * The real pieces of a buck in one wall. One that lines the opening reaches from the inner edge of the rough sill to the
 * plane of the flange, so its pieces are as deep as the studs and its reach together; one on the face of the wall is as
 * deep as its reach. Each is named by the smallest size sold that it can be cut from.
 */
export function builtBuck({ buck, build, sheathing, place }: BuckPlace, framing_depth_in: number): BuiltBuck {
  const { pieces } = buck;
  if (!pieces) return { label: buck.label, piece: null };
  const reach_in = projection_in(buck, build, sheathing, place);
  const depth_in = buck.support === 'bears-on-sill' ? framing_depth_in + reach_in : reach_in;
  const stock = loadBuckStock().find(({ id }) => id === pieces.stock);
  if (!stock) throw new Error(`no stock ${pieces.stock} for the buck ${buck.id}`);
  const exact = stock.sizes.find(({ size_in }) => Math.abs(size_in - depth_in) < SAME_IN);
  // What lies flat is not planed down: it is taken as thick as needed, or packed out.
  const wider = stock.across === 'width' ? stock.sizes.find(({ size_in }) => size_in > depth_in) : undefined;
  const words = exact
    ? exact.name
    : wider
      ? `${wider.name} ripped to ${inches(depth_in)} in.`
      : `${stock.label} built up to ${inches(depth_in)} in.`;
  return {
    label: pieces.label.replace('{pieces}', words),
    piece: { depth_in, thickness_in: stock.other_in, is_built_up: !exact && !wider },
  };
}
