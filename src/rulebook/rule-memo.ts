import type { Joint } from '../base/partitions.ts';
import { pairClass } from './fact-classes.ts';
import { type ColumnClasses, type ColumnUse, type FactColumns, slotsOf } from './fact-columns.ts';
import type { FactSheets } from './fact-sheets.ts';
import { RuleEngine } from './rule-engine.ts';
import type { Facts, Rule } from './rule-schema.ts';
import { RULE_STATES, type RuleState } from './three-valued.ts';

/** Past this many remembered classes a rule's memory is emptied; it is only ever a speed-up. */
const MOST_REMEMBERED = 50_000;

/** Classes by column; columns that no rule asked for are left out. */
export type Classified = readonly (ColumnClasses | undefined)[];

/** A rule's state for every kind of sheet that differs in what the rule reads, as codes of `RULE_STATES`. */
export type Decided = { readonly joint: Joint; readonly states: Uint8Array };

/** One rule with its own engine, which it asks once for each class of facts that the rule can tell apart. */
export class RuleMemo {
  readonly rule: Rule;
  readonly #engine: RuleEngine;
  readonly #mostRemembered: number;
  readonly #uses: readonly ColumnUse[];
  /** Columns that the rule needs classified. */
  readonly columns: readonly number[];
  /** Whether every combination of classes fits into one exact number. */
  readonly #numericKeys: boolean;
  readonly #remembered = new Map<number | string, RuleState>();
  /** Where there are few combinations: the state of each, by its number; 0 is not remembered. Much faster than a map. */
  readonly #dense: Uint8Array | null;

  /**
   * @param columns         made for a set of rules that includes this one
   * @param mostRemembered  classes remembered before the memory is emptied
   */
  constructor(rule: Rule, columns: FactColumns, mostRemembered = MOST_REMEMBERED) {
    this.rule = rule;
    this.#engine = new RuleEngine([rule]);
    this.#mostRemembered = mostRemembered;
    this.#uses = columns.usesOf(rule);
    this.columns = this.#uses.map((use) => use.column);
    const combinations = this.#uses.reduce((product, use) => product * use.size, 1);
    this.#numericKeys = combinations <= Number.MAX_SAFE_INTEGER;
    this.#dense = combinations <= mostRemembered ? new Uint8Array(combinations) : null;
  }

  /** How many classes are remembered, for tests and benchmarks. */
  get remembered(): number {
    return this.#dense
      ? this.#dense.reduce((sum, code) => sum + (code > 0 ? 1 : 0), 0)
      : this.#remembered.size;
  }

  /**
   * The rule's state on every sheet. Sheets that share the parts that the rule reads are decided as one. Waits for the
   * engine only when a class turns up that isn't remembered.
   *
   * @param codes  classes of the rule's columns
   */
  async decide(sheets: FactSheets, codes: Classified): Promise<Decided> {
    const columns = this.#uses.map((use) => this.#classes(codes, use.column));
    const slots = [...new Set(columns.flatMap(slotsOf))].sort((a, b) => a - b);
    const joint = sheets.joint(slots);
    const classes = columns.map((column) => classesOf(column, slots, joint));
    const states = new Uint8Array(joint.count);
    const dense = this.#dense;
    if (dense) {
      const keys = this.#numbersOf(classes, joint.count);
      for (let i = 0; i < states.length; i++) {
        const key = keys[i] ?? 0;
        let code = dense[key] ?? 0;
        if (code === 0) {
          code = RULE_STATES.indexOf(await this.#ask(sheets.sheet(joint.first[i] ?? 0))) + 1;
          dense[key] = code;
        }
        states[i] = code - 1;
      }
      return { joint, states };
    }
    if (this.#remembered.size > this.#mostRemembered) this.#remembered.clear();
    const keys = this.#numericKeys
      ? this.#numbersOf(classes, joint.count)
      : this.#textsOf(classes, joint.count);
    for (let i = 0; i < states.length; i++) {
      const key = keys[i] ?? '';
      let state = this.#remembered.get(key);
      if (!state) {
        state = await this.#ask(sheets.sheet(joint.first[i] ?? 0));
        this.#remembered.set(key, state);
      }
      states[i] = RULE_STATES.indexOf(state);
    }
    return { joint, states };
  }

  /** The first sheet of a new class stands for all of that class. */
  async #ask(sheet: Facts): Promise<RuleState> {
    const [state] = await this.#engine.run(sheet);
    if (!state) throw new Error(`${this.rule.id}: the engine gave no verdict`);
    return state;
  }

  #numbersOf(classes: readonly Uint16Array[], count: number): Float64Array {
    const keys = new Float64Array(count);
    for (const [u, { coarser, size }] of this.#uses.entries()) {
      const own = classes[u] ?? new Uint16Array(count);
      for (let i = 0; i < count; i++) {
        keys[i] = (keys[i] ?? 0) * size + (coarser[own[i] ?? 0] ?? 0);
      }
    }
    return keys;
  }

  #textsOf(classes: readonly Uint16Array[], count: number): string[] {
    return Array.from({ length: count }, (_, i) =>
      this.#uses.map(({ coarser }, u) => coarser[classes[u]?.[i] ?? 0] ?? 0).join(','),
    );
  }

  #classes(codes: Classified, column: number): ColumnClasses {
    const classes = codes[column];
    if (!classes) throw new Error(`${this.rule.id}: column ${column} was not classified`);
    return classes;
  }
}

/** A column's class for every class of the joint. */
function classesOf(column: ColumnClasses, slots: readonly number[], joint: Joint): Uint16Array {
  const classes = new Uint16Array(joint.count);
  const partOf = (slot: number) => joint.classOf[slots.indexOf(slot)] ?? new Uint32Array(joint.count);
  if (column.kind === 'one') {
    const parts = partOf(column.slot);
    for (let i = 0; i < classes.length; i++) classes[i] = column.classes[parts[i] ?? 0] ?? 0;
    return classes;
  }
  const { left, right } = column;
  const [lefts, rights] = [partOf(left.slot), partOf(right.slot)];
  for (let i = 0; i < classes.length; i++) {
    classes[i] = pairClass(left.values[lefts[i] ?? 0] ?? null, right.values[rights[i] ?? 0] ?? null);
  }
  return classes;
}
