import { z } from 'zod';
import { capital } from '../../base/first-letter.ts';
import { listed } from '../../base/listed.ts';
import { parseInput } from '../../base/parse-input.ts';
import { provenanceSchema, provenanceText } from '../../base/provenance.ts';
import dataJson from '../data/standing-walls.json' with { type: 'json' };
import type { Clause } from './line-text.ts';
import type { Gathering, Reader, UnframedWall } from './reading.ts';

const words = z.array(z.string().min(3));
/** `words` mean it wherever they stand; `asked` where they are the whole answer to a question that it would answer. */
const named = { name: z.string().min(3), words: words.min(1), asked: words };

export const standingWallsSchema = z.strictObject({
  schema: z.literal('cladwright-standing-walls/1'),
  hazards: z.array(
    z.strictObject({
      id: z.enum(['lead', 'asbestos']),
      /** A house from this year on is taken to be free of it. */
      before_year: z.number().int(),
      source: z.string().min(5),
      provenance: provenanceSchema,
      says: z.string().endsWith('.'),
      remedy: z.string().endsWith('.'),
    }),
  ),
  claddings: z.array(z.strictObject({ ...named, hazards: z.array(z.enum(['lead', 'asbestos'])) })),
  unframed: z.array(z.strictObject({ ...named, may_have_studs: z.boolean() })),
});
type StandingWalls = z.output<typeof standingWallsSchema>;

type Named<T> = T & {
  readonly anywhere: RegExp;
  readonly whenAsked: RegExp | null;
};
type Loaded = {
  readonly hazards: StandingWalls['hazards'];
  readonly claddings: readonly Named<StandingWalls['claddings'][number]>[];
  readonly unframed: readonly Named<StandingWalls['unframed'][number]>[];
};

let loaded: Loaded | undefined;

/** The lists, with their words made into patterns once. */
function standingWalls(): Loaded {
  if (loaded) return loaded;
  const { hazards, claddings, unframed } = parseInput(standingWallsSchema, dataJson, 'standing-walls.json');
  loaded = { hazards, claddings: claddings.map(withPatterns), unframed: unframed.map(withPatterns) };
  return loaded;
}

function withPatterns<T extends { readonly words: readonly string[]; readonly asked: readonly string[] }>(
  entry: T,
): Named<T> {
  const { words: anywhere, asked } = entry;
  const around =
    "(?:(?:it'?s|it is|it has|they'?re|they are|there(?:'?s| is| are)|just|old|existing|an?|the|of) )*";
  return {
    ...entry,
    anywhere: new RegExp(`\\b(?:${anywhere.join('|')})(?![\\w-])`),
    whenAsked:
      asked.length > 0 ? new RegExp(`^${around}(?:${asked.join('|')})(?: (?:now|outside|on it))*$`) : null,
  };
}

/** What stands under, beside or in front of the wall, and what somebody wishes for. */
const OF_SOMETHING_ELSE =
  /\b(?:foundations?|basement|cellar|crawl ?space|footings?|chimney|fireplace|stem ?walls?|slab|patio|retaining|porch|fence|garden|neighbou?rs?'?)\b/;
const WISH =
  /\b(?:wants?|wish|prefer|would like|like (?:to|the look)|looks? like|i'd like|we'd like|instead|finish)\b/;
const REMOVAL = /\b(?:replac|remov|tear|take off|strip)/;
/** Words around an old cladding that add nothing to it. */
const BESIDE =
  /\b(?:(?:we|i) (?:want to|will|plan to|have to|need to) )?(?:replac\w+|remov\w+|(?:tear|tak|rip|pull|strip)\w*(?: off)?)\b|\b(?:has|had|over|on top(?: of)?|outside|on (?:it|them|the (?:outside|house|studs|walls?))|under(?:neath)?|beneath|covered|peeling|painted|nailed|original|off)\b/;

/** A cladding that stands already: it comes off, and what it may set free is said. */
export const readOldCladding: Reader = (clause, gathering) => {
  if (gathering.isAsked('finish') && !/\b(?:old|existing|now|has|original)\b/.test(clause.text)) return;
  if (WISH.test(clause.text) && !REMOVAL.test(clause.text)) return;
  const isAsked = gathering.isAsked('sheathing');
  for (const { name, anywhere, whenAsked } of standingWalls().claddings) {
    for (const said of takeNamed(clause, anywhere, isAsked ? whenAsked : null)) {
      gathering.oldCladdings.push({ words: said, name });
    }
  }
  if (gathering.oldCladdings.length > 0) clause.takeAll(BESIDE);
};

/** A wall without studs, which nothing that the program draws up can be hung on. */
export const readUnframed: Reader = (clause, gathering) => {
  if (OF_SOMETHING_ELSE.test(clause.text)) return;
  const isAsked = gathering.isAsked('framing') || gathering.isAsked('project');
  for (const { name, may_have_studs, anywhere, whenAsked } of standingWalls().unframed) {
    const [said] = takeNamed(clause, anywhere, isAsked ? whenAsked : null);
    if (said !== undefined) gathering.unframed ??= { name, words: said, mayHaveStuds: may_have_studs };
  }
};

function takeNamed(clause: Clause, anywhere: RegExp, whenAsked: RegExp | null): string[] {
  const found = takeAffirmed(clause, anywhere);
  return found.length > 0 || whenAsked === null ? found : takeAffirmed(clause, whenAsked);
}

/** What is denied is left standing: it is not there. */
function takeAffirmed(clause: Clause, pattern: RegExp): string[] {
  const start = clause.rest.search(pattern);
  if (
    start < 0 ||
    /\b(?:no|not|isn't|isnt|without|never)\s+(?:(?:an?|the|any)\s+)?$/.test(clause.rest.slice(0, start))
  )
    return [];
  return clause.takeAll(pattern).map((taken) => taken.words);
}

/** Says of what stands already what becomes of it, once the whole line is read. */
export function settleStandingWall(
  gathering: Gathering,
  isNew: boolean,
  isSheathingSaid: boolean,
): UnframedWall | null {
  tellOldCladdings(gathering, isNew, isSheathingSaid);
  const { unframed } = gathering;
  if (!unframed?.mayHaveStuds || !isNew) return unframed;
  gathering.notes.push(
    `"${unframed.words}": I take that for what stands already; the wall I ask about is new.`,
  );
  return null;
}

function tellOldCladdings(
  { oldCladdings, builtIn, notes, cautions, context }: Gathering,
  isNew: boolean,
  isSheathingSaid: boolean,
): void {
  if (oldCladdings.length === 0) return;
  const said = listed([...new Set(oldCladdings.map(({ words: one }) => `"${one}"`))]);
  if (isNew) {
    notes.push(
      `${said}: on a new wall nothing old has to come off. Wished for as the finish, it is asked for as "anything".`,
    );
    return;
  }
  const under =
    context.question === 'sheathing' && !isSheathingSaid
      ? 'What I ask for is the board under it, against the studs; "how can I tell" says where to look, and "don\'t know" is an answer.'
      : 'What counts is the board under it, against the studs.';
  notes.push(
    `${said}: that is the old cladding. It comes off before this wall goes on, and taking it off is not in my prices. ${under}`,
  );
  const { claddings, hazards } = standingWalls();
  for (const hazard of hazards) {
    const holding = claddings.filter((one) => one.hazards.includes(hazard.id)).map(({ name }) => name);
    const suspects = oldCladdings.filter(({ name }) => holding.includes(name)).map(({ words: one }) => one);
    const isSaid = suspects.some((one) => one.includes(hazard.id));
    const isTooYoung = builtIn !== null && builtIn >= hazard.before_year && !isSaid;
    if (suspects.length === 0 || isTooYoung) continue;
    cautions.push(
      `Caution (health), ${listed([...new Set(suspects)])}: ${hazard.says} (${capital(provenanceText(hazard.provenance))}.) What to do: ${hazard.remedy}`,
    );
  }
}
