import { adviceSchema } from '../../src/advice/advice-schema.ts';
import { advise } from '../../src/advice/advise.ts';
import { type Judged, type JudgedWall, judgeWalls, type Knowledge } from '../../src/advice/judge-walls.ts';
import type { Catalogue } from '../../src/assembly/catalogue.ts';
import type { InsulationBuild } from '../../src/assembly/insulation-builds.ts';
import { parseInput } from '../../src/base/parse-input.ts';
import type { Brief } from '../../src/brief/brief.ts';
import { resolveBrief } from '../../src/brief/resolve-brief.ts';
import { type Scenario, scenarioSchema } from '../../src/brief/scenario.ts';
import { loadKnowledge } from '../../src/cli/knowledge.ts';
import { resolveSite } from '../../src/site/resolve-site.ts';

/** Rules, tables and catalogue as shipped; loaded once for a test file. */
export const KNOWLEDGE = await loadKnowledge({ housePacks: [] });

/** An ordinary job that leaves nothing open. */
export const TYPICAL = {
  schema: 'cladwright-scenario/1',
  name: 'Juniper Street, west wall',
  place: { state: 'CO', county: 'Boulder' },
  project: 'new',
  code_edition: '2021',
  framing: { material: 'wood', depth_in: 5.5, spacing_in: 16, species_gravity: 0.42 },
  sheathing: 'osb',
  cavity_insulation_r: 20,
  windows: [
    {
      count: 6,
      width_in: 36,
      height_in: 60,
      glazing: 'double',
      mounting: 'flanged',
      operation: 'casement',
      weight_lb: 80,
    },
  ],
  rough_opening_can_change: true,
  finish: 'any',
  budget_usd_per_ft2: 40,
  crew_skill: 'stucco-experienced',
  wall_area_ft2: 1800,
  basic_wind_speed_mph: 115,
  exposure: 'B',
  mean_roof_height_ft: 22,
  fire_separation_ft: 20,
  wildfire_area: false,
  termite_area: 'slight-to-moderate',
  max_added_thickness_in: 10,
  priorities: { cost: 1, moisture_safety: 1, energy: 1, ease: 1, carbon: 0.5 },
} as const;

/** The typical job with other answers, checked like a file from outside. */
export function job(change: object = {}): Scenario {
  return parseInput(scenarioSchema, { ...TYPICAL, ...change });
}

export function briefOf(change: object = {}): Brief {
  return resolveBrief(job(change)).brief;
}

/** A smaller market, so that a test judges hundreds of walls instead of thousands. */
export function withCatalogue(change: Partial<Catalogue>, knowledge: Knowledge = KNOWLEDGE): Knowledge {
  return { ...knowledge, catalogue: { ...knowledge.catalogue, ...change } };
}

function boards(...names: readonly string[]) {
  const { builds } = KNOWLEDGE.catalogue;
  return builds.filter((b) => names.includes(`${b.insulation.id}-${b.boards_in.join('+')}`));
}

/** Eight boards, every cladding, barrier, retarder and buck. */
export const SMALL: Knowledge = withCatalogue({
  builds: boards(
    'eps-1.5',
    'eps-2.5',
    'polyiso-3',
    'polyiso-2+2',
    'mineral-wool-3',
    'mineral-wool-4',
    'xps-1',
    'xps-2',
  ),
});

/** Four boards, every cladding, the barriers and bucks of which a wall can hardly do without one. */
export const TINY: Knowledge = withCatalogue({
  builds: boards('eps-1', 'eps-2.5', 'polyiso-3', 'mineral-wool-4+4'),
  barriers: KNOWLEDGE.catalogue.barriers.filter((b) => b.id !== 'adhered-impermeable'),
  bucks: KNOWLEDGE.catalogue.bucks.filter((b) =>
    ['no-buck', 'plywood-box', 'lumber-2x4-face', 'steel-bracket'].includes(b.id),
  ),
});

/** Two boards, four claddings, one barrier for each way of hanging them, two bucks: dozens of walls, for many answers. */
export const MINUTE: Knowledge = withCatalogue({
  builds: boards('eps-2.5', 'mineral-wool-4'),
  claddings: KNOWLEDGE.catalogue.claddings.filter((c) =>
    ['plaster-on-mat-integral-lath', 'fibre-cement-panels', 'wood-siding', 'insulated-finish'].includes(c.id),
  ),
  barriers: KNOWLEDGE.catalogue.barriers.filter((b) => b.id === 'sealed-permeable'),
  bucks: KNOWLEDGE.catalogue.bucks.filter((b) => ['plywood-box', 'steel-bracket'].includes(b.id)),
});

/** One layer of a board that no market sells, to stand just inside or just outside a limit. */
export function board(insulation: string, thickness_in: number): InsulationBuild {
  const found = KNOWLEDGE.catalogue.insulations.find(({ id }) => id === insulation);
  if (!found) throw new Error(`no insulation ${insulation}`);
  return {
    insulation: found,
    boards_in: [thickness_in],
    thickness_in,
    r: thickness_in * found.r_per_in.value,
  };
}

export async function judge(brief: Brief, knowledge: Knowledge = SMALL): Promise<Judged> {
  return judgeWalls(brief, await resolveSite(brief.place, brief.code_edition), knowledge);
}

/** A whole answer; it must be of its own schema. */
export async function answer(scenario: Scenario, knowledge: Knowledge = SMALL, top = 3) {
  return adviceSchema.parse(await advise(scenario, knowledge, { top, toolVersion: '0.0.0-test' }));
}

/** Ids of the rules that forbid a wall. */
export function against(wall: JudgedWall): string[] {
  return wall.verdicts.rulesWith('forbid').map(({ rule }) => rule.id);
}
