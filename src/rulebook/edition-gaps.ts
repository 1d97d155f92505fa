import type { CodeTables } from '../assessment/code-tables.ts';
import { CODE_EDITIONS } from '../base/code-editions.ts';
import { type Issue, showValue } from '../base/refusal.ts';
import type { FactIndex } from './fact-dictionary.ts';
import type { LoadedRule } from './loaded-rule.ts';
import type { Concern } from './rule-schema.ts';
import type { Rulebook } from './rulebook.ts';

const EDITION_FACT = 'project.code_edition';

/** What no edition of the model codes leaves free: without a ban here, silence would admit every wall. */
const NEVER_SILENT: readonly Concern[] = ['energy', 'vapour', 'structure'];

type RuleOfPack = Pick<LoadedRule, 'rule' | 'concern' | 'file' | 'house'>;

const PUT_RIGHT =
  'add the year to the "editions" of the rules that hold in it, or take it out of src/base/code-editions.ts.';

/**
 * Editions that the program offers and on which shipped rules are silent: the concerns that no edition leaves free, and
 * every pack that has rules, or bans, for other editions only.
 *
 * @param rules     of a rulebook; a firm's own don't count, for they stand in for no code
 * @param editions  those that the program offers
 */
export function rulesLackingEditions(
  rules: readonly RuleOfPack[],
  editions: readonly string[] = CODE_EDITIONS,
): Issue[] {
  const shipped = rules.filter(({ house }) => !house);
  const packs = new Map<string, RuleOfPack[]>();
  for (const loaded of shipped) packs.set(loaded.file, [...(packs.get(loaded.file) ?? []), loaded]);
  return editions.flatMap((edition) => {
    const free = NEVER_SILENT.filter(
      (concern) => !speaks(forbidding(shipped.filter((loaded) => loaded.concern === concern)), edition),
    );
    const value = `edition ${showValue(edition)}`;
    return [
      ...free.map((concern) => ({
        field: `${concern}/*.rules.json`,
        value,
        accepted: `No ${concern} rule forbids anything in this edition, so that it would admit every wall: ${PUT_RIGHT}`,
      })),
      ...[...packs].flatMap(([field, pack]) => {
        if (free.some((concern) => concern === pack[0]?.concern)) return [];
        const bans = forbidding(pack);
        if (speaks(bans.length > 0 ? bans : pack, edition)) return [];
        const does = bans.length > 0 ? 'forbids anything in' : 'speaks of';
        return [{ field, value, accepted: `No rule of this pack ${does} this edition: ${PUT_RIGHT}` }];
      }),
    ];
  });
}

function forbidding(rules: readonly RuleOfPack[]): RuleOfPack[] {
  return rules.filter(({ rule }) => rule.verdict === 'forbid');
}

function speaks(rules: readonly RuleOfPack[], edition: string): boolean {
  return rules.some(({ rule }) => rule.editions.some((known) => known === edition));
}

/**
 * Editions that the program offers and that the fact naming the edition may not take.
 *
 * @param facts     the dictionary of a rulebook
 * @param editions  those that the program offers
 */
export function factsLackingEditions(
  facts: Pick<FactIndex, 'find'>,
  editions: readonly string[] = CODE_EDITIONS,
): Issue[] {
  const known = facts.find(EDITION_FACT)?.values ?? [];
  return editions
    .filter((edition) => !known.includes(edition))
    .map((edition) => ({
      field: `facts.json: ${EDITION_FACT}, values`,
      value: `edition ${showValue(edition)}`,
      accepted: 'Rules could not name this edition, nor any wall be judged by it: add it to the list.',
    }));
}

/**
 * Everything that rules, facts and tables lack of an edition that the program offers.
 *
 * @param rulebook  with or without a firm's packs
 * @param tables    as read from the rules folder
 */
export function editionGaps(rulebook: Pick<Rulebook, 'rules' | 'facts'>, tables: CodeTables): Issue[] {
  return [
    ...rulesLackingEditions(rulebook.rules),
    ...factsLackingEditions(rulebook.facts),
    ...tablesLackingEditions(tables),
  ];
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
