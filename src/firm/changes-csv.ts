import { OUTCOME_WORDS, reasonText } from './changes-document.ts';
import type { Changes, Decision } from './changes-schema.ts';
import { type CsvValue, csvText } from './csv.ts';

const DECISION_HEAD = [
  'climate_zone',
  'admitted',
  'id',
  'title',
  'u_factor',
  'max_u_factor',
  'max_u_factor_provenance',
  'u_margin_percent',
  'cost_usd_per_ft2',
  'added_thickness_in',
  'weight_psf',
  'score',
];

/** One line for each project. */
export function changesCsv({ projects }: Changes): string {
  return csvText(
    [
      'file',
      'name',
      'outcome',
      'decision',
      'parts_changed',
      ...DECISION_HEAD.map((key) => `before_${key}`),
      ...DECISION_HEAD.map((key) => `after_${key}`),
      'rules',
      'why',
    ],
    projects.map(({ file, name, outcome, parts_changed, before, after, why }) => [
      file,
      name,
      outcome,
      OUTCOME_WORDS[outcome],
      parts_changed.join('; '),
      ...decisionFields(before),
      ...decisionFields(after),
      [...new Set(why.flatMap(({ rule }) => rule ?? []))].join(' '),
      why.map(reasonText).join(' | '),
    ]),
  );
}

function decisionFields({ climate_zone, admitted, choice }: Decision): CsvValue[] {
  if (!choice) return [climate_zone, admitted, ...DECISION_HEAD.slice(2).map(() => null)];
  return [
    climate_zone,
    admitted,
    choice.id,
    choice.title,
    choice.u_factor,
    choice.max_u_factor,
    choice.max_u_factor_provenance,
    choice.u_margin_percent,
    choice.cost_usd_per_ft2.likely,
    choice.added_thickness_in,
    choice.weight_psf,
    choice.score,
  ];
}
