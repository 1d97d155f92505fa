import { describeIssue, type Issue } from '../../base/refusal.ts';
import type { CheckedRecord } from './check-record.ts';
import { doubtWords } from './check-text.ts';

/** A file that was to be checked: what came of it, or why it can't be read. */
export type CheckedFile = { readonly file: string } & (
  | { readonly checked: CheckedRecord }
  | { readonly refused: readonly Issue[] }
);

export type CheckSummary = {
  readonly records: number;
  /** Those of `same` and `figures_changed`. */
  readonly hold: number;
  readonly same: number;
  readonly figures_changed: number;
  readonly different_decision: number;
  readonly altered: number;
  readonly unreadable: number;
  readonly passed_over: number;
};

/** Every record counts in one group only, so that the groups add up to the records. */
export function summaryOf(files: readonly CheckedFile[], passed_over: number): CheckSummary {
  const groups = files.map(groupOf);
  const count = (group: Group) => groups.filter((one) => one === group).length;
  return {
    records: files.length,
    hold: files.filter((one) => 'checked' in one && one.checked.holds).length,
    same: count('same'),
    figures_changed: count('figures'),
    different_decision: count('other'),
    altered: count('altered'),
    unreadable: count('unreadable'),
    passed_over,
  };
}

/** What somebody has to act on stands first. */
const GROUPS = {
  other: 'A different decision today',
  altered: 'Altered after it was saved: trust none of its figures',
  unreadable: 'Can’t be read',
  figures: 'The same decision, changed figures',
  same: 'Still the same decision',
} as const;
type Group = keyof typeof GROUPS;

/** Many checked records as lines, by what came of them; lines are not wrapped. */
export function checkListLines(files: readonly CheckedFile[], passed_over: number): string[] {
  const sections = Object.entries(GROUPS).flatMap(([group, heading]) => {
    const here = files.filter((one) => groupOf(one) === group);
    return here.length === 0 ? [] : [`${heading} (${here.length})`, ...here.flatMap(entryLines), ''];
  });
  return [...sections, summaryLine(summaryOf(files, passed_over))];
}

function groupOf(one: CheckedFile): Group {
  if ('refused' in one) return 'unreadable';
  const { outcome, is_altered, is_unexplained } = one.checked;
  // Nothing that an altered record says of its decision can be trusted.
  if (is_altered || is_unexplained) return 'altered';
  if (outcome === 'different-decision') return 'other';
  return outcome === 'figures-changed' ? 'figures' : 'same';
}

function entryLines(one: CheckedFile): string[] {
  if ('refused' in one) return [`  - ${one.file}`, ...one.refused.map((issue) => `    ${whyUnread(issue)}`)];
  const { decision, outcome, status } = one.checked;
  const doubt = doubtWords(one.checked);
  const isOther = outcome === 'different-decision';
  return [
    `  - ${one.file} (${status})`,
    ...(doubt === null ? [] : [`    ${doubt}`]),
    `    ${isOther ? 'Then: ' : ''}${decision.then.title}`,
    ...(isOther ? [`    Now: ${decision.now.title}`] : []),
  ];
}

/** What is wrong with the file as a whole needs no field: the file stands above it. */
function whyUnread(issue: Issue): string {
  return issue.field === 'record' ? issue.accepted : describeIssue(issue);
}

function summaryLine(sum: CheckSummary): string {
  const parts = [
    `${sum.same} the same`,
    `${sum.figures_changed} with changed figures`,
    `${sum.different_decision} decided differently today`,
    `${sum.altered} altered`,
    ...(sum.unreadable > 0 ? [`${sum.unreadable} unreadable`] : []),
  ];
  const passed =
    sum.passed_over > 0
      ? ` ${countOf(sum.passed_over, 'file')} passed over (no records, or replaced by later ones).`
      : '';
  return `${countOf(sum.records, 'record')}: ${parts.join(', ')}.${passed} --json has the details.`;
}

function countOf(count: number, what: string): string {
  return `${count} ${what}${count === 1 ? '' : 's'}`;
}
