import { type Candidate, type Face, fits } from '../assembly/candidates.ts';
import type { InsulationBuild } from '../assembly/insulation-builds.ts';
import {
  type EnergyCompliance,
  type EnergyRequirement,
  nearestCompliantThickness,
} from '../calculators/energy-code.ts';
import type { AnswerContext } from './answer-context.ts';
import { boardGroups, fastenerCounts } from './fastener-counts.ts';
import { fasteningPart } from './fastening-part.ts';
import { rememberPairWhileThere } from './remember.ts';
import { thermalPart } from './thermal-part.ts';

export type CompliantThickness = {
  readonly build: InsulationBuild;
  readonly u_factor: number;
  readonly route: EnergyCompliance['route'];
};

/**
 * The thinnest build on the market that meets the energy code with this wall's insulation, number of boards and
 * cladding, its fasteners worked out anew; null when none does.
 *
 * @param requirement  what the code asks at this site
 */
export function compliantThickness(
  { face }: Candidate,
  requirement: EnergyRequirement,
  context: AnswerContext,
): CompliantThickness | null {
  const choices = marketChoices(context, face);
  const nearest = nearestCompliantThickness(requirement, choices);
  const chosen = choices.find((choice) => choice.thickness_in === nearest?.thickness_in);
  return nearest && chosen ? { build: chosen.build, u_factor: chosen.u_factor, route: nearest.route } : null;
}

/** Every build of a face's insulation and number of boards. Remembered: a wall's figures and its words both ask. */
const marketChoices = rememberPairWhileThere((context: AnswerContext, face: Face) =>
  context.catalogue.builds
    .filter(
      (build) =>
        build.insulation.id === face.build.insulation.id &&
        build.boards_in.length === face.build.boards_in.length &&
        fits(face.cladding, build),
    )
    .map((build) => {
      const other: Face = { ...face, build };
      const counts = fastenerCounts(fasteningPart(other, context), boardGroups(other, context), context);
      return {
        build,
        thickness_in: build.thickness_in,
        u_factor: thermalPart(other, counts.bridging_per_100_ft2, context).u_factor,
        cavity_r: context.brief.cavity_insulation_r,
        ci_r: build.r,
      };
    }),
);
