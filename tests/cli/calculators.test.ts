import { describe, expect, it } from 'vitest';
import { Refusal } from '../../src/base/refusal.ts';
import { CALCULATOR_NAMES } from '../../src/cli/calculator-names.ts';
import { CALCULATORS } from '../../src/cli/calculators.ts';
import { findRulesDir } from '../../src/rulebook/rules-dir.ts';
import { CALC_EXAMPLES } from './example-inputs.ts';

const run = (name: (typeof CALCULATOR_NAMES)[number], input: unknown) =>
  CALCULATORS[name](input, findRulesDir());

/** The example with one number, somewhere in it, replaced. */
function withNumbersReplaced(example: unknown, value: unknown): unknown[] {
  const copies: unknown[] = [];
  const text = JSON.stringify(example);
  for (const match of text.matchAll(/(?<=[:[,])-?\d+(?:\.\d+)?(?=[,}\]])/g)) {
    const start = match.index;
    copies.push(
      JSON.parse(`${text.slice(0, start)}${JSON.stringify(value)}${text.slice(start + match[0].length)}`),
    );
  }
  return copies;
}

describe.each(CALCULATOR_NAMES)('calculator %s refuses', (name) => {
  it('an unknown key', async () => {
    await expect(run(name, { ...CALC_EXAMPLES[name], hue: 'blue' })).rejects.toThrow(
      'hue: "blue" is not accepted. This key is not known here',
    );
  });

  it('what is no object, or an empty one', async () => {
    for (const input of [{}, [], 'text', 1, true, null, undefined]) {
      await expect(run(name, input)).rejects.toThrow(Refusal);
    }
  });

  it('any number replaced by one beyond all bounds, by text, or by null', async () => {
    for (const value of [-1e6, 1e12, '1', null]) {
      for (const input of withNumbersReplaced(CALC_EXAMPLES[name], value)) {
        await expect(run(name, input), JSON.stringify(input)).rejects.toThrow(Refusal);
      }
    }
  });
});

const WITH_NUMBERS = CALCULATOR_NAMES.filter((name) =>
  Object.values(CALC_EXAMPLES[name]).some((value) => typeof value === 'number'),
);

describe.each(WITH_NUMBERS)('calculator %s refuses', (name) => {
  it('not a number and infinity, which JSON does not have', async () => {
    for (const [key, value] of Object.entries(CALC_EXAMPLES[name])) {
      if (typeof value !== 'number') continue;
      for (const bad of [Number.NaN, Number.POSITIVE_INFINITY]) {
        await expect(run(name, { ...CALC_EXAMPLES[name], [key]: bad })).rejects.toThrow(Refusal);
      }
    }
  });
});
