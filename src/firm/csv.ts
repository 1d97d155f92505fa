import { cleanText } from '../record/clean-text.ts';

export type CsvValue = string | number | boolean | null;

/**
 * A table as CSV: comma, CRLF after every line, a field quoted where it holds a comma, quote or line end. Null is an
 * empty field. Text that a spreadsheet would take for a formula gets an apostrophe before it; numbers stay numbers.
 *
 * Source: RFC 4180, section 2; OWASP, "CSV Injection", for the first characters of a formula.
 */
export function csvText(head: readonly string[], rows: readonly (readonly CsvValue[])[]): string {
  return [head, ...rows].map((row) => `${row.map(field).join(',')}\r\n`).join('');
}

function field(value: CsvValue): string {
  if (value === null) return '';
  if (typeof value === 'number') {
    if (!Number.isFinite(value)) throw new Error(`CSV can't hold ${value}`);
    return `${value}`;
  }
  const text = guarded(cleanText(`${value}`));
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}

/** Full-width forms count too: some spreadsheets read them as their ASCII twins. */
function guarded(text: string): string {
  return /^[=+\-@\t\r\uff1d\uff0b\uff0d\uff20]/.test(text) ? `'${text}` : text;
}
