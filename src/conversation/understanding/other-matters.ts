import { z } from 'zod';
import { parseInput } from '../../base/parse-input.ts';
import { FIELD_IDS } from '../answers.ts';
import dataJson from '../data/other-matters.json' with { type: 'json' };
import type { WindowReading } from '../windows.ts';
import type { Clause } from './line-text.ts';
import { NUMBER } from './numbers.ts';
import { saysWhenBuilt } from './read-job.ts';
import type { Context, Gathering } from './reading.ts';

const says = z.string().endsWith('.');

export const otherMattersSchema = z.strictObject({
  schema: z.literal('cladwright-other-matters/1'),
  /** Figures that the program has no use for; `{n}` stands for a number. */
  asides: z.array(
    z.strictObject({ name: z.string().min(3), patterns: z.array(z.string().min(3)).min(1), says }),
  ),
  /** What a clause may be about so that its figures are not those of the wall. */
  matters: z.array(
    z.strictObject({
      name: z.string().min(3),
      words: z.string().min(3),
      /** Words beside which it is about the wall all the same. */
      unless: z.string().min(3),
      turns: z.array(z.enum(FIELD_IDS)).min(1),
      /** Holds for what follows in the line as well. */
      reachesOn: z.boolean().optional(),
      says: says.or(z.string().endsWith('?')),
    }),
  ),
});

type Matter = {
  readonly words: RegExp;
  readonly unless: RegExp;
  readonly turns: z.output<typeof otherMattersSchema>['matters'][number]['turns'];
  readonly reachesOn: boolean;
  readonly says: string;
};
type OtherMatters = {
  readonly asides: readonly { readonly name: string; readonly pattern: RegExp; readonly says: string }[];
  readonly matters: readonly Matter[];
};

let loaded: OtherMatters | undefined;

const A_NUMBER = `(?<![\\w.$/-])(?:${NUMBER})`;

function otherMatters(): OtherMatters {
  if (loaded) return loaded;
  const { asides, matters } = parseInput(otherMattersSchema, dataJson, 'other-matters.json');
  loaded = {
    asides: asides.flatMap(({ name, patterns, says }) =>
      patterns.map((pattern) => ({
        name,
        pattern: new RegExp(pattern.replaceAll('{n}', () => A_NUMBER)),
        says,
      })),
    ),
    matters: matters.map((matter) => ({
      ...matter,
      words: new RegExp(matter.words),
      unless: new RegExp(matter.unless),
      reachesOn: matter.reachesOn === true,
    })),
  };
  return loaded;
}

/** Takes out figures that the program has no use for, before anybody else may take them for an answer. */
export function takeAsides(clause: Clause, gathering: Gathering): void {
  for (const { name, pattern, says } of otherMatters().asides) {
    // The year that a house is from tells that it stands already.
    if (name === 'year' && saysWhenBuilt(clause.text)) continue;
    for (const { words } of clause.takeAll(pattern)) {
      gathering.unclear.push({ words, hint: says, isOfNoUse: true });
    }
  }
}

/** What is said of a clause with a figure of something else, where it could be taken for what is asked. */
export function matterOf(text: string, { open }: Context): string | null {
  const matter = otherMatters().matters.find(
    ({ words, unless, turns }) =>
      turns.some((field) => open.includes(field)) && words.test(text) && !unless.test(text),
  );
  return matter?.says ?? null;
}

/** How far the readers had come before a clause. */
export type Mark = Pick<Gathering, 'budgetTotal' | 'either'> & {
  readonly findings: number;
  readonly early: number;
};

/**
 * Takes facts back that a clause gave of something else: the R-value of the attic, the price of the roof.
 *
 * @param before  the clauses before it in the line
 * @returns the window that the clause told of, unless that was something else too
 */
export function turnAway(
  clause: Clause,
  gathering: Gathering,
  mark: Mark,
  window: WindowReading | null,
  before: readonly string[],
): WindowReading | null {
  let kept = window;
  for (const { words, unless, turns, reachesOn, says } of otherMatters().matters) {
    const isSaid = words.test(clause.text) || (reachesOn && before.some((one) => words.test(one)));
    if (!isSaid || unless.test(clause.text)) continue;
    const isTurned = (field: (typeof FIELD_IDS)[number]) => turns.includes(field);
    const facts = gathering.findings.splice(mark.findings);
    const early = gathering.early.splice(mark.early);
    const { budgetTotal, either } = gathering;
    gathering.findings.push(...facts.filter(({ field }) => !isTurned(field)));
    gathering.early.push(...early.filter(({ field }) => !isTurned(field)));
    let isAny = facts.some(({ field }) => isTurned(field)) || early.some(({ field }) => isTurned(field));
    if (isTurned('budget_usd_per_ft2') && budgetTotal !== mark.budgetTotal) {
      gathering.budgetTotal = mark.budgetTotal;
      isAny = true;
    }
    if (either !== mark.either && either?.findings.some(({ field }) => isTurned(field))) {
      gathering.either = mark.either;
      isAny = true;
    }
    if (isTurned('windows') && kept?.window.width_in !== undefined) {
      kept = null;
      isAny = true;
    }
    if (!isAny) continue;
    gathering.puzzle(clause.text, says);
    clause.takeAll(/[^\u0001]+/);
  }
  return kept;
}
