import { visibleText } from '../conversation/visible-text.ts';

const MOST_NAMED = 3;

/** What standard error says of files in folders that are something else; nothing where there are none. */
export function passedOverText(paths: readonly string[]): string {
  if (paths.length === 0) return '';
  const named = paths.slice(0, MOST_NAMED).map((path) => visibleText(path));
  const more = paths.length > named.length ? [`${paths.length - named.length} more`] : [];
  return `Passed over, no scenarios: ${[...named, ...more].join(', ')}.\n`;
}
