import { z } from 'zod';
import { PROVENANCES } from '../base/provenance.ts';
import { priceBookSchema } from '../brief/price-book.ts';
import { CODE_EDITIONS, CREW_SKILLS } from '../brief/scenario.ts';

export const CONCERNS = [
  'energy',
  'vapour',
  'rain',
  'structure',
  'fire',
  'openings',
  'ground-and-termite',
  'stucco-practice',
  'buildability',
  'budget',
  'safety',
] as const;
export type Concern = (typeof CONCERNS)[number];

/** What a rule says when its conditions hold. When they don't, the verdict is `pass`; when they can't be decided, `undecided`. */
export const RULE_VERDICTS = ['forbid', 'caution', 'prefer', 'undecided'] as const;
export type RuleVerdict = (typeof RULE_VERDICTS)[number];
/** What a rule can say about a wall that it applies to. */
export type Verdict = 'pass' | RuleVerdict;

/** The operators of the engine that rules may use; anything else is refused at load. */
export const OPERATORS = [
  'equal',
  'notEqual',
  'in',
  'notIn',
  'lessThan',
  'lessThanInclusive',
  'greaterThan',
  'greaterThanInclusive',
] as const;

/** How sure a rule's source is; a firm's own rule has the firm for a source. */
export const RULE_PROVENANCES = [...PROVENANCES, 'house'] as const;
export type RuleProvenance = (typeof RULE_PROVENANCES)[number];

const factValueSchema = z.union([z.string(), z.number(), z.boolean()]);
/** A fact's value; null means not known, and makes every rule that needs it undecided. */
export type FactValue = z.output<typeof factValueSchema> | null;
export type Facts = Readonly<Record<string, FactValue>>;

const leafSchema = z.strictObject({
  fact: z.string().min(1),
  operator: z.enum(OPERATORS),
  value: z.union([
    factValueSchema,
    z.array(factValueSchema).min(1),
    z.strictObject({ fact: z.string().min(1) }),
  ]),
});
export type Leaf = z.output<typeof leafSchema>;
export type Condition = Leaf | { all: Condition[] } | { any: Condition[] } | { not: Condition };

const conditionSchema: z.ZodType<Condition> = z.lazy(() =>
  z.union([
    leafSchema,
    z.strictObject({ all: z.array(conditionSchema).min(1) }),
    z.strictObject({ any: z.array(conditionSchema).min(1) }),
    z.strictObject({ not: conditionSchema }),
  ]),
);

const SENTENCE = 'Give a sentence in plain words.';

const EDITIONS = `Give a list of editions out of ${CODE_EDITIONS.join(', ')}, each in quotes.`;
const EXAMPLE_NAME = 'Name the example in a few words, three letters at least.';
const ONE_EXAMPLE = 'Give one example at least.';
const SOURCE =
  'Say where it stands, for example "IRC R703.7" or "House rule of the firm": five letters at least.';
const FIRM = 'Give a name in quotes, 1 to 80 letters.';

const exampleSchema = z.strictObject({
  name: z.string(EXAMPLE_NAME).min(3, EXAMPLE_NAME),
  /** Just the facts that the rule reads; null for one that is not known. */
  facts: z.record(z.string(), factValueSchema.nullable()),
});

export const ruleSchema = z.strictObject({
  id: z
    .string('Give an id like "energy.wall-maximum-u".')
    .regex(/^[a-z0-9]+(-[a-z0-9]+)*(\.[a-z0-9]+(-[a-z0-9]+)*)+$/, 'Give an id like "energy.wall-maximum-u".'),
  title: z.string('Give a title in a few words.').min(5, 'Give a title in a few words.'),
  editions: z.array(z.enum(CODE_EDITIONS, EDITIONS), EDITIONS).min(1, EDITIONS),
  citation: z.strictObject({
    /** Standard and section, or "common practice, no source", or "judgement". */
    text: z.string(SOURCE).min(5, SOURCE),
    provenance: z.enum(RULE_PROVENANCES),
  }),
  /** Where the rule has something to say at all. Elsewhere it is silent: neither pass nor fail. */
  applies_when: z.strictObject({ all: z.array(conditionSchema).min(1) }).optional(),
  conditions: z.union([
    z.strictObject({ all: z.array(conditionSchema).min(1) }),
    z.strictObject({ any: z.array(conditionSchema).min(1) }),
  ]),
  verdict: z.enum(RULE_VERDICTS),
  /** Plain words for a builder; `{fact.id}` is replaced by the value with its unit. */
  reason: z.string(SENTENCE).min(10, SENTENCE),
  /** Said when the rule applies and is kept; optional. */
  pass_reason: z.string(SENTENCE).min(10, SENTENCE).optional(),
  /** What would admit the wall, or what to do about it. */
  remedy: z.string(SENTENCE).min(5, SENTENCE),
  /** Why a rule stays although no wall of the shipped catalogue trips it, or although it speaks of every wall. */
  reach: z
    .strictObject({ fires: z.enum(['never', 'always']), why: z.string(SENTENCE).min(10, SENTENCE) })
    .optional(),
  examples: z.strictObject({
    fires: z.array(exampleSchema, ONE_EXAMPLE).min(1, ONE_EXAMPLE),
    silent: z.array(exampleSchema, ONE_EXAMPLE).min(1, ONE_EXAMPLE),
    undecided: z.array(exampleSchema).optional(),
  }),
});
export type Rule = z.output<typeof ruleSchema>;

/** Words of a firm that say why, and that the answer repeats. */
const why = z.string(SENTENCE).min(10, SENTENCE).max(400, 'Give at most 400 characters.');

/** Kinds of product that a house pack can fix, forbid or prefer. */
export const PRODUCT_CATEGORIES = ['cladding', 'insulation', 'barrier', 'retarder', 'buck'] as const;
export type ProductCategory = (typeof PRODUCT_CATEGORIES)[number];

const ids = z
  .array(z.string('Name a product.'), 'Give a list of products.')
  .min(1, 'Name at least one product.')
  .optional();

const productSchema = z
  .strictObject({
    category: z.enum(PRODUCT_CATEGORIES, { error: `Give one of ${PRODUCT_CATEGORIES.join(', ')}.` }),
    only: ids,
    forbid: ids,
    prefer: ids,
    reason: why,
  })
  .refine(
    ({ only, forbid, prefer }) => [only, forbid, prefer].filter((list) => list !== undefined).length === 1,
    'Give one of "only", "forbid" and "prefer", and one alone.',
  );
export type ProductWish = z.output<typeof productSchema>;

const tightenSchema = z.union(
  [
    z.strictObject({
      limit: z.string('Name a limit.'),
      to: z.number('Give a number.'),
      reason: why,
    }),
    z.strictObject({
      rule: z.string('Name a rule.'),
      verdict: z.literal('forbid', 'Give "forbid": a house rule makes a caution stricter, never milder.'),
      reason: why,
    }),
  ],
  'Give {"limit","to","reason"} to move a limit, or {"rule","verdict":"forbid","reason"} to turn a caution into a ban.',
);
export type Tightening = z.output<typeof tightenSchema>;

export const RULES_SCHEMA = 'cladwright-rules/1';

const PACK_NAME = 'Give a name of small letters, figures and dashes, for example "our-house".';
const PACK_VERSION = 'Give a version in quotes, for example "1.0.0".';

/** One file below `rules/`: a pack of rules about one concern. */
export const rulePackSchema = z.strictObject({
  schema: z.literal(RULES_SCHEMA, `Give "${RULES_SCHEMA}".`),
  pack: z.string(PACK_NAME).regex(/^[a-z0-9]+(-[a-z0-9]+)*$/, PACK_NAME),
  version: z.string(PACK_VERSION).regex(/^\d+\.\d+\.\d+$/, PACK_VERSION),
  concern: z.enum(CONCERNS, `Give one of ${CONCERNS.join(', ')}.`),
  rules: z.array(ruleSchema, 'Give a list of rules.').min(1, 'Give one rule at least.'),
});
export type RulePack = z.output<typeof rulePackSchema>;

/** A firm's own pack: rules of its own, or one of the other parts at least. */
export const housePackSchema = rulePackSchema.extend({
  rules: z.array(z.unknown(), 'Give a list of rules.').default([]),
  /** How the answer calls the firm. */
  firm: z.string(FIRM).min(1, FIRM).max(80, FIRM).optional(),
  tighten: z.array(tightenSchema, 'Give a list.').default([]),
  products: z.array(productSchema, 'Give a list.').default([]),
  defaults: z
    .strictObject({
      crew_skill: z.enum(CREW_SKILLS, { error: `Give one of ${CREW_SKILLS.join(', ')}.` }).optional(),
    })
    .optional(),
  prices: priceBookSchema.optional(),
});
export type HousePack = z.output<typeof housePackSchema>;

/** `rules/facts.json`: every fact a rule may read. */
export const factDictionarySchema = z.strictObject({
  schema: z.literal('cladwright-facts/1'),
  facts: z.array(
    z.strictObject({
      id: z.string().min(3),
      type: z.enum(['number', 'text', 'yes-no']),
      unit: z.string().optional(),
      /** For text facts with a closed list of values. */
      values: z.array(z.string()).optional(),
      /** Completes "… is": used in messages and by `rules explain`. */
      meaning: z.string().min(5),
      /** True when the fact can be null in a real answer. */
      can_be_unknown: z.boolean().optional(),
    }),
  ),
});
export type FactDictionary = z.output<typeof factDictionarySchema>;

/** What one rule says about one wall. */
export type RuleOutcome = {
  readonly rule: Rule;
  readonly concern: Concern;
  readonly pack: string;
  readonly verdict: Verdict;
  /** The rule's reason with figures filled in (its pass reason when passed); for an undecidable rule, what is missing. */
  readonly text: string;
  readonly remedy: string;
  /** The citation as it must be shown: a remembered or sourceless one says so. */
  readonly citation: string;
  /** True for a rule of the firm's own pack, and for a shipped one that speaks here because the firm tightened it. */
  readonly house: boolean;
  /** The firm's pack that makes it speak; null where the shipped rules do. */
  readonly house_pack: string | null;
  /** Ids of the unknown facts that left the rule undecided; empty when it was decided. */
  readonly missing: readonly string[];
  /** Facts that the rule read, for the trace. */
  readonly facts: Facts;
};
