import type { Candidate } from '../assembly/candidates.ts';
import type { AnswerContext } from '../assessment/answer-context.ts';
import { compliantThickness } from '../assessment/energy-choices.ts';
import type { CalculatedParts } from '../assessment/fact-sheet.ts';
import { thermalBreakdown } from '../assessment/thermal-breakdown.ts';
import type { Figure } from './advice-schema.ts';
import { round } from './rounded.ts';

/** Figures that no rule reads: what air gaps would add, and which thickness would just meet the energy code. */
export function informativeFigures(
  candidate: Candidate,
  parts: CalculatedParts,
  context: AnswerContext,
): Figure[] {
  const { air_gap } = thermalBreakdown(candidate, parts.thermal, parts.buck, context);
  const nearest = compliantThickness(candidate, parts.energy.requirement, context);
  return [
    {
      id: 'air-gap-delta-u',
      what: `Added by air gaps with joints ${air_gap.joints}, for information`,
      value: round(air_gap.delta_u, 6),
      unit: 'Btu/(h·ft²·°F)',
      method: `air-gap level ${air_gap.level}: dU times the square of the insulation's share of the resistance`,
      source: ['ISO 6946:2017 annex F, coefficients seen second-hand'],
      note: `One layer with joints that run through adds ${round(air_gap.delta_u_if_aligned, 6)}, offset or taped joints nothing. Not in the U-factor: the energy code doesn't ask for it.`,
    },
    {
      id: 'nearest-compliant-thickness',
      what: 'Thinnest market thickness of this insulation, in as many boards, that meets the energy code',
      value: nearest?.build.thickness_in ?? null,
      unit: 'in.',
      method: 'each market thickness held against both routes, its fasteners worked out anew',
      source: [...parts.energy.requirement.source],
      ...(nearest ? {} : { note: 'no market thickness meets it under this cladding' }),
    },
  ];
}
