import { type Command, readCommand } from './command.ts';
import { termOf } from './glossary.ts';
import { normaliseLine, straighten } from './understanding/line-text.ts';

/** A question to the advisor inside a line that says something else as well, and the line without it. */
export type AskedInside = { readonly command: Command; readonly rest: string };

const HOW =
  /(?:^|(?<=[\s,;.?!-]))(?:and |but )?how (?:can|do|could|would|should) (?:i|we) (?:tell|know|find (?:that |this |it )?out|check)(?: that| this| it)?(?=\s*(?:[?!.,;]|$))\??/;
const WHAT =
  /(?:^|(?<=[,;.?!] ))(?:and |but )?what(?:'?s| is| are) (?:an? |the )?([\p{L} -]+?)(?=\s*(?:[?!.,;]|$))\??/u;

/** Finds "how can I tell" and "what is kraft" beside an answer; null where a line asks nothing, or nothing else is in it. */
export function askedInside(text: string): AskedInside | null {
  const line = normaliseLine(text);
  const how = HOW.exec(line);
  const what = how ? null : WHAT.exec(line);
  const found = how ?? (what?.[1] !== undefined && termOf(what[1]) ? what : null);
  if (!found) return null;
  const command = readCommand(found[0].trim().replace(/^(?:and|but) /, ''));
  const said = straighten(text);
  const rest = `${said.slice(0, found.index)}, ${said.slice(found.index + found[0].length)}`
    .replace(/^[\s,;.?!-]+|[\s,;.?!-]+$/g, '')
    .trim();
  return command && rest !== '' ? { command, rest } : null;
}
