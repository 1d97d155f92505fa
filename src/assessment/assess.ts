import type { Candidate, Face, RetarderChoice } from '../assembly/candidates.ts';
import type { Barrier, Buck, Cladding, SheathingEntry } from '../assembly/catalogue-schema.ts';
import type { FlangePlace } from '../assembly/flange-seat.ts';
import type { InsulationBuild } from '../assembly/insulation-builds.ts';
import { type EnergyRequirement, energyRequirement, judgeCompliance } from '../calculators/energy-code.ts';
import { judgeRetarder } from '../calculators/vapour-code.ts';
import type { AnswerContext } from './answer-context.ts';
import { buckPart } from './buck-part.ts';
import { fastenerCost, installedCost } from './cost-part.ts';
import {
  barrierFacts,
  buckFacts,
  buildFacts,
  type CalculatedParts,
  claddingFacts,
  costFacts,
  dryingFacts,
  type FactSheet,
  faceFacts,
  insideFacts,
  siteFacts,
  type VapourPart,
  vapourFacts,
} from './fact-sheet.ts';
import { boardGroups, fastenerCounts } from './fastener-counts.ts';
import { fasteningPart } from './fastening-part.ts';
import { type CondensateOf, dewPointPart, inwardPermeance, outwardPermeance } from './moisture-part.ts';
import { remember, rememberPair, rememberTriple } from './remember.ts';
import { namingScenarioFields } from './scenario-fields.ts';
import { thermalPart } from './thermal-part.ts';
import { windowsPart } from './windows-part.ts';

/** Runs the calculators for the candidates of one answer. Parts that walls share are worked out once. */
export type Assessor = {
  readonly partsOf: (candidate: Candidate) => CalculatedParts;
  /**
   * Everything the rules may read about one candidate, as parts that candidates share: the same object wherever the
   * same site, cladding, build, lining, … stands, always in the same order.
   */
  readonly factPartsOf: (candidate: Candidate) => readonly FactSheet[];
};

/**
 * @param condensate  from `condensates`, of this context or of one that holds the same water
 * @throws Refusal where a given value lies outside a method's range
 */
export function assessor(context: AnswerContext, condensate: CondensateOf): Assessor {
  const windows = windowsPart(context);
  const { brief } = context;
  const required = namingScenarioFields(() => requirementOf(context));

  const fastening = remember((face: Face) => fasteningPart(face, context));
  const boards = rememberPair((build: InsulationBuild, sheathing: SheathingEntry) =>
    boardGroups({ build, sheathing }, context),
  );
  const fasteners = remember((face: Face) =>
    fastenerCounts(fastening(face), boards(face.build, face.sheathing), context),
  );
  const driving = remember((face: Face) => fastenerCost(fasteners(face), context));
  const thermal = remember((face: Face) => thermalPart(face, fasteners(face).bridging_per_100_ft2, context));
  const energy = remember((face: Face) =>
    judgeCompliance(required, {
      u_factor: thermal(face).u_factor,
      cavity_r: brief.cavity_insulation_r,
      ci_r: face.build.r,
    }),
  );
  const dewPoint = remember((face: Face) => dewPointPart(face, thermal(face), context));
  const moisture = rememberTriple((face: Face, barrier: Barrier, inside: RetarderChoice) => ({
    outward_permeance_perm: outwardPermeance(face, barrier),
    inward_permeance_perm: inwardPermeance(inside),
    ...condensate(face, barrier, inside.retarder),
  }));
  const vapour = rememberTriple((build: InsulationBuild, inside: RetarderChoice, cladding: Cladding) =>
    vapourPart(build, inside, cladding, context),
  );
  const supported = rememberPair((sheathing: SheathingEntry, place: FlangePlace) =>
    rememberPair((one: Buck, build: InsulationBuild) =>
      buckPart({ buck: one, build, sheathing, place }, windows, context),
    ),
  );
  const buck = (c: Candidate) => supported(c.sheathing, c.seat.place)(c.buck, c.build);
  const cost = (c: Candidate) => installedCost(c, driving(c.face), buck(c).supports, context);

  const shared = siteFacts(context, windows);
  const ofCladding = remember((face: Cladding) => claddingFacts(face));
  const ofSheathedBuild = rememberPair(buildFacts);
  const ofInside = remember(insideFacts);
  const ofBarrier = remember(barrierFacts);
  const ofBuck = rememberPair(buckFacts);
  const ofFace = remember((face: Face) =>
    faceFacts(face, {
      thermal: thermal(face),
      energy: energy(face),
      dewPoint: dewPoint(face),
      fastening: fastening(face),
      fasteners: fasteners(face),
    }),
  );
  const ofVapour = rememberTriple((build: InsulationBuild, inside: RetarderChoice, cladding: Cladding) =>
    vapourFacts(vapour(build, inside, cladding)),
  );
  const ofDrying = rememberTriple((face: Face, barrier: Barrier, inside: RetarderChoice) =>
    dryingFacts(face, barrier, moisture(face, barrier, inside)),
  );

  return {
    partsOf: (c) => ({
      thermal: thermal(c.face),
      energy: energy(c.face),
      dewPoint: dewPoint(c.face),
      moisture: moisture(c.face, c.barrier, c.inside),
      vapour: vapour(c.build, c.inside, c.cladding),
      fastening: fastening(c.face),
      fasteners: fasteners(c.face),
      buck: buck(c),
      cost: cost(c),
    }),
    factPartsOf: (c) => [
      shared,
      ofCladding(c.cladding),
      ofSheathedBuild(c.build, c.sheathing),
      ofInside(c.inside),
      ofBarrier(c.barrier),
      ofBuck(c.buck, buck(c)),
      ofFace(c.face),
      ofVapour(c.build, c.inside, c.cladding),
      ofDrying(c.face, c.barrier, c.inside),
      costFacts(cost(c)),
    ],
  };
}

/** What the energy code asks of this wall: looked up once. */
function requirementOf({ brief, tables, climate_zone }: AnswerContext): EnergyRequirement {
  return energyRequirement(tables.energy, {
    edition: brief.code_edition,
    climate_zone,
    wall: brief.framing.material === 'wood' ? 'wood-frame' : 'steel-frame',
    ...(brief.framing.spacing_in === 24 ? { stud_spacing_in: 24 as const } : {}),
  });
}

function vapourPart(
  build: InsulationBuild,
  { retarder }: RetarderChoice,
  cladding: Cladding,
  { brief, tables, climate_zone }: AnswerContext,
): VapourPart {
  const { verdict, why, ...minima } = judgeRetarder(tables.vapour, {
    edition: brief.code_edition,
    climate_zone,
    framing_depth_in: brief.framing.depth_in,
    ci_r: build.r,
    retarder_class: retarder?.class ?? 'class-iii',
    sheathing: brief.sheathing,
    foam_plastic_ci: build.insulation.is_foam_plastic,
    cladding_listed_as_vented: cladding.drainage.counts_as_vented_cladding,
  });
  // The minima hold for any wall; a verdict is only given on a retarder that is known.
  return { ...minima, verdict: retarder ? verdict : null, why: retarder ? why : null };
}
