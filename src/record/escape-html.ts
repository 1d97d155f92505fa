import { cleanText } from './clean-text.ts';

const ENTITIES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

/** Text for HTML content and quoted attributes: one line, control and direction characters shown, markup escaped. */
export function escapeHtml(text: string): string {
  return cleanText(text).replace(/[&<>"']/g, (mark) => ENTITIES[mark] ?? mark);
}
