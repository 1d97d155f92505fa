import type { Candidate } from '../assembly/candidates.ts';
import type { InsulationBuild } from '../assembly/insulation-builds.ts';
import type { AnswerContext } from '../assessment/answer-context.ts';
import { type CompliantThickness, compliantThickness } from '../assessment/energy-choices.ts';
import { type CalculatedParts, ROUTE_WORDS } from '../assessment/fact-sheet.ts';
import { inches } from '../base/inches.ts';
import type { Provenance } from '../base/provenance.ts';
import { type EnergyRequirement, optionsInWords, type ROption } from '../calculators/energy-code.ts';
import { round, roundOrNull } from './rounded.ts';
import type { WallEnergy } from './wall-physics-schema.ts';

/** By which route a wall meets the energy code, by what margin, and which thickness just would. */
export function wallEnergy(
  candidate: Candidate,
  { energy: found }: CalculatedParts,
  context: AnswerContext,
): WallEnergy {
  const nearest = compliantThickness(candidate, found.requirement, context);
  return {
    route: found.route,
    summary: energySummary(candidate, found, nearest),
    max_u_factor: found.max_u_factor,
    max_u_factor_provenance: found.requirement.provenance.max_u_factor,
    u_margin_percent: roundOrNull(found.u_margin_percent, 1),
    option_met: found.option_met
      ? {
          ...found.option_met,
          provenance: optionProvenance(found.requirement, found.option_met),
          spare_cavity_r: round(found.option_met.spare_cavity_r, 2),
          spare_ci_r: round(found.option_met.spare_ci_r, 2),
        }
      : null,
    option_nearest: found.option_nearest
      ? {
          ...found.option_nearest,
          provenance: optionProvenance(found.requirement, found.option_nearest),
          missing_cavity_r: round(found.option_nearest.missing_cavity_r, 2),
          missing_ci_r: round(found.option_nearest.missing_ci_r, 2),
        }
      : null,
    nearest_compliant_thickness_in: nearest?.build.thickness_in ?? null,
    nearest_compliant_route: nearest?.route ?? null,
    provenance: found.provenance,
    from_memory: found.provenance === 'memory',
    notes: [...found.notes, ...found.requirement.notes],
  };
}

/** How sure an option of the code is; the U-factor limit beside it may be surer or less sure. */
function optionProvenance({ options, provenance }: EnergyRequirement, option: ROption): Provenance | null {
  const at = options.findIndex(({ cavity_r, ci_r }) => cavity_r === option.cavity_r && ci_r === option.ci_r);
  return provenance.options[at] ?? null;
}

function energySummary(
  { build }: Candidate,
  found: CalculatedParts['energy'],
  nearest: CompliantThickness | null,
): string {
  const { code, climate_zone } = found.requirement;
  const route = ROUTE_WORDS[found.route];
  const verdict =
    route === null
      ? `Whether the wall meets the ${code} in zone ${climate_zone} can't be said`
      : found.complies === true
        ? `The wall meets the ${code} in zone ${climate_zone} ${route}`
        : `The wall does not meet the ${code} in zone ${climate_zone}`;
  return [`${verdict}.`, ...margins(found), nearestWords(build, nearest)].join(' ');
}

function margins({
  requirement,
  u_margin_percent,
  max_u_factor,
  option_met,
  option_nearest,
}: CalculatedParts['energy']): string[] {
  const words: string[] = [];
  if (u_margin_percent !== null && max_u_factor !== null) {
    const side = u_margin_percent >= 0 ? 'below' : 'above';
    words.push(
      `Its U-factor lies ${Math.abs(round(u_margin_percent, 1))} % ${side} the ${max_u_factor} allowed${recalled('a limit', requirement.provenance.max_u_factor)}.`,
    );
  }
  if (option_met)
    words.push(
      `The option ${optionsInWords([option_met])} is met with ${over(option_met.spare_cavity_r)} to spare in the cavity and ${over(option_met.spare_ci_r)} outside${recalled('an option', optionProvenance(requirement, option_met))}.`,
    );
  if (option_nearest)
    words.push(
      `The nearest option, ${optionsInWords([option_nearest])}, lacks ${over(option_nearest.missing_cavity_r)} in the cavity and ${over(option_nearest.missing_ci_r)} outside${recalled('an option', optionProvenance(requirement, option_nearest))}.`,
    );
  return words;
}

/** Words to go on with after a figure of the code that is from memory. */
function recalled(what: string, provenance: Provenance | null): string {
  return provenance === 'memory' ? `, ${what} from memory: check the adopted table` : '';
}

function over(r: number): string {
  return r < 0.005 ? 'nothing' : `R-${round(r, 2)}`;
}

/** Which thickness of the same insulation would just meet the energy code. */
function nearestWords(build: Candidate['build'], nearest: CompliantThickness | null): string {
  const boards = build.boards_in.length === 1 ? 'one board' : `${build.boards_in.length} boards`;
  if (!nearest) return `No market thickness of this insulation in ${boards} meets it under this cladding.`;
  const route = ROUTE_WORDS[nearest.route] ?? '';
  return `The thinnest on the market that meets it, same insulation in ${boards}, is ${inches(nearest.build.thickness_in)} in., ${route}.`;
}

/**
 * The thickness that would bring a wall that misses the energy code to it, in words and as boards; null when the wall
 * doesn't miss it. Nothing but the energy code has been asked about it.
 */
export function energyRemedy(
  candidate: Candidate,
  { energy }: CalculatedParts,
  context: AnswerContext,
): { readonly words: string; readonly build: InsulationBuild | null } | null {
  if (energy.complies !== false) return null;
  const nearest = compliantThickness(candidate, energy.requirement, context);
  return { words: nearestWords(candidate.build, nearest), build: nearest?.build ?? null };
}
