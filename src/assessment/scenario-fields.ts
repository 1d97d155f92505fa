import { Refusal } from '../base/refusal.ts';

/** What a calculator calls its input, and what the scenario calls it. */
const SCENARIO_FIELD: Readonly<Record<string, string>> = {
  'cavity.insulation_r': 'cavity_insulation_r',
  'cavity.depth_in': 'framing.depth_in',
  'cavity.spacing_in': 'framing.spacing_in',
  climate_zone: 'place',
};

/**
 * Runs a calculator on values of a brief; what it refuses is named as the user wrote it.
 * @throws Refusal as the calculator's, with the scenario's field names
 */
export function namingScenarioFields<T>(work: () => T): T {
  try {
    return work();
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    throw new Refusal(
      error.issues.map((issue) => ({ ...issue, field: SCENARIO_FIELD[issue.field] ?? issue.field })),
    );
  }
}
