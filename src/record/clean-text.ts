/**
 * One line of text that can neither steer a terminal nor turn the reading direction: white space becomes single spaces,
 * control and format characters (escape codes, direction marks, zero-width spaces, tags) are shown as `\u001b`, broken
 * surrogates become U+FFFD. Joiners inside non-Latin words and emoji stay, since the words need them.
 */
export function cleanText(text: string): string {
  return text
    .replace(/[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/g, '\ufffd')
    .replace(/\s+/gu, ' ')
    .replace(/(?<![^\u0000-\u007f])[\u200c\u200d]|(?![\u200c\u200d])[\p{Cc}\p{Cf}]/gu, codePoint)
    .trim();
}

function codePoint(character: string): string {
  const hex = (character.codePointAt(0) ?? 0).toString(16);
  return hex.length > 4 ? `\\u{${hex}}` : `\\u${hex.padStart(4, '0')}`;
}
