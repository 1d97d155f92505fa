import { Refusal, showValue } from '../base/refusal.ts';
import { findJsonFault } from './json-fault.ts';

const LONGEST_EXCERPT = 24;

/**
 * Parses JSON text from outside.
 *
 * @param text  the text; one byte-order mark at its start is passed over
 * @param name  how messages call it, for example a file name
 * @param isOneLine  it is one line of something longer: messages tell the column only
 * @throws Refusal with line and column for text that is no JSON, gives a key twice, or nests too deeply
 */
export function parseJsonText(text: string, name: string, isOneLine = false): unknown {
  const plain = text.replace(/^\ufeff/, '');
  const fault = findJsonFault(plain);
  if (!fault) return JSON.parse(plain);
  const before = plain.slice(0, fault.at).split('\n');
  const column = [...(before.at(-1) ?? '')].length + 1;
  throw new Refusal({
    field: isOneLine ? `${name}, column ${column}` : `${name}, line ${before.length}, column ${column}`,
    value: excerpt(plain.slice(fault.at)),
    accepted: fault.accepted,
  });
}

function excerpt(rest: string): string {
  if (rest.trim() === '') return 'the end of the text';
  const [line = ''] = rest.split('\n');
  const start = [...line.slice(0, 2 * LONGEST_EXCERPT)].slice(0, LONGEST_EXCERPT).join('');
  return showValue(start.trimEnd() || '\n');
}
