import { Refusal, showValue } from '../base/refusal.ts';
import { asciiText } from '../conversation/visible-text.ts';
import { type ReportFile, saveReport } from '../firm/save-report.ts';
import { documentHtml } from '../record/document-html.ts';
import type { RecordDocument } from '../record/record-document.ts';
import { documentMarkdown } from '../record/record-markdown.ts';
import { documentText } from '../record/record-text.ts';
import { letInterruptsIn } from './interrupts.ts';
import { jsonDocument, textWidth, writeResult } from './output.ts';
import { saveFolder } from './save-folder.ts';

export const REPORT_FORMS = ['text', 'markdown', 'csv', 'html', 'json'] as const;
export type ReportForm = (typeof REPORT_FORMS)[number];

export type ReportFlags = {
  readonly as?: string;
  readonly json?: true;
  readonly save?: string;
  readonly ascii?: true;
};

/** How a report is to be shown and where to be saved; read before the work begins. */
export type ReportOutlet = {
  readonly form: ReportForm;
  readonly dir: string | undefined;
  readonly ascii: boolean;
};

/** A report in all that its forms are made of. */
export type Report = {
  /** The kind, said before the title: "Wall standard". */
  readonly what: string;
  /** The same as the last word of the files' names. */
  readonly word: string;
  readonly document: RecordDocument;
  readonly csv: string;
  readonly data: unknown;
};

/** @throws Refusal for an unknown form, or two different ones */
export function readOutlet({ as, json, save, ascii }: ReportFlags): ReportOutlet {
  const form = REPORT_FORMS.find((known) => known === (as ?? (json ? 'json' : 'text')));
  if (!form || (json && form !== 'json')) {
    throw new Refusal({
      field: '--as',
      value: showValue(as),
      accepted: form
        ? 'Give either "--json" or another form, not both.'
        : `Give one of ${REPORT_FORMS.join(', ')}.`,
    });
  }
  return { form, dir: saveFolder(save), ascii: ascii ?? false };
}

/** Saves the report where that was asked for, then writes it to standard output in the form asked for. */
export async function putOut(report: Report, { form, dir, ascii }: ReportOutlet): Promise<void> {
  await letInterruptsIn();
  if (dir !== undefined) {
    const { what, word, document } = report;
    const files: ReportFile[] = [
      { end: 'json', text: `${jsonDocument(report.data)}\n` },
      { end: 'md', text: documentMarkdown(titled(what, document)) },
      { end: 'csv', text: report.csv },
      { end: 'html', text: documentHtml(document, what) },
    ];
    const paths = await saveReport(dir, document.title, word, files);
    process.stderr.write(paths.map((path) => `saved ${path}\n`).join(''));
  }
  await writeResult(inForm(report, form, ascii));
}

function inForm({ what, document, csv, data }: Report, form: ReportForm, ascii: boolean): string {
  switch (form) {
    case 'json':
      return jsonDocument(data);
    case 'csv':
      return csv;
    case 'html':
      return documentHtml(document, what);
    case 'markdown':
      return documentMarkdown(titled(what, document));
    case 'text': {
      const text = documentText(titled(what, document), textWidth());
      return ascii ? asciiText(text) : text;
    }
  }
}

/** The page has a place of its own for the kind of document; the other forms say it in the title. */
function titled(what: string, document: RecordDocument): RecordDocument {
  return { ...document, title: `${what}: ${document.title}` };
}
