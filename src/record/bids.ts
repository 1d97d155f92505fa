import type { Advice, Caution, RankedAssembly } from '../advice/advice-schema.ts';
import { inches } from '../base/inches.ts';
import { listed } from '../base/listed.ts';
import { fixed } from './figure-text.ts';

/** Whether a price range fits a budget, both in dollars per square foot; null: no budget was given. */
export function budgetCheck(
  { low, likely, high }: RankedAssembly['installed_cost_usd_per_ft2'],
  budget: number | null,
): string {
  if (budget === null) return 'No budget was given.';
  if (high <= budget) return `Even the high end fits the budget of $${budget} per ft².`;
  if (likely <= budget) {
    return `The likely cost fits the budget of $${budget} per ft², the high end does not: hold back $${fixed(high - budget, 2)} per ft².`;
  }
  return low <= budget
    ? `The likely cost is over the budget of $${budget} per ft²; only the low end fits it.`
    : `Even the low end is over the budget of $${budget} per ft².`;
}

/** What to ask quotes for. */
export function quotesFor(wall: RankedAssembly, { ranked }: Advice): string[] {
  const [, second] = ranked;
  return [
    `the cladding laid (${wall.cladding}; trades: ${listed(wall.crew.trades)}) from two bidders or more`,
    `the boards delivered (${wall.insulation.material}, ${inches(wall.insulation.thickness_in)} in.)`,
    wall.fastening.support === 'adhered' ? null : 'the long fasteners, which are the dearest small part',
    wall.openings.length > 0 ? `bucks and flashing for each window (${wall.buck.label})` : null,
    'scaffold for the whole time, curing included',
    second ? `the second choice too, for comparison (${second.title})` : null,
  ].filter((quote) => quote !== null);
}

/** What the installed cost doesn't pay for: it is for what lies outside the sheathing, and an added retarder inside. */
export function notInThePrice(advice: Advice, wall: RankedAssembly): string[] {
  return [
    wall.openings.length > 0
      ? 'the windows and doors themselves (what carries and flashes them is in it)'
      : null,
    isRetrofit(advice)
      ? 'taking the old cladding off, getting rid of it, tests for lead and asbestos, and mending what is rotten under it'
      : null,
    saysRule(wall, 'openings.enlarging-openings')
      ? 'cutting the rough openings larger, with the headers and jack studs that this touches'
      : null,
    saysRule(wall, 'buildability.eaves-and-fittings')
      ? 'longer eaves, and gutters, meters, lamps and hose taps moved out to the new face'
      : null,
    'scaffold, and its rent while plaster cures',
    'insulation between the studs, the inside lining, painting inside',
    'permits, and the fee of an engineer or designer',
    'taxes, interest, and a reserve for what nobody foresaw',
  ].filter((item) => item !== null);
}

/** Only a standing wall has something behind its cladding that nobody has seen. */
export function isRetrofit(advice: Advice): boolean {
  return saysRule(advice, 'safety.hidden-decay');
}

export function saysRule({ cautions }: { readonly cautions: readonly Caution[] }, rule: string): boolean {
  return cautions.some((caution) => caution.rule === rule);
}
