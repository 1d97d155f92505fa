import { refuseOtherSchema } from '../base/other-schema.ts';
import { parseInput } from '../base/parse-input.ts';
import { Refusal } from '../base/refusal.ts';
import { type Scenario, scenarioSchema } from './scenario.ts';

export const SCENARIO_SCHEMA = 'cladwright-scenario/1';

const ACCEPTED = `Give a scenario: "schema": "${SCENARIO_SCHEMA}", and a "place".`;

/**
 * Checks parsed JSON as a scenario.
 *
 * @param root      how messages call it, for example a file name; empty for none
 * @param accepted  what is asked for in place of something else, as a sentence
 * @throws Refusal with every issue found; with one alone for a document of something else
 */
export function readScenario(data: unknown, root = '', accepted = ACCEPTED): Scenario {
  refuseOtherSchema(data, [SCENARIO_SCHEMA], accepted, root);
  refuseStranger(data, root, accepted);
  return parseInput(scenarioSchema, data, root);
}

/** With neither of the two keys that every scenario has it is some other program's file. */
function refuseStranger(data: unknown, root: string, accepted: string): void {
  if (typeof data !== 'object' || data === null || Array.isArray(data)) return;
  if ('schema' in data || 'place' in data || Object.keys(data).length === 0) return;
  throw new Refusal({
    field: root || 'input',
    value: 'this document',
    accepted: `It has neither "schema" nor "place". ${accepted}`,
  });
}
