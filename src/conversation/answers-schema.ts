import { z } from 'zod';
import { parseInput } from '../base/parse-input.ts';
import { type Scenario, scenarioSchema } from '../brief/scenario.ts';
import type { Answers, AnswerValue, FieldId } from './answers.ts';

const shape = scenarioSchema.shape;
const framing = shape.framing.unwrap().options[0].shape;

/**
 * What the user has said so far, one key for each field of a scenario; framing is flat here because its parts are
 * answered one at a time. `"unknown"` is an answer: the user doesn't know. A missing key was not asked yet.
 */
export const answersSchema = z.strictObject({
  name: shape.name,
  place: shape.place.optional(),
  project: shape.project,
  code_edition: shape.code_edition,
  'framing.material': framing.material,
  'framing.depth_in': framing.depth_in,
  'framing.spacing_in': framing.spacing_in,
  'framing.steel_thickness_mil': framing.steel_thickness_mil,
  sheathing: shape.sheathing,
  cavity_insulation_r: shape.cavity_insulation_r,
  interior_vapour_retarder: shape.interior_vapour_retarder,
  windows: shape.windows,
  rough_opening_can_change: shape.rough_opening_can_change,
  finish: shape.finish,
  budget_usd_per_ft2: shape.budget_usd_per_ft2,
  crew_skill: shape.crew_skill,
  wall_area_ft2: shape.wall_area_ft2,
  basic_wind_speed_mph: shape.basic_wind_speed_mph,
  exposure: shape.exposure,
  mean_roof_height_ft: shape.mean_roof_height_ft,
  fire_separation_ft: shape.fire_separation_ft,
  wildfire_area: shape.wildfire_area,
  termite_area: shape.termite_area,
  max_added_thickness_in: shape.max_added_thickness_in,
  priorities: shape.priorities,
});

/**
 * The answers with one field set.
 *
 * @throws Refusal when the value is outside what a scenario takes, naming what would be accepted
 */
export function withAnswer(answers: Answers, field: FieldId, value: AnswerValue): Answers {
  return parseInput(answersSchema, { ...answers, [field]: value });
}

/** Whether a field can hold this value at all. */
export function takesValue(field: FieldId, value: AnswerValue): boolean {
  return answersSchema.shape[field].safeParse(value).success;
}

/** The answers without some fields. */
export function withoutAnswers(answers: Answers, fields: readonly FieldId[]): Answers {
  const kept = Object.entries(answers).filter(([field]) => !fields.some((dropped) => dropped === field));
  return answersSchema.parse(Object.fromEntries(kept));
}

/**
 * The scenario that the answers make. Fields that were not answered are left out, so that the brief assumes them.
 *
 * @throws Refusal when the place is missing
 */
export function toScenario(answers: Answers): Scenario {
  const {
    'framing.material': material,
    'framing.depth_in': depth_in,
    'framing.spacing_in': spacing_in,
    'framing.steel_thickness_mil': said_mil,
    ...rest
  } = answers;
  // Said of steel studs that have become wood since: it means nothing any more.
  const steel_thickness_mil = material === 'steel' ? said_mil : undefined;
  const framingGiven = present({ material, depth_in, spacing_in, steel_thickness_mil });
  return parseInput(scenarioSchema, {
    schema: 'cladwright-scenario/1',
    ...present(rest),
    ...(Object.keys(framingGiven).length > 0 ? { framing: framingGiven } : {}),
  });
}

function present(record: Readonly<Record<string, unknown>>): Record<string, unknown> {
  return Object.fromEntries(Object.entries(record).filter(([, value]) => value !== undefined));
}
