import { z } from 'zod';
import { inches } from '../base/inches.ts';
import { parseInput, valueAt } from '../base/parse-input.ts';
import { type Issue, Refusal, showValue } from '../base/refusal.ts';
import type { Report } from './check-conditions.ts';
import type { FactIndex } from './fact-dictionary.ts';
import { formatFact } from './format-fact.ts';
import { didYouMean } from './nearest-name.ts';

const LIMIT_ID = /^[a-z0-9]+(-[a-z0-9]+)*$/;

const limitSchema = z.strictObject({
  id: z.string().regex(LIMIT_ID, 'Give an id like "drainage-gap".'),
  /** Completes "the limit on …". */
  meaning: z.string().min(5),
  value: z.number(),
  /** As the fact that is held against it has it; left out for a bare number. */
  unit: z.string().optional(),
  /** Which way a firm may move it. */
  stricter: z.enum(['lower', 'higher']),
});
export type Limit = z.output<typeof limitSchema>;

const limitsSchema = z.strictObject({
  schema: z.literal('cladwright-limits/1'),
  limits: z.array(limitSchema).min(1),
});

/** Limits that have a name, so that a firm can tighten one wherever rules read it. */
export class LimitIndex {
  readonly #byId: ReadonlyMap<string, Limit>;

  constructor(limits: readonly Limit[]) {
    this.#byId = new Map(limits.map((limit) => [limit.id, limit]));
  }

  get all(): Limit[] {
    return [...this.#byId.values()];
  }

  find(id: string): Limit | undefined {
    return this.#byId.get(id);
  }

  unknownLimit(id: string): string {
    const near = didYouMean(id, this.#byId.keys());
    return `Name a limit of limits.json: ${[...this.#byId.keys()].join(', ')}.${near}`;
  }

  /** The same limits with some moved. */
  with(values: ReadonlyMap<string, number>): LimitIndex {
    return new LimitIndex(
      this.all.map((limit) => ({ ...limit, value: values.get(limit.id) ?? limit.value })),
    );
  }
}

/**
 * Checks the table of named limits.
 *
 * @param data  the parsed file
 * @param name  how messages call it
 * @throws Refusal for a bad shape or a doubled id
 */
export function parseLimits(data: unknown, name: string): LimitIndex {
  const { limits } = parseInput(limitsSchema, data, name);
  const seen = new Set<string>();
  const issues: Issue[] = [];
  limits.forEach(({ id }, i) => {
    if (seen.has(id)) {
      issues.push({
        field: `${name}: limits[${i}].id`,
        value: showValue(id),
        accepted: 'Give every limit an id of its own.',
      });
    }
    seen.add(id);
  });
  if (issues.length > 0) throw new Refusal(issues);
  return new LimitIndex(limits);
}

/** A limit's value as a sentence shows it: `3/16 in.`, `144 ft²`, `1.23`. */
export function limitText({ unit = '' }: Pick<Limit, 'unit'>, value: number): string {
  if (unit === 'in.') return `${inches(value)} in.`;
  const entry = { id: 'limit', type: 'number', unit, meaning: 'a limit' } as const;
  for (let extra = 0; extra < 4; extra++) {
    const text = formatFact(entry, value, extra);
    if (Number.parseFloat(text.replace(/^[^\d.-]*/, '').replaceAll(',', '')) === value) return text;
  }
  return formatFact(entry, value, 4);
}

const TEXT_KEYS = ['title', 'reason', 'pass_reason', 'remedy'] as const;
const TREE_KEYS = ['applies_when', 'conditions'] as const;
const PLACEHOLDER = /\{limit\.([^{}]*)\}/g;

/** One comparison of a rule with a named limit. */
export type LimitUse = {
  readonly limit: string;
  readonly operator: string;
  /** Whether an odd number of "not" stands around it. */
  readonly isNegated: boolean;
};

export type Resolved = {
  readonly raw: unknown;
  /** In reading order. */
  readonly limits: readonly LimitUse[];
};

/**
 * Puts figures where a rule names limits: `{"limit": "drainage-gap"}` in a comparison, `{limit.drainage-gap}` in a text.
 * What is no rule yet (a text, a list) comes back as it was, for the schema to refuse.
 */
export function resolveLimits(raw: unknown, limits: LimitIndex, facts: FactIndex, report: Report): Resolved {
  if (typeof raw !== 'object' || raw === null || Array.isArray(raw)) return { raw, limits: [] };
  const uses: LimitUse[] = [];
  const out: Record<string, unknown> = { ...raw };
  for (const key of TREE_KEYS) {
    const tree = valueAt(raw, [key]);
    if (tree !== undefined) out[key] = resolveTree(tree, [key], { limits, facts, report, uses });
  }
  for (const key of TEXT_KEYS) {
    const text = valueAt(raw, [key]);
    if (typeof text !== 'string') continue;
    out[key] = text.replace(PLACEHOLDER, (whole, id: string, offset: number) => {
      const limit = limits.find(id);
      if (!limit) {
        report([key], whole, limits.unknownLimit(id));
        return '';
      }
      const shown = limitText(limit, limit.value);
      // "in." at the end of a sentence brings its full stop along.
      const tail = text.slice(offset + whole.length);
      return shown.endsWith('.') && tail.startsWith('.') ? shown.slice(0, -1) : shown;
    });
  }
  return { raw: out, limits: uses };
}

type Resolving = {
  readonly limits: LimitIndex;
  readonly facts: FactIndex;
  readonly report: Report;
  readonly uses: LimitUse[];
};

/** Files nest at most forty levels (`readDataFile`), so recursion is bounded. */
function resolveTree(node: unknown, path: readonly PropertyKey[], with_: Resolving): unknown {
  if (Array.isArray(node)) return node.map((inner: unknown, i) => resolveTree(inner, [...path, i], with_));
  if (typeof node !== 'object' || node === null) return node;
  const entries = Object.entries(node).map(([key, inner]: [string, unknown]) => {
    const here = [...path, key];
    const name = key === 'value' ? valueAt(inner, ['limit']) : undefined;
    if (name === undefined) return [key, resolveTree(inner, here, with_)];
    return [key, figureOf(name, node, here, with_)];
  });
  return Object.fromEntries(entries);
}

function figureOf(name: unknown, leaf: object, path: readonly PropertyKey[], with_: Resolving): unknown {
  const limit = typeof name === 'string' ? with_.limits.find(name) : undefined;
  if (!limit) {
    with_.report([...path, 'limit'], name, with_.limits.unknownLimit(String(name)));
    return 0;
  }
  const fact = valueAt(leaf, ['fact']);
  const entry = typeof fact === 'string' ? with_.facts.find(fact) : undefined;
  if (entry && (entry.unit ?? '') !== (limit.unit ?? '')) {
    with_.report(
      [...path, 'limit'],
      name,
      `The limit is in "${limit.unit ?? ''}", ${entry.id} is in "${entry.unit ?? ''}"; compare figures of one unit.`,
    );
  }
  with_.uses.push({
    limit: limit.id,
    operator: String(valueAt(leaf, ['operator'])),
    isNegated: path.filter((key) => key === 'not').length % 2 === 1,
  });
  return limit.value;
}
