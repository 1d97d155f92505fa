import type { Candidate } from '../assembly/candidates.ts';
import type { AnswerContext } from '../assessment/answer-context.ts';
import { type CompliantThickness, compliantThickness } from '../assessment/energy-choices.ts';
import { type CalculatedParts, ROUTE_WORDS } from '../assessment/fact-sheet.ts';
import { inches } from '../base/inches.ts';
import { optionsInWords } from '../calculators/energy-code.ts';
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
    u_margin_percent: roundOrNull(found.u_margin_percent, 1),
    option_met: found.option_met
      ? {
          ...found.option_met,
          spare_cavity_r: round(found.option_met.spare_cavity_r, 2),
          spare_ci_r: round(found.option_met.spare_ci_r, 2),
        }
      : null,
    option_nearest: found.option_nearest
      ? {
          ...found.option_nearest,
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
  const sure = found.provenance === 'memory' ? ['The limit is from memory: check the adopted table.'] : [];
  return [`${verdict}.`, ...margins(found), nearestWords(build, nearest), ...sure].join(' ');
}

function margins({
  u_margin_percent,
  max_u_factor,
  option_met,
  option_nearest,
}: CalculatedParts['energy']): string[] {
  const words: string[] = [];
  if (u_margin_percent !== null && max_u_factor !== null) {
    const side = u_margin_percent >= 0 ? 'below' : 'above';
    words.push(
      `Its U-factor lies ${Math.abs(round(u_margin_percent, 1))} % ${side} the ${max_u_factor} allowed.`,
    );
  }
  if (option_met)
    words.push(
      `The option ${optionsInWords([option_met])} is met with ${over(option_met.spare_cavity_r)} to spare in the cavity and ${over(option_met.spare_ci_r)} outside.`,
    );
  if (option_nearest)
    words.push(
      `The nearest option, ${optionsInWords([option_nearest])}, lacks ${over(option_nearest.missing_cavity_r)} in the cavity and ${over(option_nearest.missing_ci_r)} outside.`,
    );
  return words;
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

/** What would bring a wall that misses the energy code to it; null when the wall doesn't miss it. */
export function energyRemedy(
  candidate: Candidate,
  { energy }: CalculatedParts,
  context: AnswerContext,
): string | null {
  if (energy.complies !== false) return null;
  return nearestWords(candidate.build, compliantThickness(candidate, energy.requirement, context));
}
