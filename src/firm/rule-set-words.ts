import { listed } from '../base/listed.ts';
import type { FactRow } from '../record/record-document.ts';
import type { Changes } from './changes-schema.ts';
import type { ReportPack } from './firm-schema.ts';
import { packsText } from './report-words.ts';

type Sides = Pick<Changes, 'from' | 'to'>;
type RuleSet = Changes['from'];

/** Enough of a digest to tell two files of one name and version apart. */
const DIGEST_SHOWN = 8;

/** Whether there is nothing in which the two rule sets could differ. */
export function areSame({ from, to }: Sides): boolean {
  return from.edition === to.edition && digestOf(from) === digestOf(to);
}

/** What differs between the two rule sets, "2018 edition to 2024 edition"; what both have is said once. */
export function titleOf({ from, to }: Sides): string {
  if (areSame({ from, to })) return `${from.label}, compared with itself`;
  const isSameHouse = digestOf(from) === digestOf(to);
  // What was not set on either side is no part of the comparison.
  const edition =
    from.edition !== to.edition
      ? [`${editionWords(from)} to ${editionWords(to)}`]
      : from.edition === null
        ? []
        : [editionWords(from)];
  const [before, after] = [houseWords(ownOf(from), to), houseWords(ownOf(to), from)];
  const house = isSameHouse ? (ownOf(from).length > 0 ? [before] : []) : [`${before} to ${after}`];
  return [...edition, ...house].join(', ');
}

/** The two rule sets with what each has alone, then what both have: each pack is named once. */
export function ruleSetRows({ from, to }: Sides): FactRow[] {
  const [before, after] = [aloneIn(from, to), aloneIn(to, from)];
  const differs = before.length + after.length > 0;
  const side = (set: RuleSet, own: readonly ReportPack[], other: RuleSet) =>
    `${editionWords(set)}${differs ? `, ${houseWords(own, other)}` : ''}`;
  const both = from.packs.filter((pack) => isIn(pack, to));
  return [
    { label: 'From', value: side(from, before, to) },
    { label: 'To', value: side(to, after, from) },
    { label: 'Rules on both sides', value: packsText(both) },
  ];
}

function editionWords({ edition }: RuleSet): string {
  return edition === null ? 'each project’s own edition' : `${edition} edition`;
}

function houseWords(own: readonly ReportPack[], other: RuleSet): string {
  return own.length > 0
    ? `house rules ${listed(own.map((pack) => packName(pack, other)))}`
    : 'no house rules';
}

/** With a part of its digest where the other side has another file of that name and version. */
function packName({ name, version, sha256 }: ReportPack, other: RuleSet): string {
  const hasTwin = other.packs.some(
    (pack) => pack.name === name && pack.version === version && pack.sha256 !== sha256,
  );
  return `${name} ${version}${hasTwin ? ` (SHA-256 ${sha256.slice(0, DIGEST_SHOWN)})` : ''}`;
}

function ownOf({ packs }: RuleSet): ReportPack[] {
  return packs.filter(({ house }) => house);
}

function digestOf(set: RuleSet): string {
  return ownOf(set)
    .map(({ sha256 }) => sha256)
    .join();
}

function aloneIn(set: RuleSet, other: RuleSet): ReportPack[] {
  return ownOf(set).filter((pack) => !isIn(pack, other));
}

function isIn({ sha256 }: ReportPack, { packs }: RuleSet): boolean {
  return packs.some((pack) => pack.sha256 === sha256);
}
