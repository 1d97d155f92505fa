import { composeDocument } from './compose-document.ts';
import { documentHtml } from './document-html.ts';
import type { DecisionRecord } from './record-schema.ts';

/** The record as one self-contained page: its own style, no scripts, nothing fetched from anywhere. */
export function recordHtml(record: DecisionRecord): string {
  return documentHtml(composeDocument(record), 'Decision record');
}
