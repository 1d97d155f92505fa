import {
  finestPartition,
  type Joint,
  onePartition,
  Partitions,
  partitionBy,
  refine,
} from '../base/partitions.ts';
import type { Brief } from '../brief/brief.ts';
import { type Candidate, drawUpCandidates, offeredBucks, type WorkedOut } from './candidates.ts';
import type { Catalogue } from './catalogue.ts';
import { finishPermeance } from './finish-permeance.ts';

/** What calculated parts and facts are shared by, from the whole job to the single wall. */
export const WALL_SLOTS = [
  'site',
  'cladding',
  'build',
  'inside',
  'barrier',
  'buck',
  'face',
  'outer',
  'vapour',
  'water',
  'wall',
] as const;
export type WallSlot = (typeof WALL_SLOTS)[number];

/** The walls of a job with how they share their parts; the same object for every job that draws up the same walls. */
export type WallSet = {
  readonly candidates: readonly Candidate[];
  /** One partition for each of `WALL_SLOTS`, in that order. */
  readonly shape: Partitions;
};

/**
 * Walls of the sets that are kept for the next job; twenty thousand take about four megabytes. Enough for fourteen of the
 * largest sets, or for those of a standing wall over each thing that may be behind its lining, under several sheathings.
 */
const MOST_WALLS_KEPT = 300_000;
const kept = new WeakMap<Catalogue, Map<string, WallSet>>();

/** {@link drawUpCandidates}, remembered: only these answers, which bucks are offered and which claddings take deeper furring decide. */
export function wallSet(brief: Brief, catalogue: Catalogue, worked: WorkedOut): WallSet {
  const { sheathing, framing, project, interior_vapour_retarder } = brief;
  const bucks = offeredBucks(worked.units, catalogue).map(({ id }) => id);
  const key = [
    sheathing,
    framing.material,
    project,
    interior_vapour_retarder,
    brief.flange_plane,
    ...bucks,
    ...worked.deeper,
  ].join(' ');
  const sets = kept.get(catalogue) ?? new Map<string, WallSet>();
  kept.set(catalogue, sets);
  const set = sets.get(key) ?? sharedOut(drawUpCandidates(brief, catalogue, worked));
  // Put last again, so that the one dropped is the one not asked for the longest.
  sets.delete(key);
  sets.set(key, set);
  let walls = [...sets.values()].reduce((sum, { candidates }) => sum + candidates.length, 0);
  for (const [oldest, { candidates }] of sets) {
    if (walls <= MOST_WALLS_KEPT || oldest === key) break;
    sets.delete(oldest);
    walls -= candidates.length;
  }
  return set;
}

/** Walls told apart by some slots only. */
export function partitionOf({ shape }: WallSet, slots: readonly WallSlot[]): Joint {
  return shape.joint([...new Set(slots.map((slot) => WALL_SLOTS.indexOf(slot)))].sort((a, b) => a - b));
}

/** Something worked out for one wall of each class of a slot. */
export function mapClasses<R>(walls: WallSet, slot: WallSlot, work: (wall: Candidate) => R): R[] {
  const first = walls.shape.parts[WALL_SLOTS.indexOf(slot)]?.first ?? new Uint32Array(0);
  const worked: R[] = [];
  for (const place of first) worked.push(work(wallAt(walls, place)));
  return worked;
}

/** What was worked out by classes, for the wall at a place. */
export function classAt<R>(ofClasses: readonly R[], { shape }: WallSet, slot: WallSlot, place: number): R {
  const found = ofClasses[shape.parts[WALL_SLOTS.indexOf(slot)]?.at[place] ?? -1];
  if (found === undefined) throw new Error(`nothing was worked out for wall ${place}`);
  return found;
}

export function wallAt({ candidates }: WallSet, place: number): Candidate {
  const found = candidates[place];
  if (!found) throw new Error(`there is no wall ${place}`);
  return found;
}

function sharedOut(candidates: readonly Candidate[]): WallSet {
  const cladding = partitionBy(candidates, (wall) => wall.cladding);
  const build = partitionBy(candidates, (wall) => wall.build);
  const inside = partitionBy(candidates, (wall) => wall.inside);
  const barrier = partitionBy(candidates, (wall) => wall.barrier);
  const face = partitionBy(candidates, (wall) => wall.face);
  const parts = {
    site: onePartition(candidates.length),
    cladding,
    build,
    inside,
    barrier,
    // A buck carries its windows in one plane or another; what is in front of that plane is nothing to it.
    buck: refine(
      refine(
        build,
        partitionBy(candidates, (wall) => wall.buck),
      ),
      partitionBy(candidates, (wall) => wall.seat.place),
    ),
    face,
    outer: refine(face, barrier),
    // The vapour table knows a cladding as vented or not, no more.
    vapour: refine(
      refine(
        build,
        partitionBy(candidates, (wall) => wall.cladding.drainage.counts_as_vented_cladding),
      ),
      inside,
    ),
    // Claddings behind which air moves, or of one permeance, keep the same water behind them.
    water: refine(
      refine(
        refine(
          build,
          partitionBy(candidates, (wall) => finishPermeance(wall.cladding)),
        ),
        barrier,
      ),
      inside,
    ),
    wall: finestPartition(candidates.length),
  };
  return {
    candidates,
    shape: new Partitions(
      candidates.length,
      WALL_SLOTS.map((slot) => parts[slot]),
    ),
  };
}
