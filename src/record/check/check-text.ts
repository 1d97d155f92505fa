import { capital } from '../../base/first-letter.ts';
import { figureText, numberText } from '../figure-text.ts';
import { HEADLINES } from '../headline-figures.ts';
import type { BasisChanges, PieceChange } from './basis-changes.ts';
import type { CheckedRecord } from './check-record.ts';
import type { FigureChange } from './figure-changes.ts';

/** More changes than this are counted; the JSON has them all. */
const MOST_SHOWN = 10;

const OUTCOME_WORDS: Readonly<Record<CheckedRecord['outcome'], string>> = {
  same: 'still the same decision',
  'figures-changed': 'same decision, changed figures',
  'different-decision': 'a different decision today',
};

/** Whether somebody changed the file, in a few words; null where nobody did. */
export function doubtWords({ is_altered, is_unexplained }: CheckedRecord): string | null {
  if (is_altered) return 'ALTERED after it was saved';
  return is_unexplained ? 'ALTERED, digest and all: nothing else explains the figures' : null;
}

function verdictWords(checked: CheckedRecord): string {
  const doubt = doubtWords(checked);
  return doubt === null ? OUTCOME_WORDS[checked.outcome] : `${OUTCOME_WORDS[checked.outcome]}; ${doubt}`;
}

/** Everything about one checked record, as paragraphs and lists; lines are not wrapped. */
export function checkLines(checked: CheckedRecord): string[] {
  const { decision, changed, figures, verdicts, old_decision_today } = checked;
  return [
    `${checked.title} (revision ${checked.revision}, ${checked.status}, ${checked.created.slice(0, 10)})`,
    `${capital(verdictWords(checked))}.`,
    ...doubtLines(checked),
    `  Then: ${decision.then.title}`,
    ...(checked.outcome === 'different-decision' ? [`  Now:  ${decision.now.title}`] : []),
    ...listed('Why not the old decision', old_decision_today?.why ?? []),
    ...listed('What changed in rules, data and program', basisLines(changed, checked)),
    ...listed(`Figures that changed (${figures.length})`, figureLines(figures)),
    ...listed(
      `Verdicts of rules that changed (${verdicts.length})`,
      capped(
        verdicts.map(({ rule, then, now }) => `${rule}: ${then ?? 'not judged'}, now ${now ?? 'not judged'}`),
      ),
    ),
  ];
}

function doubtLines({ is_altered, is_unexplained }: CheckedRecord): string[] {
  if (is_altered) {
    return [
      'The file no longer fits its digest: somebody changed it after it was saved. Trust none of its figures before finding out who changed what.',
    ];
  }
  if (is_unexplained) {
    return [
      'The rules, data and program that the record names are those of today, and still its figures are others: somebody changed figures and wrote a new digest.',
    ];
  }
  return [];
}

function listed(heading: string, items: readonly string[]): string[] {
  return items.length === 0 ? [] : [`${heading}:`, ...items.map((item) => `  - ${item}`)];
}

function figureLines(figures: readonly FigureChange[]): string[] {
  const byPath = new Map(figures.map((figure) => [figure.path, figure]));
  const heads = HEADLINES.flatMap(({ path, what, unit }) => {
    const figure = byPath.get(path);
    if (!figure) return [];
    byPath.delete(path);
    return [`${what}: ${figureText(figure.then, unit)}, now ${figureText(figure.now, unit)}`];
  });
  const rest = [...byPath.values()].map(
    ({ path, then, now }) => `${path}: ${numberText(then)}, now ${numberText(now)}`,
  );
  return capped([...heads, ...rest]);
}

function basisLines(changed: BasisChanges, { verdicts }: CheckedRecord): string[] {
  const { tool_version, program, packs, rules, tables, catalogue, prices } = changed;
  const moved = new Set(verdicts.map(({ rule }) => rule));
  return [
    ...(tool_version ? [`program: version ${tool_version.then}, now ${tool_version.now}`] : []),
    ...(program === true && !tool_version ? ['program: the same version, built from other source'] : []),
    ...(program === null
      ? ['the record names whole rule packs only: it was written before single rules, data and prices were']
      : []),
    ...packs.map(({ name, change, version_then, version_now }) =>
      change === 'changed'
        ? `pack ${name}: changed (version ${version_then}, now ${version_now})`
        : change === 'new'
          ? `pack ${name}: new since then`
          : `pack ${name}: judged then and is not loaded now; a house pack is named with --house-rules`,
    ),
    // Rules whose verdict moved come first: they are what somebody looks for.
    ...pieces(
      'rule',
      [...(rules ?? [])].sort((a, b) => Number(moved.has(b.name)) - Number(moved.has(a.name))),
    ),
    ...pieces('table', tables ?? []),
    ...pieces('catalogue entry', catalogue ?? []),
    ...pieces('price', prices ?? []),
  ];
}

const CHANGE_WORDS = { changed: 'changed', gone: 'is gone', new: 'is new' } as const;

function pieces(what: string, changes: readonly PieceChange[]): string[] {
  return capped(changes.map(({ name, change }) => `${what} ${name} ${CHANGE_WORDS[change]}`));
}

function capped(items: readonly string[]): string[] {
  const more = items.length - MOST_SHOWN;
  return more > 0 ? [...items.slice(0, MOST_SHOWN), `and ${more} more; --json has them all`] : [...items];
}
