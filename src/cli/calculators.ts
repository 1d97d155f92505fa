import type { z } from 'zod';
import { parseInput } from '../base/parse-input.ts';
import { buckInputSchema, computeBuck } from '../calculators/buck/buck.ts';
import { climateInputSchema, computeClimateFromMonths } from '../calculators/climate-zone.ts';
import { computeLateral, lateralInputSchema } from '../calculators/connections/lateral.ts';
import { computePullThrough, pullThroughInputSchema } from '../calculators/connections/pull-through.ts';
import { computeWithdrawal, withdrawalInputSchema } from '../calculators/connections/withdrawal.ts';
import { energyInputSchema, energyRequirement } from '../calculators/energy-code.ts';
import { computeFastening } from '../calculators/fastening/compute-fastening.ts';
import { fasteningInputSchema } from '../calculators/fastening/fastening-input.ts';
import { computeCondensation } from '../calculators/moisture/condensation.ts';
import { condensationInputSchema } from '../calculators/moisture/condensation-input.ts';
import { computeThermal } from '../calculators/thermal/thermal.ts';
import { thermalInputSchema } from '../calculators/thermal/thermal-input.ts';
import { vapourInputSchema, vapourRequirement } from '../calculators/vapour-code.ts';
import { computeWind, windInputSchema } from '../calculators/wind.ts';
import { loadTable } from '../rulebook/load-code-tables.ts';
import { climateOfCountyName } from '../site/county-climate.ts';
import type { CalculatorName } from './calculator-names.ts';

/** What every calculator answers, beside its own figures. */
type Answer = { readonly source: readonly string[]; readonly notes: readonly string[] };

/** From unchecked JSON to the answer. @throws Refusal for input that the method can't work on */
type Calculator = (input: unknown, rulesDir: string) => Promise<Answer>;

function calculator<S extends z.ZodType>(
  schema: S,
  compute: (input: z.output<S>, rulesDir: string) => Answer | Promise<Answer>,
): Calculator {
  return async (input, rulesDir) => compute(parseInput(schema, input), rulesDir);
}

/** The calculators by the names of the command line. Each reads only the tables that it needs. */
export const CALCULATORS: Readonly<Record<CalculatorName, Calculator>> = {
  thermal: calculator(thermalInputSchema, async (input, dir) =>
    computeThermal(input, await loadTable(dir, 'thermal')),
  ),
  condensation: calculator(condensationInputSchema, async (input, dir) =>
    computeCondensation(await loadTable(dir, 'moisture'), input),
  ),
  climate: calculator(climateInputSchema, (input) =>
    'county' in input ? climateOfCountyName(input) : computeClimateFromMonths(input),
  ),
  'energy-code': calculator(energyInputSchema, async (input, dir) =>
    energyRequirement(await loadTable(dir, 'energy'), input),
  ),
  'vapour-code': calculator(vapourInputSchema, async (input, dir) =>
    vapourRequirement(await loadTable(dir, 'vapour'), input),
  ),
  wind: calculator(windInputSchema, computeWind),
  withdrawal: calculator(withdrawalInputSchema, computeWithdrawal),
  'pull-through': calculator(pullThroughInputSchema, computePullThrough),
  lateral: calculator(lateralInputSchema, computeLateral),
  fastening: calculator(fasteningInputSchema, async (input, dir) =>
    computeFastening(input, await loadTable(dir, 'fastening')),
  ),
  buck: calculator(buckInputSchema, async (input, dir) =>
    computeBuck(input, await loadTable(dir, 'openings')),
  ),
};
