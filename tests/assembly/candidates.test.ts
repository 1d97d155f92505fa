import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type Candidate,
  drawUpCandidates,
  offeredBucks,
  type WorkedOut,
} from '../../src/assembly/candidates.ts';
import { type Catalogue, loadCatalogue } from '../../src/assembly/catalogue.ts';
import type { Brief } from '../../src/brief/brief.ts';
import { resolveBrief } from '../../src/brief/resolve-brief.ts';
import { FRAMING_MATERIALS, PROJECT_KINDS, RETARDERS, SHEATHINGS } from '../../src/brief/scenario.ts';

const catalogue = loadCatalogue();
const usual = resolveBrief({ schema: 'cladwright-scenario/1', place: { climate_zone: '5A' } }).brief;
const retrofit = (retarder: Brief['interior_vapour_retarder']): Brief => ({
  ...usual,
  project: 'retrofit',
  interior_vapour_retarder: retarder,
});

/** Only these answers decide what is put together. */
const briefs: fc.Arbitrary<Brief> = fc
  .record({
    project: fc.constantFrom(...PROJECT_KINDS),
    material: fc.constantFrom(...FRAMING_MATERIALS),
    sheathing: fc.constantFrom(...SHEATHINGS),
    retarder: fc.option(fc.constantFrom(...RETARDERS)),
  })
  .map(({ project, material, sheathing, retarder }) => ({
    ...usual,
    project,
    sheathing,
    framing: { ...usual.framing, material },
    interior_vapour_retarder: retarder,
  }));

const drawn = (brief: Brief, from = catalogue) => drawUpCandidates(brief, from, { deeper: [], units: [] });

const ids = (walls: readonly Candidate[]) => walls.map(({ id }) => id);

/**
 * A buck in the opening starts at the studs, one on the face at the sheathing; the flange sits on the insulation, or on
 * the furring over it, which a flange without a buck can't.
 */
function reaches(buck: Candidate['buck'], { build, sheathing, seat }: Candidate): boolean {
  if (buck.support === 'flange-over-insulation' && seat.place.at === 'furring-face') return false;
  const out_in =
    build.thickness_in +
    seat.place.beyond_insulation_in +
    (buck.support === 'bears-on-sill' ? sheathing.thickness_in : 0);
  return buck.min_projection_in <= out_in && out_in <= buck.max_projection_in;
}

/** What a wall must be, read from the catalogue's words, not from the code that draws it up. */
function misfit(wall: Candidate, brief: Brief): string | null {
  const { cladding, build, buck, barrier, sheathing } = wall;
  if (!cladding.works_with.framing.includes(brief.framing.material)) return 'framing';
  if (!cladding.works_with.insulations.includes(build.insulation.id)) return 'insulation';
  if (build.boards_in.length > cladding.works_with.max_layers) return 'layers';
  if (build.thickness_in > cladding.works_with.max_insulation_in) return 'thickness';
  // Where no buck reaches so far out, the longest stands in, for the rules to speak against.
  const canReach = catalogue.bucks.some((one) => reaches(one, wall));
  if (canReach && !reaches(buck, wall)) return 'buck';
  if (!canReach && catalogue.bucks.some((one) => one.max_projection_in > buck.max_projection_in))
    return 'stand-in buck';
  if (!barrier.behind.includes(cladding.attachment)) return 'barrier';
  if (sheathing.id !== brief.sheathing) return 'sheathing';
  return null;
}

describe('the walls that are drawn up', () => {
  it('are thousands for an ordinary new wall, and hundreds for one that stands', () => {
    expect(drawn(usual, catalogue).length).toBeGreaterThan(3000);
    expect(drawn(retrofit(null), catalogue).length).toBeGreaterThan(500);
  });

  it('fit together, whatever the brief, and each has an id of its own', () => {
    fc.assert(
      fc.property(briefs, (brief) => {
        const walls = drawn(brief, catalogue);
        expect(walls.length).toBeGreaterThan(0);
        expect(walls.flatMap((wall) => misfit(wall, brief) ?? [])).toEqual([]);
        expect(new Set(ids(walls)).size).toBe(walls.length);
      }),
      { numRuns: 15 },
    );
  });

  it('are the same every time, and the same set whatever the order of the catalogue', () => {
    const backwards: Catalogue = {
      ...catalogue,
      claddings: [...catalogue.claddings].reverse(),
      builds: [...catalogue.builds].reverse(),
      retarders: [...catalogue.retarders].reverse(),
      barriers: [...catalogue.barriers].reverse(),
      bucks: [...catalogue.bucks].reverse(),
    };
    for (const brief of [usual, ...RETARDERS.map(retrofit)]) {
      const walls = ids(drawn(brief, catalogue));
      expect(ids(drawn(brief, catalogue))).toEqual(walls);
      expect(ids(drawn(brief, backwards)).sort()).toEqual(walls.sort());
    }
  });

  it('leave no cladding, insulation, barrier or buck of the catalogue out of an ordinary new wall', () => {
    const walls = drawn(usual, catalogue);
    const all = (list: readonly { id: string }[]) => list.map(({ id }) => id).sort();
    const used = (idOf: (wall: Candidate) => string) => [...new Set(walls.map(idOf))].sort();
    expect(used((w) => w.cladding.id)).toEqual(all(catalogue.claddings));
    expect(used((w) => w.build.insulation.id)).toEqual(all(catalogue.insulations));
    expect(used((w) => w.barrier.id)).toEqual(all(catalogue.barriers));
    expect(used((w) => w.buck.id)).toEqual(
      all(catalogue.bucks.filter((b) => b.for_units_from === undefined)),
    );
  });
});

describe('the bucks of a job', () => {
  const bucksFor = (...units: WorkedOut['units']) => offeredBucks(units, catalogue).map(({ id }) => id);
  const large = catalogue.bucks.filter((b) => b.for_units_from !== undefined).map(({ id }) => id);

  it('are those for large units too where one is, by area or by the weight that it is judged by', () => {
    expect(large.length).toBeGreaterThan(0);
    const small = { area_ft2: 19.9, judged_weight_lb: 149 };
    expect(bucksFor(small)).not.toEqual(expect.arrayContaining(large));
    expect(bucksFor(small, { ...small, area_ft2: 20 })).toEqual(expect.arrayContaining(large));
    expect(bucksFor(small, { ...small, judged_weight_lb: 150 })).toEqual(expect.arrayContaining(large));
  });
});

describe('the inside of a new wall', () => {
  it('is what the user fixed, in every make of that class', () => {
    for (const fixed of RETARDERS) {
      const walls = drawn({ ...usual, interior_vapour_retarder: fixed }, catalogue);
      expect(new Set(walls.map((w) => w.inside.retarder?.class))).toEqual(new Set([fixed]));
    }
  });
  it('is every class worth building where nothing was fixed', () => {
    const classes = new Set(drawn(usual, catalogue).map((w) => w.inside.retarder?.class));
    expect(classes).toEqual(new Set(['class-iii', 'class-ii', 'class-i', 'responsive']));
  });
  it('is never called existing', () => {
    expect(drawn(usual, catalogue).some((w) => w.inside.is_existing)).toBe(false);
  });
});

describe('the inside of a wall that stands', () => {
  it.each(RETARDERS)('keeps the %s that is there', (existing) => {
    const walls = drawn(retrofit(existing), catalogue);
    const kept = walls.filter((w) => w.inside.is_existing);
    expect(new Set(kept.map((w) => w.inside.retarder?.class))).toEqual(new Set([existing]));
    // What is not kept can be added from the rooms, and only where the lining is more open than that.
    const added = walls.filter((w) => !w.inside.is_existing);
    expect(added.every((w) => w.inside.retarder?.can_be_added_in_retrofit)).toBe(true);
    expect(added.length > 0).toBe(existing === 'none' || existing === 'class-iii');
  });
  it('of Class II is taken for the kraft paper of old batts, not for a primer rolled on since', () => {
    const [wall] = drawn(retrofit('class-ii'), catalogue);
    expect(wall?.inside.retarder?.id).toBe('kraft-facing');
  });
  it('that nobody knows stays unknown', () => {
    const walls = drawn(retrofit(null), catalogue);
    expect(walls.every((w) => w.inside.retarder === null && w.inside.is_existing)).toBe(true);
  });
});
