import type { CodeTables } from '../assessment/code-tables.ts';
import { CODE_EDITIONS } from '../base/code-editions.ts';
import { type Issue, showValue } from '../base/refusal.ts';
import type { LoadedRule } from './loaded-rule.ts';
import type { Concern } from './rule-schema.ts';

/** What no edition of the model codes leaves free: without a ban here, silence would admit every wall. */
const NEVER_SILENT: readonly Concern[] = ['energy', 'vapour', 'structure'];

/**
 * Editions that the program offers and of which the shipped rules of a concern forbid nothing.
 *
 * @param rules     of a rulebook; a firm's own don't count, for they stand in for no code
 * @param editions  those that the program offers
 */
export function rulesLackingEditions(
  rules: readonly Pick<LoadedRule, 'rule' | 'concern' | 'house'>[],
  editions: readonly string[] = CODE_EDITIONS,
): Issue[] {
  return NEVER_SILENT.flatMap((concern) => {
    const forbidden = new Set<string>(
      rules
        .filter((loaded) => !loaded.house && loaded.concern === concern && loaded.rule.verdict === 'forbid')
        .flatMap(({ rule }) => rule.editions),
    );
    return editions
      .filter((edition) => !forbidden.has(edition))
      .map((edition) => ({
        field: `${concern}/*.rules.json`,
        value: `edition ${showValue(edition)}`,
        accepted: `No ${concern} rule forbids anything in this edition, so that it would admit every wall: add the year to the "editions" of the rules that hold in it, or take it out of src/base/code-editions.ts.`,
      }));
  });
}

/**
 * Editions that the program offers and that a code table has no rows for.
 *
 * @param tables    as read from the rules folder
 * @param editions  those that the program offers
 */
export function tablesLackingEditions(
  { energy, vapour, fastening }: Pick<CodeTables, 'energy' | 'vapour' | 'fastening'>,
  editions: readonly string[] = CODE_EDITIONS,
): Issue[] {
  const kept: readonly (readonly [string, readonly string[]])[] = [
    ['energy/walls.table.json: residential_editions', energy.residential_editions.map((e) => e.edition)],
    ['vapour/retarders.table.json: sections', vapour.sections.map((e) => e.edition)],
    ['vapour/retarders.table.json: permission', vapour.permission.map((e) => e.edition)],
    ['vapour/retarders.table.json: class_iii_ci', vapour.class_iii_ci.map((e) => e.edition)],
    ...fastening.foam.tables.map(
      ({ id, columns }) =>
        [
          `structure/cladding-over-foam.table.json: ${id}, columns`,
          columns.flatMap((column) => column.editions),
        ] as const,
    ),
  ];
  return kept.flatMap(([field, known]) =>
    editions
      .filter((edition) => !known.includes(edition))
      .map((edition) => ({
        field,
        value: `edition ${showValue(edition)}`,
        accepted:
          'The table has nothing of this edition: add what the edition prints, or what it is taken to print, with its provenance.',
      })),
  );
}
