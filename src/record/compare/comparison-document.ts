import { capital } from '../../base/first-letter.ts';
import { fieldWords } from '../../brief/field-words.ts';
import { numberText } from '../figure-text.ts';
import { HEADLINES } from '../headline-figures.ts';
import { type ListItem, listOf, present, type RecordDocument, tableOf } from '../record-document.ts';
import type { Comparison, FigureRow } from './compare-answers.ts';

const NOTHING = 'not said';

/** Two answers side by side, as a document: what differs stands first. */
export function comparisonDocument(found: Comparison): RecordDocument {
  const { a, b, answers, assumed, parts, figures, cautions } = found;
  const sides = [{ title: 'What' }, { title: 'A' }, { title: 'B' }];
  const differing = figures.filter((row) => row.a !== row.b);
  const headNames = new Set(HEADLINES.map(({ what }) => what));
  const heads = differing.filter(({ what }) => headNames.has(what)).length;
  const sections = [
    {
      id: 'decisions',
      heading: 'Decisions',
      blocks: present([
        {
          kind: 'facts',
          rows: [
            { label: 'A', value: `${a.title} (${a.state})` },
            { label: '', value: a.decision.title },
            { label: 'B', value: `${b.title} (${b.state})` },
            { label: '', value: b.decision.title },
          ],
        },
        tableOf(
          'Parts of the two walls that differ',
          sides,
          parts
            .filter((part) => part.a !== part.b)
            .map((part) => [part.what, part.a ?? 'none', part.b ?? 'none']),
        ),
      ]),
    },
    {
      id: 'answers',
      heading: 'Answers that differ',
      blocks: present([
        tableOf(
          'Answers that differ',
          sides,
          answers.differ.map((row) => [row.question, row.a ?? NOTHING, row.b ?? NOTHING]),
        ),
        answers.differ.length === 0 ? { kind: 'paragraph', text: 'Both were answered alike.' } : null,
        listOf([
          ...assumed.only_a.map((field) => ({ lead: 'Assumed in A only', text: fieldWords(field) })),
          ...assumed.only_b.map((field) => ({ lead: 'Assumed in B only', text: fieldWords(field) })),
        ]),
      ]),
    },
    {
      id: 'figures',
      heading: 'Figures',
      blocks: present([
        figureTable('What is asked first; what is alike is left out', differing.slice(0, heads)),
        figureTable('Further figures that differ', differing.slice(heads)),
        figures.every((row) => row.a === row.b)
          ? { kind: 'paragraph', text: 'All figures are alike.' }
          : null,
      ]),
    },
    {
      id: 'cautions',
      heading: 'Cautions',
      blocks: present([
        { kind: 'paragraph', text: `${cautions.both} cautions stand in both.` },
        listOf([...cautions.only_a.map(item('Only in A')), ...cautions.only_b.map(item('Only in B'))]),
      ]),
    },
  ];
  return {
    title: `${a.title} and ${b.title}`,
    head: [
      { label: 'A', value: a.file },
      { label: 'B', value: b.file },
      { label: 'Decision', value: found.is_same_decision ? 'the same wall' : 'different walls' },
    ],
    notice: 'A comparison of two answers, not a design. Each record’s own cautions hold.',
    sections: sections.filter((section) => section.blocks.length > 0),
    appendix: [],
    appendixNote: '',
  };
}

function figureTable(caption: string, rows: readonly FigureRow[]) {
  return tableOf(
    caption,
    [
      { title: 'Figure' },
      { title: 'A', isNumber: true },
      { title: 'B', isNumber: true },
      { title: 'B - A', isNumber: true },
    ],
    rows.map(figureRow),
  );
}

function figureRow({ what, unit, a, b, difference }: FigureRow): string[] {
  const sign = difference !== null && difference > 0 ? '+' : '';
  return [
    unit === '' ? capital(what) : `${capital(what)}, ${unit}`,
    numberText(a),
    numberText(b),
    difference === null ? '' : `${sign}${numberText(difference)}`,
  ];
}

function item(lead: string) {
  return ({ text, rule }: { text: string; rule: string | null }): ListItem =>
    rule === null ? { lead, text } : { lead, text, aside: rule };
}
