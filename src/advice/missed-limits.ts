import { leavesOf, otherFact } from '../rulebook/condition-tree.ts';
import type { FactSheets } from '../rulebook/fact-sheets.ts';
import { factColumn } from '../rulebook/fact-slot.ts';
import type { Decided } from '../rulebook/rule-memo.ts';
import type { Leaf, Rule } from '../rulebook/rule-schema.ts';
import { RULE_STATES } from '../rulebook/three-valued.ts';
import type { VerdictTable } from '../rulebook/verdicts.ts';

/** What each wall misses, in the order of the walls. */
export type MissedLimits = {
  /** How many limits it breaks. Two rules that hold the wall against one figure are one limit. */
  readonly count: Uint16Array;
  /** By what share of each limit the wall misses it, added up: 0.02 for 4.08 in. where 4 may be added. */
  readonly share: Float64Array;
};

/** A figure and what it may be at most, or must be at least; both as facts, or the limit as a number. */
type Measure = {
  readonly fact: string;
  readonly limit: string | number;
  readonly kind: 'most' | 'least';
};

/** What is behind a fact that only says whether a limit is kept. */
const MEASURED: Readonly<Record<string, Measure>> = {
  'energy.complies': { fact: 'thermal.u_factor', limit: 'energy.max_u_factor', kind: 'most' },
  'vapour.class_iii_ci_met': {
    fact: 'insulation.ci_r',
    limit: 'vapour.min_ci_r_class_iii',
    kind: 'least',
  },
  'vapour.class_ii_ci_met': { fact: 'insulation.ci_r', limit: 'vapour.min_ci_r_class_ii', kind: 'least' },
  'buck.verdict': { fact: 'buck.utilisation', limit: 1, kind: 'most' },
};

/** A wish that is not met, a class that is not permitted: missed as a whole. */
const WHOLE = 1;

const KINDS: Readonly<Record<string, Measure['kind']>> = {
  greaterThan: 'most',
  greaterThanInclusive: 'most',
  lessThan: 'least',
  lessThanInclusive: 'least',
};

/** How many limits each wall breaks, and by how far: columns for all walls, without an object for any. */
export function missedLimits(verdicts: VerdictTable): MissedLimits {
  const { sheets } = verdicts;
  const count = new Uint16Array(sheets.count);
  const share = new Float64Array(sheets.count);
  const byLimit = new Map<string, { readonly measure: Measure | null; readonly decided: Decided[] }>();
  for (const { rule, decided } of verdicts.forbidding()) {
    const measure = measureOf(rule, sheets);
    const key = measure?.fact ?? rule.id;
    const limit = byLimit.get(key) ?? { measure, decided: [] };
    limit.decided.push(decided);
    byLimit.set(key, limit);
  }
  for (const { measure, decided } of byLimit.values()) {
    const isBroken = brokenBy(decided, sheets.count);
    const { at, misses } = missesOf(measure, sheets);
    for (let i = 0; i < count.length; i++) {
      if (isBroken[i] === 0) continue;
      count[i] = (count[i] ?? 0) + 1;
      share[i] = (share[i] ?? 0) + (misses[at[i] ?? 0] ?? WHOLE);
    }
  }
  return { count, share };
}

/** 1 for every wall on which one of the rules fires. */
function brokenBy(decided: readonly Decided[], walls: number): Uint8Array {
  const fires = RULE_STATES.indexOf('fires');
  const isBroken = new Uint8Array(walls);
  for (const { joint, states } of decided) {
    const { at } = joint;
    for (let i = 0; i < walls; i++) if (states[at[i] ?? 0] === fires) isBroken[i] = 1;
  }
  return isBroken;
}

/** By what share a wall that breaks a limit misses it: for each class of walls that figure and limit can't tell apart. */
function missesOf(
  measure: Measure | null,
  sheets: FactSheets,
): { readonly at: Uint32Array; readonly misses: Float64Array } {
  const facts = measure ? [measure.fact, ...(typeof measure.limit === 'string' ? [measure.limit] : [])] : [];
  const slots = [...new Set(facts.map((id) => sheets.slotOf(id)))].sort((a, b) => a - b);
  const joint = sheets.joint(slots);
  const misses = new Float64Array(joint.count).fill(WHOLE);
  if (!measure) return { at: joint.at, misses };
  const column = (id: string) => {
    const slot = sheets.slotOf(id);
    const values = factColumn(sheets.slots[slot] ?? [], id);
    const parts = joint.classOf[slots.indexOf(slot)];
    return (i: number) => values[parts?.[i] ?? -1];
  };
  const { limit, kind } = measure;
  const valueAt = column(measure.fact);
  const limitAt = typeof limit === 'number' ? () => limit : column(limit);
  for (let i = 0; i < misses.length; i++) {
    const [value, most] = [valueAt(i), limitAt(i)];
    if (typeof value !== 'number' || typeof most !== 'number' || most <= 0) continue;
    const miss = kind === 'most' ? value / most - 1 : 1 - value / most;
    // Broken by something else than this figure: an open end of a table, a check without a use.
    if (miss >= 0) misses[i] = miss;
  }
  return { at: joint.at, misses };
}

/** What a rule holds a wall against; null where that is no figure of the wall. */
function measureOf({ conditions }: Rule, sheets: FactSheets): Measure | null {
  const leaves = leavesOf(conditions);
  const measured = leaves.find(({ fact }) => fact in MEASURED);
  if (measured) return MEASURED[measured.fact] ?? null;
  const own = ownComparison(leaves);
  const kind = own && KINDS[own.operator];
  if (!own || !kind) return null;
  // The place and the job are the same for every wall: a climate zone is not missed by a share of its number.
  if (sheets.shape.parts[sheets.slotOf(own.fact)]?.count === 1) return null;
  const limit = otherFact(own) ?? (typeof own.value === 'number' ? own.value : null);
  return limit === null ? null : { fact: own.fact, limit, kind };
}

/** The comparison of a rule that is nothing but one with a number or another figure. */
function ownComparison(leaves: readonly Leaf[]): Leaf | null {
  const [only, ...more] = leaves;
  return only && more.length === 0 && only.operator in KINDS ? only : null;
}
