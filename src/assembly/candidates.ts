import type { Brief } from '../brief/brief.ts';
import { type SeatedBuck, seatedBucks } from './bucks-for.ts';
import type { Catalogue } from './catalogue.ts';
import type { Barrier, Buck, Cladding, Retarder, SheathingEntry } from './catalogue-schema.ts';
import { onDeeperFurring } from './deeper-furring.ts';
import type { FlangeSeat } from './flange-seat.ts';
import type { InsulationBuild } from './insulation-builds.ts';

/** What is taken for the inside of the wall: something to build, or what is there. */
export type RetarderChoice = {
  /** Null when an existing wall's retarder is not known. */
  readonly retarder: Retarder | null;
  readonly is_existing: boolean;
};

/** A cladding over an insulation build: the same object in every wall that has both. */
export type Face = {
  readonly cladding: Cladding;
  readonly build: InsulationBuild;
  readonly sheathing: SheathingEntry;
};

/** One whole wall, before anything has been calculated or judged. */
export type Candidate = Face & {
  readonly id: string;
  readonly face: Face;
  readonly inside: RetarderChoice;
  readonly barrier: Barrier;
  readonly buck: Buck;
  /** The plane in which the buck holds the window flange. */
  readonly seat: FlangeSeat;
};

/** What calculators have found of the job before a wall is drawn. */
export type WorkedOut = {
  /** Ids of the claddings that the wind asks to be hung on deeper furring; see `onDeeperFurring`. */
  readonly deeper: readonly string[];
  /** The windows by area, and by the weight that they are judged by: a large one is offered bucks of its own. */
  readonly units: readonly { readonly area_ft2: number; readonly judged_weight_lb: number }[];
};

/**
 * Draws up every wall that can be put together from the catalogue for this brief.
 *
 * Only physical fits are decided here (a cladding listed for that framing and insulation, a buck made for that
 * projection, or the one that reaches furthest); whether a wall is allowed, dry, strong or affordable is for the
 * calculators and the rules.
 */
export function drawUpCandidates(
  brief: Brief,
  catalogue: Catalogue,
  { deeper, units }: WorkedOut,
): Candidate[] {
  const sheathing = catalogue.sheathings.find((s) => s.id === brief.sheathing);
  if (!sheathing) throw new Error(`no catalogue entry for sheathing ${brief.sheathing}`);
  const insides = retarderChoices(brief, catalogue);
  const offered = offeredBucks(units, catalogue);
  const candidates: Candidate[] = [];
  for (const usual of catalogue.claddings) {
    const cladding = deeper.includes(usual.id) ? onDeeperFurring(usual, catalogue) : usual;
    if (!cladding.works_with.framing.includes(brief.framing.material)) continue;
    const barriers = catalogue.barriers.filter((barrier) => barrier.behind.includes(cladding.attachment));
    for (const build of catalogue.builds) {
      if (!fits(cladding, build)) continue;
      const face: Face = { cladding, build, sheathing };
      const bucks = seatedBucks(cladding, build, sheathing, offered, brief.flange_plane);
      for (const inside of insides) {
        for (const barrier of barriers) {
          for (const seated of bucks) {
            candidates.push(new DrawnWall(face, inside, barrier, seated));
          }
        }
      }
    }
  }
  return candidates;
}

/** Bucks of the catalogue that at least one window of the job is large enough for. */
export function offeredBucks(units: WorkedOut['units'], { bucks }: Catalogue): Buck[] {
  return bucks.filter(
    ({ for_units_from: from }) =>
      from === undefined ||
      units.some(
        ({ area_ft2, judged_weight_lb }) => area_ft2 >= from.area_ft2 || judged_weight_lb >= from.weight_lb,
      ),
  );
}

/** Does the cladding system take this insulation build at all? */
export function fits(cladding: Cladding, build: InsulationBuild): boolean {
  return (
    cladding.works_with.insulations.includes(build.insulation.id) &&
    build.boards_in.length <= cladding.works_with.max_layers &&
    build.thickness_in <= cladding.works_with.max_insulation_in
  );
}

/**
 * The interior linings that come into question. New work: what the user fixed, else every class. Retrofit: what is
 * there (known or not), and a retarder primer where the lining is more open than that.
 */
export function retarderChoices(brief: Brief, catalogue: Catalogue): RetarderChoice[] {
  const ofClass = (wanted: Retarder['class']) => catalogue.retarders.filter((r) => r.class === wanted);
  const fixed = brief.interior_vapour_retarder;
  if (brief.project === 'new') {
    const choices =
      fixed === null ? catalogue.retarders.filter((r) => r.is_offered_in_new_work) : ofClass(fixed);
    return choices.map((retarder) => ({ retarder, is_existing: false }));
  }
  const existing: RetarderChoice = {
    retarder: fixed === null ? null : builtIn(ofClass(fixed)),
    is_existing: true,
  };
  if (fixed !== 'none' && fixed !== 'class-iii') return [existing];
  const added = catalogue.retarders.filter((r) => r.can_be_added_in_retrofit && r.class === 'class-ii');
  return [existing, ...added.map((retarder) => ({ retarder, is_existing: false }))];
}

/** Of the retarders of a class, the one that is found in old walls: built in, not rolled on since. */
function builtIn(ofClass: readonly Retarder[]): Retarder | null {
  const [first = null] = [...ofClass].sort(
    (a, b) =>
      Number(a.can_be_added_in_retrofit) - Number(b.can_be_added_in_retrofit) || (a.id < b.id ? -1 : 1),
  );
  return first;
}

/** A wall as drawn up. Most walls are never named, so that the id is put together when it is asked for. */
class DrawnWall implements Candidate {
  readonly face: Face;
  readonly inside: RetarderChoice;
  readonly barrier: Barrier;
  readonly buck: Buck;
  readonly seat: FlangeSeat;
  readonly cladding: Cladding;
  readonly build: InsulationBuild;
  readonly sheathing: SheathingEntry;
  #id: string | undefined;

  constructor(face: Face, inside: RetarderChoice, barrier: Barrier, { buck, seat }: SeatedBuck) {
    this.face = face;
    this.inside = inside;
    this.barrier = barrier;
    this.buck = buck;
    this.seat = seat;
    this.cladding = face.cladding;
    this.build = face.build;
    this.sheathing = face.sheathing;
  }

  get id(): string {
    this.#id ??= candidateId(this);
    return this.#id;
  }
}

function candidateId({ cladding, build, inside, barrier, buck }: Omit<Candidate, 'id'>): string {
  const boards = build.boards_in.join('+');
  return [
    cladding.id,
    `${build.insulation.id}-${boards}`,
    inside.retarder?.id ?? 'lining-unknown',
    barrier.id,
    buck.id,
  ].join('/');
}
