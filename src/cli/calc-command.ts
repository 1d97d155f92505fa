import { Refusal, showValue } from '../base/refusal.ts';
import { didYouMean } from '../rulebook/nearest-name.ts';
import { findRulesDir } from '../rulebook/rules-dir.ts';
import { CALCULATOR_NAMES } from './calculator-names.ts';
import { CALCULATORS } from './calculators.ts';
import { EXIT, type ExitCode } from './exit-codes.ts';
import { parseJsonText } from './json-text.ts';
import { jsonDocument, writeResult } from './output.ts';
import { readText, STANDARD_INPUT, sourceName } from './read-text.ts';

/**
 * `calc NAME [FILE]`: one calculator, JSON in and JSON out.
 *
 * @throws Refusal for an unknown name, text that can't be read, and input outside the method's range
 */
export async function runCalculator(name: string | undefined, file = STANDARD_INPUT): Promise<ExitCode> {
  const known = CALCULATOR_NAMES.find((candidate) => candidate === name);
  if (known === undefined) {
    throw new Refusal({
      field: 'calculator',
      value: showValue(name),
      accepted: `Give one of ${CALCULATOR_NAMES.join(', ')}.${name === undefined ? '' : didYouMean(name, CALCULATOR_NAMES)}`,
    });
  }
  const input = parseJsonText(await readText(file, 'FILE'), sourceName(file));
  await writeResult(jsonDocument(await CALCULATORS[known](input, findRulesDir())));
  return EXIT.done;
}
