import type { Candidate } from '../assembly/candidates.ts';
import type { AnswerContext } from '../assessment/answer-context.ts';
import { cornerNeed } from '../assessment/buck-corner.ts';
import type { CalculatedParts } from '../assessment/fact-sheet.ts';
import { fahrenheitFromCelsius } from '../calculators/moisture/units.ts';
import type { Figure } from './advice-schema.ts';

const ESTIMATE =
  'An estimate by heat flow along the buck; a two-dimensional calculation (ISO 10211) of the real detail decides. Window frame and glass edge, colder still, are not in it.';

/** What the buck does to heat and to the inside corner at the window; none for a wall without windows. */
export function openingFigures(
  { buck }: Candidate,
  parts: CalculatedParts,
  context: AnswerContext,
): Figure[] {
  if (context.brief.windows.length === 0) return [];
  const {
    corner_temp_factor: factor,
    required_temp_factor: required,
    corner_not_estimated: notEstimated,
  } = parts.buck;
  const need = cornerNeed(context);
  const month = need?.critical_index == null ? null : (need.months[need.critical_index] ?? null);
  const mould = context.tables.moisture.surface_mould;
  const { psi_btu_h_ft_f: psi } = buck;
  return [
    {
      id: 'buck-psi',
      what: 'Linear thermal transmittance of the window buck',
      value: psi.value,
      unit: 'Btu/(h·ft·°F)',
      method: psi.low === undefined ? 'catalogue' : `catalogue, ${psi.low} to ${psi.high ?? psi.value}`,
      source: [psi.source],
      ...(psi.provenance === 'memory' ? { note: 'from memory' } : {}),
    },
    {
      id: 'buck-corner-factor',
      what: 'Temperature factor of the coldest inside corner at the buck (1 is as warm as the room)',
      value: factor === null ? null : Number(factor.toFixed(3)),
      unit: '',
      method: 'fin: from the room along the lined reveal into the buck, out through its covered length',
      source: ['heat-transfer textbooks: straight fin', `inside film: ${mould.source}`],
      note: notEstimated ?? ESTIMATE,
    },
    {
      id: 'buck-corner-factor-needed',
      what: 'Temperature factor that keeps mould away in the critical month',
      value: required === null ? null : Number(required.toFixed(3)),
      unit: '',
      method: `monthly, indoors humidity class 3, at most ${mould.critical_rh * 100} % at the surface`,
      source: [mould.source],
      note:
        required === null ? 'the months of the place are not known' : 'humidity class and limit from memory',
    },
    {
      id: 'buck-corner-temp',
      what: 'Temperature of that corner in the critical month',
      value:
        factor === null || !month
          ? null
          : Number(
              fahrenheitFromCelsius(month.outside_c + factor * (month.inside_c - month.outside_c)).toFixed(1),
            ),
      unit: '°F',
      method: month
        ? `mean of the month, ${Math.round(fahrenheitFromCelsius(month.outside_c))} °F outdoors, ${Math.round(fahrenheitFromCelsius(month.inside_c))} °F indoors`
        : 'mean of the critical month',
      source: [mould.source],
      note: notEstimated ?? (month ? ESTIMATE : 'no month asks for a warm surface, or none is known'),
    },
  ];
}
