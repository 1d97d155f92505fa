import { z } from 'zod';
import { inches } from '../../base/inches.ts';
import { listed } from '../../base/listed.ts';
import { parseInput } from '../../base/parse-input.ts';
import { provenanceSchema, provenanceText } from '../../base/provenance.ts';
import type { FieldId } from '../answers.ts';
import dataJson from '../data/vague-answers.json' with { type: 'json' };
import type { Clause } from './line-text.ts';
import { LENGTH, readLengthIn } from './numbers.ts';
import type { Gathering, Reader } from './reading.ts';

const sourced = { source: z.string().min(5), provenance: provenanceSchema };
const words = z.array(z.string().min(3)).min(1);

export const vagueAnswersSchema = z.strictObject({
  schema: z.literal('cladwright-vague-answers/1'),
  roof_height: z.strictObject({
    ...sourced,
    storey_ft: z.number().positive(),
    to_middle_of_roof_ft: z.number().positive(),
    most_storeys: z.number().positive(),
  }),
  batts: z.strictObject({
    ...sourced,
    words,
    sold: z.array(
      z.strictObject({ bay_in: z.number().positive(), r: z.array(z.number().positive()).min(1) }),
    ),
  }),
  fills: z.array(
    z.strictObject({
      ...sourced,
      name: z.string().min(3),
      words,
      r_per_in: z.strictObject({ usual: z.number(), from: z.number(), to: z.number() }),
    }),
  ),
  look: z.array(
    z.strictObject({
      question: z.enum(['cavity', 'retarder']),
      words,
      /** Those of the words that mean this whatever is being asked. */
      sure: words,
      hint: z.string().endsWith('?'),
    }),
  ),
});
type VagueAnswers = z.output<typeof vagueAnswersSchema>;

let loaded: VagueAnswers | undefined;

function vagueAnswers(): VagueAnswers {
  loaded ??= parseInput(vagueAnswersSchema, dataJson, 'vague-answers.json');
  return loaded;
}

/** How high the roof of so many storeys may be, in words that call it a guess; null for more than it is fit for. */
export function roofOfStoreys(
  storeys: number,
): { readonly height_ft: number; readonly basis: string } | null {
  const { storey_ft, to_middle_of_roof_ft, most_storeys } = vagueAnswers().roof_height;
  if (storeys <= 0 || storeys > most_storeys) return null;
  return {
    height_ft: storeys * storey_ft + to_middle_of_roof_ft,
    basis: `${storey_ft} ft a storey and ${to_middle_of_roof_ft} ft to the middle of the roof, a rough guess of ours`,
  };
}

type Vague = {
  readonly patterns: readonly string[];
  readonly hint: (depth_in: number | null) => string;
  /** Says nothing of the material: gives way to a word that does. */
  readonly isGeneral: boolean;
};

/** What lies outside the studs goes by the same names. */
const OUTSIDE_THE_STUDS = /\b(?:c\.?i\.?|continuous|exterior|outside|outboard|rigid|boards?)\b/;

/** What is between the studs without its R-value: what to look for, with the figures that go by the name. */
export const readFill: Reader = (clause, gathering) => {
  const { batts, fills } = vagueAnswers();
  if (!gathering.isAsked('cavity')) {
    const names = [...fills, batts].flatMap((fill) => fill.words);
    if (!OUTSIDE_THE_STUDS.test(clause.text)) {
      takeEarly(clause, gathering, [names, sureWords('cavity')], 'cavity_insulation_r');
    }
    return;
  }
  takeVague(clause, gathering, [
    ...fills.map((fill) => ({
      patterns: fill.words,
      hint: (depth: number | null) => fillHint(fill, depth),
      isGeneral: false,
    })),
    { patterns: batts.words, hint: (depth) => battHint(batts, depth), isGeneral: false },
    ...lookFor('cavity'),
  ]);
  const depth = clause.take(new RegExp(`^${LENGTH}(?: thick| deep)?$`));
  if (depth) gathering.vague ??= { words: depth.words, hint: DEPTH_HINT, isGeneral: true };
};

const DEPTH_HINT = 'That is how deep it is. What fills it: batts, cellulose, mineral wool, foam?';

/** A lining that says nothing about vapour. */
export const readLining: Reader = (clause, gathering) => {
  if (gathering.isAsked('retarder')) takeVague(clause, gathering, lookFor('retarder'));
  else takeEarly(clause, gathering, [sureWords('retarder')], 'interior_vapour_retarder');
};

function sureWords(question: 'cavity' | 'retarder'): string[] {
  return vagueAnswers().look.flatMap((one) => (one.question === question ? one.sure : []));
}

/** Keeps what is named beside another question for its own; the more telling names come first. */
function takeEarly(
  clause: Clause,
  gathering: Gathering,
  names: readonly (readonly string[])[],
  field: FieldId,
): void {
  const [first] = names.flatMap((patterns) => clause.take(namePattern(patterns)) ?? []);
  if (first) gathering.early.push({ field, words: first.words });
}

/** A name with the depth before it, if one is said. */
function namePattern(patterns: readonly string[]): RegExp {
  const name = `\\b(?:${patterns.join('|')})\\b`;
  return new RegExp(
    `(?:\\b(?:about|around|roughly) )?(${LENGTH})(?: thick| deep)?(?: of)?(?: \\w+){0,2}? ${name}|${name}`,
  );
}

function lookFor(question: 'cavity' | 'retarder'): Vague[] {
  const ofQuestion = vagueAnswers().look.filter((one) => one.question === question);
  return ofQuestion.map(({ words: patterns, hint }) => ({ patterns, hint: () => hint, isGeneral: true }));
}

function takeVague(clause: Clause, gathering: Gathering, kinds: readonly Vague[]): void {
  for (const { patterns, hint, isGeneral } of kinds) {
    const taken = clause.take(namePattern(patterns));
    if (!taken) continue;
    const said_in = readLengthIn(taken.groups[0] ?? '');
    const { 'framing.depth_in': studs_in } = gathering.context.answers;
    const depth_in = said_in ?? (typeof studs_in === 'number' ? studs_in : null);
    if (gathering.vague === null || (gathering.vague.isGeneral && !isGeneral)) {
      gathering.vague = { words: taken.words, hint: hint(depth_in), isGeneral };
    }
  }
}

/** Batts are made a little thicker than the bay that they are for. */
const NEAR_IN = 0.75;

function battHint({ sold, provenance }: VagueAnswers['batts'], depth_in: number | null): string {
  const fitting = sold.filter(({ bay_in }) => depth_in !== null && Math.abs(bay_in - depth_in) <= NEAR_IN);
  const rows = (fitting.length > 0 ? fitting : sold).map(
    ({ bay_in, r }) =>
      `for a bay of ${inches(bay_in)} in. as ${listed(
        r.map((one) => `R-${one}`),
        'or',
      )}`,
  );
  return `Batts are sold ${rows.join(', ')} (${provenanceText(provenance)}); the facing or the label says which. Which R-value is it?`;
}

function fillHint(
  { name, r_per_in, provenance }: VagueAnswers['fills'][number],
  depth_in: number | null,
): string {
  const { usual, from, to } = r_per_in;
  const whole =
    depth_in === null
      ? 'times the depth that it fills'
      : `over ${inches(depth_in)} in., filled to the full, about R-${Math.round(usual * depth_in)}`;
  return `An inch of ${name} comes to about R-${usual}, from ${from} to ${to} (${provenanceText(provenance)}); ${whole}. Which R-value do you take?`;
}
