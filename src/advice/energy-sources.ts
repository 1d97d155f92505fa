import type { EnergyRequirement, EnergyTable } from '../calculators/energy-code.ts';

/**
 * Where the highest U-factor itself stands and was seen: the R-value options beside it have sources of their own, and
 * one must not vouch for the other.
 */
export function maxUSources(requirement: EnergyRequirement, table: EnergyTable): string[] {
  const edition = table.residential_editions.find((one) => one.edition === requirement.edition);
  const zone = requirement.climate_zone === '4C' ? '4M' : requirement.climate_zone.slice(0, 1);
  const row = edition?.rows.find((one) => one.zone === zone);
  if (!edition || !row) return [...requirement.source];
  const rule = requirement.wall === 'steel-frame' ? table.steel_frame.u_factor_rule.sources : [];
  const ids = new Set([...row.wood_frame.max_u_factor.sources, ...rule]);
  const seen = table.sources.filter(({ id }) => ids.has(id) && id !== 'recall');
  return [
    `${edition.code}, ${edition.u_table}`,
    ...seen.map(({ what }) => `Seen in: ${what}`),
    ...(ids.has('recall') ? [`${seen.length > 0 ? 'The rest from' : 'From'} memory, no document seen`] : []),
  ];
}
