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
  /** Where there are few combinations of classes: the state of each, by its number; 0 is not remembered. */
  readonly #dense: Uint8Array | null;
  /** What one step of each use's class adds to that number. */
  readonly #steps: readonly number[];
  /** Where there are many: states by the classes as text. Much slower; no shipped rule needs it. */
  readonly #remembered = new Map<string, RuleState>();

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
    let combinations = 1;
    this.#steps = this.#uses.map(({ size }) => {
      const step = combinations;
      combinations *= size;
      return step;
    });
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
    const states = new Uint8Array(joint.count);
    const dense = this.#dense;
    if (dense) {
      const keys = this.#numbersOf(columns, slots, joint);
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
    const keys = this.#textsOf(columns, slots, joint);
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

  /**
   * The number of every joint class. What the facts of one slot add to it is added up for the slot's parts, which are
   * fewer than the joint classes, whatever the number of facts.
   */
  #numbersOf(columns: readonly ColumnClasses[], slots: readonly number[], joint: Joint): Uint32Array {
    const ofSlots = new Map<number, Uint32Array>();
    const numbers = new Uint32Array(joint.count);
    for (const [u, column] of columns.entries()) {
      const [step, coarser] = [this.#steps[u] ?? 0, this.#uses[u]?.coarser ?? []];
      const own = ofOneSlot(column);
      if (own) {
        const sofar = ofSlots.get(own.slot) ?? new Uint32Array(own.classes.length);
        ofSlots.set(own.slot, sofar);
        addClasses(sofar, own.classes, coarser, step);
      } else {
        addClasses(numbers, classesOf(column, slots, joint), coarser, step);
      }
    }
    for (const [slot, ofParts] of ofSlots) {
      const parts = joint.classOf[slots.indexOf(slot)] ?? new Uint32Array(joint.count);
      for (let i = 0; i < numbers.length; i++) {
        numbers[i] = (numbers[i] ?? 0) + (ofParts[parts[i] ?? 0] ?? 0);
      }
    }
    return numbers;
  }

  #textsOf(columns: readonly ColumnClasses[], slots: readonly number[], joint: Joint): string[] {
    const classes = columns.map((column) => classesOf(column, slots, joint));
    return Array.from({ length: joint.count }, (_, i) =>
      this.#uses.map(({ coarser }, u) => coarser[classes[u]?.[i] ?? 0] ?? 0).join(','),
    );
  }

  #classes(codes: Classified, column: number): ColumnClasses {
    const classes = codes[column];
    if (!classes) throw new Error(`${this.rule.id}: column ${column} was not classified`);
    return classes;
  }
}

function addClasses(
  numbers: Uint32Array,
  classes: Uint16Array,
  coarser: readonly number[],
  step: number,
): void {
  for (let i = 0; i < numbers.length; i++) {
    numbers[i] = (numbers[i] ?? 0) + step * (coarser[classes[i] ?? 0] ?? 0);
  }
}

/** A column's class for every part of the slot that it stands in; null where it stands in two. */
function ofOneSlot(column: ColumnClasses): { readonly slot: number; readonly classes: Uint16Array } | null {
  if (column.kind === 'one') return column;
  const { left, right } = column;
  if (left.slot !== right.slot) return null;
  const classes = new Uint16Array(left.values.length);
  for (let i = 0; i < classes.length; i++)
    classes[i] = pairClass(left.values[i] ?? null, right.values[i] ?? null);
  return { slot: left.slot, classes };
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
