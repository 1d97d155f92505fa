import { describe, expect, it } from 'vitest';
import { changesDocument, reasonText } from '../../src/firm/changes-document.ts';
import type { Changes, ProjectChange, Reason } from '../../src/firm/changes-schema.ts';
import { sharedReasons } from '../../src/firm/shared-reasons.ts';
import { documentHtml } from '../../src/record/document-html.ts';
import { documentMarkdown } from '../../src/record/record-markdown.ts';
import { documentText } from '../../src/record/record-text.ts';

const LONG = 'This sentence is as long as any that a rule has to say of a wall which it does not take.';

/** A rule's reason that differs in a figure. */
const over = (u: string): Reason => ({
  kind: 'rules-it-out',
  text: `The wall comes to U-${u}, where U-0.045 is the most that this rule takes of any wall.`,
  rule: 'house.u-factor',
  citation: 'invented for a test',
});
const verdict = (detail: string): Reason => ({
  kind: 'verdict',
  text: 'A title',
  before: 'kept',
  after: 'a caution',
  detail,
  rule: 'a.rule',
});

function project(name: string, why: readonly Reason[]): ProjectChange {
  const side = { climate_zone: '5A', admitted: 0, choice: null, closest: null };
  return {
    file: `${name}.json`,
    name,
    outcome: 'other-wall',
    before: side,
    after: side,
    parts_changed: [],
    figures: [],
    why: [...why],
  };
}

function shared(...whys: readonly (readonly Reason[])[]) {
  const projects = whys.map((why, i) => ({ number: i + 1, project: project(`p${i + 1}`, why) }));
  return sharedReasons(projects, reasonText).shared;
}

describe('reasons that several projects have', () => {
  it('are told once, those that decide first, with the projects of each figure', () => {
    const told = shared([verdict(LONG), over('0.056')], [verdict(LONG), over('0.049')], [over('0.056')]);
    expect(told.map(({ number, reason, projects }) => [number, reason.kind, projects])).toEqual([
      [1, 'rules-it-out', [1, 2, 3]],
      [2, 'verdict', [1, 2]],
    ]);
    expect(told[0]?.text).toBe(
      'The wall comes to U-[a], where U-0.045 is the most that this rule takes of any wall.',
    );
    expect(told[0]?.slots).toEqual([
      {
        mark: '[a]',
        values: [
          { value: '0.056', projects: [1, 3] },
          { value: '0.049', projects: [2] },
        ],
      },
    ]);
    expect(told[1]).toMatchObject({ text: reasonText(verdict(LONG)), slots: [] });
  });

  it('stay with their projects where they are short, or one project alone has them', () => {
    const wind: Reason = { kind: 'limit', text: 'Wind', before: '20 psf', after: '24 psf' };
    expect(shared([wind, over('0.056')], [wind])).toEqual([]);
  });

  it('are told each by itself where one rule says different sentences', () => {
    const told = shared([verdict(LONG)], [verdict(LONG)], [verdict(`Nothing of the kind: ${LONG} At all.`)]);
    expect(told.map(({ projects }) => projects)).toEqual([[1, 2]]);
  });
});

describe('the report of changes', () => {
  const set = { edition: '2018', label: 'x', packs: [] };
  const changes: Changes = {
    schema: 'cladwright-changes/1',
    tool_version: '0',
    from: set,
    to: { ...set, edition: '2024' },
    decisions_changed: 3,
    projects: [
      project('First', [over('0.056'), verdict(LONG)]),
      project('Second', [over('0.049'), verdict(LONG)]),
      project('Third', [{ ...verdict(`Only here: ${LONG}`), rule: 'other.rule' }]),
    ],
  };
  const document = changesDocument(changes);
  const plain = (markup: string) => markup.replace(/\\|<[^>]*>|\*\*/g, '').replace(/\s+/g, ' ');

  it.each([
    ['text', plain(documentText(document, 80))],
    ['Markdown', plain(documentMarkdown(document))],
    ['HTML', plain(documentHtml(document, 'What changed'))],
  ])('states each reason once, and the projects point to it: %s', (_, report) => {
    expect(report.split(LONG)).toHaveLength(3);
    expect(report.split('is the most that this rule takes')).toHaveLength(2);
    expect(report.split('Ruled out now: reason 1 (house.u-factor)')).toHaveLength(3);
    expect(report.split('Other verdict: reason 2 (a.rule)')).toHaveLength(3);
    expect(report).toContain('0.056: project 1; 0.049: project 2');
    expect(report).toContain(`Only here: ${LONG}`);
  });

  it('numbers the projects as its table does', () => {
    expect(documentText(document, 80)).toMatch(/ 2 {2}Second[\s\S]*^2\. Second \(Second\.json\)$/m);
  });

  it('keeps its table to 80 columns whatever the names', () => {
    for (const name of ['\u001b[31m'.repeat(20), '漢字'.repeat(40), 'N'.repeat(120)]) {
      const odd = changesDocument({ ...changes, projects: [project(name, [])] });
      expect(documentText(odd, 80)).toMatch(/^ {4}1 {2}\S.{0,60}… +another wall {2}none/m);
    }
  });

  it('says nothing of shared reasons where there are none, and says when both sides are the same', () => {
    const same = changesDocument({ ...changes, to: set, projects: changes.projects.slice(2) });
    expect(same.sections.map(({ id }) => id)).toEqual(['summary', 'decisions']);
    expect(documentText(same, 80)).toContain('Both sides are the same rules');
    expect(documentText(document, 80)).not.toContain('Both sides are the same rules');
  });
});
