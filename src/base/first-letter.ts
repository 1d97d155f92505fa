/** The text with a capital first letter, as at the beginning of a sentence. */
export function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** The text ended as a sentence: an abbreviation at its end ("in.") brings its own period. */
export function ended(text: string): string {
  return text.endsWith('.') ? text : `${text}.`;
}

/** The text with a small first letter, as inside a sentence. */
export function lower(text: string): string {
  return text.charAt(0).toLowerCase() + text.slice(1);
}
