import type { FactIndex } from './fact-dictionary.ts';
import type { FactSheets } from './fact-sheets.ts';
import type { LoadedRule } from './loaded-rule.ts';
import { outcomeOf } from './outcome.ts';
import type { Facts, RuleOutcome, Verdict } from './rule-schema.ts';
import { missingFacts, RULE_STATES, type RuleState } from './three-valued.ts';

/** What came out for many walls, one byte a rule and sheet. */
export class VerdictTable {
  /** Sorted by id; only those of the edition asked for. */
  readonly rules: readonly LoadedRule[];
  readonly index: FactIndex;
  readonly sheets: FactSheets;
  /** By rule, then by sheet: codes of `RULE_STATES`. */
  readonly #states: readonly Uint8Array[];
  readonly #position: ReadonlyMap<string, number>;
  readonly #forbids: Uint16Array;

  constructor(
    rules: readonly LoadedRule[],
    index: FactIndex,
    sheets: FactSheets,
    states: readonly Uint8Array[],
  ) {
    this.rules = rules;
    this.index = index;
    this.sheets = sheets;
    this.#states = states;
    this.#position = new Map(rules.map((loaded, i) => [loaded.rule.id, i]));
    this.#forbids = countForbids(rules, states, sheets.count);
  }

  state(sheet: number, rule: number): RuleState {
    const state = RULE_STATES[this.#states[rule]?.[sheet] ?? -1];
    if (!state) throw new Error(`no state for rule ${rule} on sheet ${sheet}`);
    return state;
  }

  position(ruleId: string): number | undefined {
    return this.#position.get(ruleId);
  }

  forbids(sheet: number): number {
    return this.#forbids[sheet] ?? 0;
  }
}

function countForbids(
  rules: readonly LoadedRule[],
  states: readonly Uint8Array[],
  count: number,
): Uint16Array {
  const forbids = new Uint16Array(count);
  const fires = RULE_STATES.indexOf('fires');
  for (const [position, { rule }] of rules.entries()) {
    const own = states[position];
    if (rule.verdict !== 'forbid' || !own) continue;
    for (let i = 0; i < count; i++) if (own[i] === fires) forbids[i] = (forbids[i] ?? 0) + 1;
  }
  return forbids;
}

/** What all rules of an edition say about one wall. Texts are written only when asked for. */
export class Verdicts {
  readonly #table: VerdictTable;
  readonly #sheet: number;
  #facts: Facts | undefined;

  constructor(table: VerdictTable, sheet: number) {
    this.#table = table;
    this.#sheet = sheet;
  }

  /** The wall's whole fact sheet. */
  get facts(): Facts {
    this.#facts ??= this.#table.sheets.sheet(this.#sheet);
    return this.#facts;
  }

  /** A rule's verdict; `silent` where it doesn't apply or isn't of the edition asked for. */
  verdictOf(ruleId: string): Verdict | 'silent' {
    const position = this.#table.position(ruleId);
    return position === undefined ? 'silent' : this.#verdictAt(position);
  }

  /** Whether a rule's conditions hold here, whatever its verdict is; an open question by missing facts is none. */
  fires(ruleId: string): boolean {
    const position = this.#table.position(ruleId);
    return position !== undefined && this.#table.state(this.#sheet, position) === 'fires';
  }

  /** Rules that came to a verdict, sorted by id. */
  rulesWith(verdict: Verdict): LoadedRule[] {
    return this.#table.rules.filter((_, i) => this.#verdictAt(i) === verdict);
  }

  /** Whether any rule forbids the wall. */
  get isForbidden(): boolean {
    return this.forbidCount > 0;
  }

  /** How many rules forbid the wall. */
  get forbidCount(): number {
    return this.#table.forbids(this.#sheet);
  }

  /** The trace: one outcome for every rule that applies, sorted by rule id. */
  outcomes(): RuleOutcome[] {
    return this.#table.rules.flatMap((_, i) => this.#outcomeAt(i) ?? []);
  }

  /** The outcomes of one verdict, sorted by rule id. */
  outcomesWith(verdict: Verdict): RuleOutcome[] {
    return this.#table.rules.flatMap((_, i) =>
      this.#verdictAt(i) === verdict ? (this.#outcomeAt(i) ?? []) : [],
    );
  }

  /** One rule's outcome; undefined where it is silent. */
  outcome(ruleId: string): RuleOutcome | undefined {
    const position = this.#table.position(ruleId);
    return position === undefined ? undefined : this.#outcomeAt(position);
  }

  #verdictAt(position: number): Verdict | 'silent' {
    const state = this.#table.state(this.#sheet, position);
    return verdictOfState(state, this.#table.rules[position]);
  }

  #outcomeAt(position: number): RuleOutcome | undefined {
    const loaded = this.#table.rules[position];
    const state = this.#table.state(this.#sheet, position);
    if (!loaded || state === 'silent') return undefined;
    const missing = state === 'open' ? missingFacts(loaded.rule, this.facts) : [];
    return outcomeOf(loaded, state, missing, this.facts, this.#table.index);
  }
}

function verdictOfState(state: RuleState, loaded: LoadedRule | undefined): Verdict | 'silent' {
  if (state === 'fires') return loaded ? loaded.rule.verdict : 'silent';
  return state === 'open' ? 'undecided' : state;
}
