import type { z } from 'zod';
import type { answersSchema } from './answers-schema.ts';

export type Answers = z.output<typeof answersSchema>;
export type FieldId = keyof Answers;
export type AnswerValue = NonNullable<Answers[FieldId]>;

/** Every field, in the order of a scenario. */
export const FIELD_IDS = [
  'name',
  'place',
  'project',
  'code_edition',
  'framing.material',
  'framing.depth_in',
  'framing.spacing_in',
  'framing.steel_thickness_mil',
  'sheathing',
  'cavity_insulation_r',
  'interior_vapour_retarder',
  'windows',
  'rough_opening_can_change',
  'finish',
  'budget_usd_per_ft2',
  'crew_skill',
  'wall_area_ft2',
  'basic_wind_speed_mph',
  'exposure',
  'mean_roof_height_ft',
  'fire_separation_ft',
  'wildfire_area',
  'termite_area',
  'max_added_thickness_in',
  'priorities',
] as const satisfies readonly FieldId[];

/** One field and what was said about it; `words` is the stretch of the user's line that it was read from. */
export type Finding = {
  readonly field: FieldId;
  readonly value: AnswerValue;
  readonly words: string;
  /** Of a budget that was told for the whole wall. */
  readonly total_usd?: number;
  /** Of a county its name with its kind, which the value does without. */
  readonly title?: string;
};

/** Whether two answers mean the same; the order of keys does not matter. */
export function sameAnswer(a: AnswerValue, b: AnswerValue): boolean {
  return canonical(a) === canonical(b);
}

function canonical(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(canonical).join(',')}]`;
  if (typeof value === 'object' && value !== null) {
    const entries = Object.entries(value).filter(([, v]) => v !== undefined);
    return `{${entries
      .sort(([a], [b]) => (a < b ? -1 : 1))
      .map(([k, v]) => `${k}:${canonical(v)}`)
      .join(',')}}`;
  }
  return JSON.stringify(value) ?? '';
}

/** Whether nothing has been answered yet. */
export function isEmpty(answers: Answers): boolean {
  return Object.keys(answers).length === 0;
}
