import namesJson from '../../advice/data/names.json' with { type: 'json' };
import type { Reader } from './reading.ts';

/** Boards by the everyday words that "why not" knows them by. */
const BOARDS = namesJson.names.filter(({ part }) => part === 'insulation');
const NAMES = BOARDS.flatMap(({ words }) => words).sort((a, b) => b.length - a.length);
/** "Rockwool", "rock-wool" and "rock wool" are one name. */
const patternOf = (name: string) => name.replaceAll(' ', '[- ]?');
const NAME = NAMES.map(patternOf).join('|');
const BEHIND = '(?:[- ](?:boards?|insulation|panels?|sheets?))*';
const OUTSIDE = '(?: (?:on the )?(?:outside|exterior|outboard)| over (?:the )?(?:sheathing|wall|studs))';
const AGAINST =
  "(?:no|not|without|avoid|hate|never|nothing but|(?:don'?t|do not|won'?t|will not) (?:want|like|use|have|take))";
const FOR =
  "(?:want|wants|prefer|love|use|like|'d like|would like|(?:would |'d )?rather(?: have| use)?|insist on)";
const WHO = '(?:(?:i|we)(?: really| only| just)? ?)?';
const LINK = '(?: (?:to (?:use|have|go with)|any|the|some|an?|only|more))*';

const WISH = new RegExp(
  `\\b${WHO}(${AGAINST}|${FOR})${LINK} (${NAME})\\b${BEHIND}${OUTSIDE}?|\\b(${NAME})\\b${BEHIND}${OUTSIDE}`,
);

/** A wish for or against a board outside, which is what the program works out: told how to ask about it. */
export const readBoardWish: Reader = (clause, gathering) => {
  // Between the studs the same materials are an answer, unless they are said to be outside.
  const isOutside = new RegExp(OUTSIDE).test(clause.text);
  if (gathering.isAsked('cavity') && !isOutside) return;
  const taken = clause.take(WISH);
  if (!taken) return;
  const [verb, wished, placed] = taken.groups;
  const said = wished ?? placed ?? '';
  const named = NAMES.find((name) => new RegExp(`^${patternOf(name)}$`).test(said)) ?? said;
  const isAgainst = verb !== undefined && new RegExp(`^${AGAINST}$`).test(verb);
  const about = isAgainst ? otherThan(named) : named;
  gathering.notes.push(
    `"${taken.words}": which board goes outside is what I work out; no question settles it beforehand. "why not ${about}" tells what stands against it and what would put it first.`,
  );
};

/** A board that is not one of those named, for an example. */
function otherThan(named: string): string {
  const ids = BOARDS.filter(({ words }) => words.includes(named)).flatMap((one) => one.ids);
  return BOARDS.find((one) => !one.ids.some((id) => ids.includes(id)))?.words[0] ?? named;
}
