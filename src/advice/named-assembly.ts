import type { Candidate } from '../assembly/candidates.ts';
import type { Catalogue } from '../assembly/catalogue.ts';
import type { Cladding } from '../assembly/catalogue-schema.ts';
import type { InsulationBuild } from '../assembly/insulation-builds.ts';
import { inches } from '../base/inches.ts';
import { Refusal, showValue } from '../base/refusal.ts';
import { hearNames, nearestPhrases, type Part, vocabularyOf } from './assembly-names.ts';

/** What somebody named: for each part the entries that it may be; parts that weren't named are free. */
export type NamedAssembly = {
  readonly parts: ReadonlyMap<Part, ReadonlySet<string>>;
  /** Builds of the insulation and thickness named. */
  readonly builds: readonly InsulationBuild[];
  /** Whether a thickness or a number of layers was named. */
  readonly isSized: boolean;
  /** What was understood, in words. */
  readonly words: string;
  /** What had to be taken otherwise than said. */
  readonly notes: readonly string[];
};

/** Claddings over boards that the program itself asks about: any detail of them, and nobody's words. */
export function ofCladdings(
  claddings: readonly Cladding[],
  builds: readonly InsulationBuild[],
): NamedAssembly {
  const parts = new Map([['cladding' as const, new Set(claddings.map(({ id }) => id))]]);
  return { parts, builds, isSized: false, words: '', notes: [] };
}

const FIELD = 'why-not';
const LONGEST = 300;
const EXAMPLE = 'for example "three-coat stucco over 4 in. polyiso"';

/**
 * Reads which assembly is meant, out of words or out of an id as the answers give it.
 *
 * @throws Refusal for words that name nothing in the catalogue, with the nearest that do
 */
export function namedAssembly(text: string, catalogue: Catalogue): NamedAssembly {
  if (text.length > LONGEST) throw refusal(text, `Name an assembly in at most ${LONGEST} characters.`);
  return text.includes('/') && /^[a-z0-9.+/-]+$/.test(text.trim())
    ? byId(text.trim(), catalogue)
    : byWords(text, catalogue);
}

/** Whether a wall is one of those named. */
export function isNamed({ candidate }: { readonly candidate: Candidate }, named: NamedAssembly): boolean {
  return (
    named.builds.includes(candidate.build) &&
    has(named, 'cladding', candidate.cladding.id) &&
    has(named, 'barrier', candidate.barrier.id) &&
    has(named, 'buck', candidate.buck.id) &&
    has(named, 'retarder', candidate.inside.retarder?.id ?? 'lining-unknown')
  );
}

export function has({ parts }: NamedAssembly, part: Part, id: string): boolean {
  return parts.get(part)?.has(id) ?? true;
}

function byId(id: string, catalogue: Catalogue): NamedAssembly {
  const [cladding = '', build, retarder, barrier, buck] = id.split('/');
  const idOf = (one: InsulationBuild) => `${one.insulation.id}-${one.boards_in.join('+')}`;
  const builds =
    build === undefined ? catalogue.builds : catalogue.builds.filter((one) => idOf(one) === build);
  const isKnown = (list: readonly { readonly id: string }[], one: string | undefined) =>
    one === undefined || list.some((entry) => entry.id === one);
  if (
    builds.length === 0 ||
    !isKnown(catalogue.claddings, cladding) ||
    !(retarder === 'lining-unknown' || isKnown(catalogue.retarders, retarder)) ||
    !isKnown(catalogue.barriers, barrier) ||
    !isKnown(catalogue.bucks, buck)
  )
    throw refusal(id, `No wall has this id. Copy one from an answer, or name the wall in words, ${EXAMPLE}.`);
  const parts = new Map<Part, ReadonlySet<string>>([['cladding', new Set([cladding])]]);
  if (build !== undefined) parts.set('insulation', new Set(builds.map(({ insulation }) => insulation.id)));
  if (retarder !== undefined) parts.set('retarder', new Set([retarder]));
  if (barrier !== undefined) parts.set('barrier', new Set([barrier]));
  if (buck !== undefined) parts.set('buck', new Set([buck]));
  return {
    parts,
    builds,
    isSized: build !== undefined,
    words: understood(parts, builds, build !== undefined, catalogue),
    notes: [],
  };
}

function byWords(text: string, catalogue: Catalogue): NamedAssembly {
  const size = readSize(text);
  const vocabulary = vocabularyOf(catalogue);
  const { ids, contradictions, strange } = hearNames(size.rest, vocabulary);
  const [word] = strange;
  if (word !== undefined) {
    const near = nearestPhrases(word, vocabulary);
    const meant = near.length > 0 ? ` Did you mean ${near.map((n) => `"${n}"`).join(' or ')}?` : '';
    throw refusal(
      text,
      `Nothing here is called ${showValue(word)}.${meant} Name cladding, insulation and thickness, ${EXAMPLE}.`,
    );
  }
  const [part] = contradictions;
  if (part !== undefined) throw refusal(text, `No ${part} here is all that at once. Name one, ${EXAMPLE}.`);
  if (ids.size === 0 && size.total_in === null)
    throw refusal(text, `Name cladding, insulation or thickness, ${EXAMPLE}.`);
  const ofKind = catalogue.builds.filter((build) => ids.get('insulation')?.has(build.insulation.id) ?? true);
  const { builds, notes } = sized(ofKind, size);
  const isSized = size.total_in !== null || size.layers !== null;
  return { parts: ids, builds, isSized, words: understood(ids, builds, isSized, catalogue), notes };
}

type Size = { readonly total_in: number | null; readonly layers: number | null; readonly rest: string };

const COUNTS: Readonly<Record<string, number>> = {
  one: 1,
  single: 1,
  two: 2,
  double: 2,
  three: 3,
  triple: 3,
};
const LENGTH = String.raw`(\d+(?:\.\d+)?(?:[\s-]+\d+\/\d+)?|\d+\/\d+)\s*-?\s*(?:inch(?:es)?|in\b\.?|")`;

/** Thickness and layers said in the text, and the text without them. */
function readSize(text: string): Size {
  const layered = new RegExp(
    String.raw`\(?\b(one|single|two|double|three|triple|[123])\s+layers?\b(?:\s+(?:of\s+)?${LENGTH})?\s*\)?`,
    'i',
  );
  const layers = layered.exec(text);
  // "two layers of building paper" names a barrier.
  const isOfBoards = layers !== null && !/^\s*of\s+(?!\d)/i.test(text.slice(layers.index + layers[0].length));
  const withoutLayers = isOfBoards ? text.replace(layered, ' ') : text;
  const each_in = isOfBoards && layers?.[2] ? readInches(layers[2]) : null;
  const count = isOfBoards && layers?.[1] ? (COUNTS[layers[1].toLowerCase()] ?? Number(layers[1])) : null;
  const length = new RegExp(LENGTH, 'i');
  const thickness = length.exec(withoutLayers);
  const total_in = thickness?.[1]
    ? readInches(thickness[1])
    : each_in !== null && count !== null
      ? each_in * count
      : null;
  return { total_in, layers: count, rest: withoutLayers.replace(length, ' ') };
}

function readInches(text: string): number {
  return text
    .split(/[\s-]+/)
    .map((part) => {
      const [top = 0, bottom = 1] = part.split('/').map(Number);
      return top / bottom;
    })
    .reduce((sum, part) => sum + part, 0);
}

/** The builds of that size; the nearest thickness where nobody sells that one. */
function sized(
  builds: readonly InsulationBuild[],
  { total_in, layers }: Size,
): { builds: readonly InsulationBuild[]; notes: string[] } {
  const layered = layers === null ? builds : builds.filter((build) => build.boards_in.length === layers);
  const pool = layered.length > 0 ? layered : builds;
  const notes =
    layered.length > 0 ? [] : [`It is not laid in ${layers} layers here; any number of layers was taken.`];
  if (total_in === null) return { builds: pool, notes };
  const away = (build: InsulationBuild) => Math.abs(build.thickness_in - total_in);
  const nearest = Math.min(...pool.map(away));
  const found = pool.filter((build) => away(build) <= nearest + 1e-9);
  if (nearest <= SAME_SIZE_IN) return { builds: found, notes };
  const sizes = [...new Set(found.map((build) => inches(build.thickness_in)))].join(' or ');
  return {
    builds: found,
    notes: [...notes, `No boards on the market make ${inches(total_in)} in.; ${sizes} in. was taken.`],
  };
}

/** A sixteenth more or less is the same board. */
const SAME_SIZE_IN = 1 / 16;

function understood(
  parts: ReadonlyMap<Part, ReadonlySet<string>>,
  builds: readonly InsulationBuild[],
  isSized: boolean,
  catalogue: Catalogue,
): string {
  const labels = (list: readonly { readonly id: string; readonly label: string }[], part: Part) =>
    list.filter(({ id }) => parts.get(part)?.has(id)).map(({ label }) => label);
  const cladding = parts.has('cladding')
    ? labels(catalogue.claddings, 'cladding').join(', or ')
    : 'any cladding';
  const sizes = [...new Set(builds.map(({ thickness_in }) => thickness_in))].sort((a, b) => a - b);
  const size = isSized ? `${sizes.map(inches).join(' or ')} in. of ` : '';
  const boards = parts.has('insulation')
    ? labels(catalogue.insulations, 'insulation').join(' or ')
    : 'any insulation';
  const others = [
    ...labels(catalogue.barriers, 'barrier'),
    ...labels(catalogue.retarders, 'retarder'),
    ...labels(catalogue.bucks, 'buck'),
  ];
  return [`${cladding} over ${size}${boards}`, ...others].join(', ');
}

function refusal(value: string, accepted: string): Refusal {
  return new Refusal({ field: FIELD, value: showValue(value), accepted });
}
