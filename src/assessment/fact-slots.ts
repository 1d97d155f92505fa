import type { Candidate } from '../assembly/candidates.ts';
import { mapClasses, type WallSet, type WallSlot } from '../assembly/wall-set.ts';
import type { AnswerContext } from './answer-context.ts';
import type { Works } from './assess.ts';
import {
  barrierFacts,
  buckFacts,
  buildFacts,
  claddingFacts,
  costFacts,
  type FactColumns,
  type FactSheet,
  faceFacts,
  insideFacts,
  type LotLine,
  outerFacts,
  siteFacts,
  vapourFacts,
  waterFacts,
} from './fact-sheet.ts';
import { outwardPermeance } from './moisture-part.ts';
import { type Held, shelfOf } from './shelf.ts';

/** Everything that the rules may read about the walls of a set: for each slot, the facts of each of its parts once. */
export type FactSlots = Readonly<Record<SheetSlot, Held<readonly FactSheet[]>>> & {
  readonly water: Held<FactColumns>;
  readonly wall: Held<FactColumns>;
};

type SheetSlot = Exclude<WallSlot, 'water' | 'wall'>;

/** Slots in which nothing changed since an earlier answer are the same objects as then. */
export function factSlots(walls: WallSet, works: Works, context: AnswerContext): FactSlots {
  const shelf = shelfOf(context.catalogue);
  const { fire_separation_ft, project } = context.brief;
  const line: LotLine = { distance_ft: fire_separation_ft, is_retrofit: project === 'retrofit' };
  const {
    onFurring,
    fastening,
    fasteners,
    thermal,
    energy,
    dewPoint,
    condensate,
    vapour,
    buck,
    cost,
    windows,
  } = works;
  const slot = (
    name: SheetSlot,
    rests_on: readonly unknown[],
    factsOf: (wall: Candidate) => FactSheet,
  ): Held<readonly FactSheet[]> =>
    shelf.hold(`facts ${name}`, [walls, ...rests_on], () => mapClasses(walls, name, factsOf));
  return {
    site: slot('site', [context], () => siteFacts(context, windows.work)),
    cladding: slot('cladding', [onFurring], ({ cladding }) =>
      claddingFacts(cladding, onFurring.work(cladding)),
    ),
    build: slot('build', [], (wall) => buildFacts(wall.build, wall.sheathing)),
    inside: slot('inside', [], (wall) => insideFacts(wall.inside)),
    barrier: slot('barrier', [], (wall) => barrierFacts(wall.barrier)),
    buck: slot('buck', [buck], (wall) => buckFacts(wall.buck, buck.work(wall))),
    face: slot('face', [thermal, energy, dewPoint, fastening, fasteners], ({ face }) =>
      faceFacts(face, {
        thermal: thermal.work(face),
        energy: energy.work(face),
        dewPoint: dewPoint.work(face),
        fastening: fastening.work(face),
        fasteners: fasteners.work(face),
      }),
    ),
    vapour: slot('vapour', [vapour], (wall) =>
      vapourFacts(vapour.work(wall.build, wall.inside, wall.cladding)),
    ),
    outer: slot('outer', [line.distance_ft, line.is_retrofit], (wall) =>
      outerFacts(wall.face, wall.barrier, outwardPermeance(wall.face, wall.barrier), line),
    ),
    water: shelf.hold('facts water', [walls, condensate], () => waterFacts(condensate.work.ofAll(walls))),
    wall: shelf.hold('facts wall', [walls, cost], () => costFacts(cost.work.ofAll(walls))),
  };
}
