import type { Advice, RankedAssembly } from '../advice/advice-schema.ts';
import { capital } from '../base/first-letter.ts';
import { notInThePrice } from '../record/bids.ts';
import { wholeWallUsd } from '../record/figure-text.ts';
import type { Block, FigureRow } from './blocks.ts';
import { titledList } from './notes.ts';

/** Where the money goes: the installed cost part by part, all of it for the whole wall, and what it doesn't pay for. */
export function costBlocks(wall: RankedAssembly, advice: Advice): Block[] {
  return [...partsOfCost(wall), ...titledList('Not in that price', notInThePrice(advice, wall))];
}

/** Nothing for an answer from before the parts were told. */
export function partsOfCost(wall: RankedAssembly): Block[] {
  const { cost_parts, installed_cost_usd_per_ft2: all } = wall;
  if (cost_parts.length === 0) return [];
  const area_ft2 = wall.thermal.assumptions.wall_area_ft2;
  return [
    { kind: 'heading', text: 'What it costs, part by part, for each square foot' },
    {
      kind: 'figures',
      rows: [
        ...cost_parts.map(({ label, usd_per_ft2 }): FigureRow => {
          const share = Math.round((100 * usd_per_ft2.likely) / all.likely);
          return {
            label: capital(label),
            value: `${rangeWords(usd_per_ft2)}, ${share < 1 ? 'under 1' : share} %`,
          };
        }),
        { label: 'All of it', value: rangeWords(all) },
        {
          label: `Times ${area_ft2.toLocaleString('en-US')} ft²`,
          value: `${wholeWallUsd(all.likely, area_ft2)} (${wholeWallUsd(all.low, area_ft2)} to ${wholeWallUsd(all.high, area_ft2)})`,
        },
      ],
    },
  ];
}

function rangeWords({ low, likely, high }: RankedAssembly['installed_cost_usd_per_ft2']): string {
  return `$${likely.toFixed(2)} ($${low.toFixed(2)} to $${high.toFixed(2)})`;
}
