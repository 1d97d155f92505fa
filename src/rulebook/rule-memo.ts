import type { ColumnUse, FactColumns } from './fact-columns.ts';
import type { FactSheets } from './fact-sheets.ts';
import { RuleEngine } from './rule-engine.ts';
import type { Facts, Rule } from './rule-schema.ts';
import { RULE_STATES, type RuleState } from './three-valued.ts';

/** Past this many remembered classes a rule's memory is emptied; it is only ever a speed-up. */
const MOST_REMEMBERED = 50_000;

/** Classes by column, each as long as the list of walls; columns that no rule asked for are left out. */
export type Classified = readonly (Uint16Array | undefined)[];

/** One rule with its own engine, which it asks once for each class of facts that the rule can tell apart. */
export class RuleMemo {
  readonly rule: Rule;
  readonly #engine: RuleEngine;
  readonly #mostRemembered: number;
  readonly #uses: readonly ColumnUse[];
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
    const combinations = this.#uses.reduce((product, use) => product * use.size, 1);
    this.#numericKeys = combinations <= Number.MAX_SAFE_INTEGER;
    this.#dense = combinations <= mostRemembered ? new Uint8Array(combinations) : null;
  }

  /** Columns that the rule needs classified. */
  get columns(): number[] {
    return this.#uses.map((use) => use.column);
  }

  /** How many classes are remembered, for tests and benchmarks. */
  get remembered(): number {
    return this.#dense
      ? this.#dense.reduce((sum, code) => sum + (code > 0 ? 1 : 0), 0)
      : this.#remembered.size;
  }

  /**
   * The rule's state on every sheet, as codes of `RULE_STATES`. Waits for the engine only when a class turns up that
   * isn't remembered.
   *
   * @param codes  classes of the rule's columns
   */
  async decide(sheets: FactSheets, codes: Classified): Promise<Uint8Array> {
    const states = new Uint8Array(sheets.count);
    const unseen: number[] = [];
    const dense = this.#dense;
    if (dense) {
      const keys = this.#numbersOf(codes, sheets.count);
      for (let i = 0; i < states.length; i++) {
        const code = dense[keys[i] ?? 0] ?? 0;
        if (code > 0) states[i] = code - 1;
        else unseen.push(i);
      }
      for (const i of unseen) {
        const key = keys[i] ?? 0;
        if (!dense[key]) dense[key] = RULE_STATES.indexOf(await this.#ask(sheets.sheet(i))) + 1;
        states[i] = (dense[key] ?? 1) - 1;
      }
      return states;
    }
    if (this.#remembered.size > this.#mostRemembered) this.#remembered.clear();
    const keys = this.#numericKeys
      ? this.#numbersOf(codes, sheets.count)
      : this.#textsOf(codes, sheets.count);
    for (let i = 0; i < states.length; i++) {
      const key = keys[i] ?? '';
      let state = this.#remembered.get(key);
      if (!state) {
        state = await this.#ask(sheets.sheet(i));
        this.#remembered.set(key, state);
      }
      states[i] = RULE_STATES.indexOf(state);
    }
    return states;
  }

  /** The first sheet of a new class stands for all of that class. */
  async #ask(sheet: Facts): Promise<RuleState> {
    const [state] = await this.#engine.run(sheet);
    if (!state) throw new Error(`${this.rule.id}: the engine gave no verdict`);
    return state;
  }

  #numbersOf(codes: Classified, count: number): Float64Array {
    const keys = new Float64Array(count);
    for (const { column, coarser, size } of this.#uses) {
      const classes = this.#classes(codes, column);
      for (let i = 0; i < count; i++) {
        keys[i] = (keys[i] ?? 0) * size + (coarser[classes[i] ?? 0] ?? 0);
      }
    }
    return keys;
  }

  #textsOf(codes: Classified, count: number): string[] {
    const uses = this.#uses.map((use) => ({ ...use, classes: this.#classes(codes, use.column) }));
    return Array.from({ length: count }, (_, i) =>
      uses.map(({ classes, coarser }) => coarser[classes[i] ?? 0] ?? 0).join(','),
    );
  }

  #classes(codes: Classified, column: number): Uint16Array {
    const classes = codes[column];
    if (!classes) throw new Error(`${this.rule.id}: column ${column} was not classified`);
    return classes;
  }
}
