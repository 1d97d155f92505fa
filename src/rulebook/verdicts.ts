import type { Joint } from '../base/partitions.ts';
import { type FactColumns, slotsOf } from './fact-columns.ts';
import type { FactIndex } from './fact-dictionary.ts';
import type { FactSheets } from './fact-sheets.ts';
import type { LoadedRule } from './loaded-rule.ts';
import { outcomeOf } from './outcome.ts';
import type { Classified, Decided } from './rule-memo.ts';
import type { Facts, FactValue, Rule, RuleOutcome, Verdict } from './rule-schema.ts';
import { missingFacts, RULE_STATES, type RuleState } from './three-valued.ts';

/** What came out for many walls. */
export class VerdictTable {
  /** Sorted by id; only those of the edition asked for. */
  readonly rules: readonly LoadedRule[];
  /** What the classes were made by. */
  readonly columns: FactColumns;
  readonly index: FactIndex;
  readonly sheets: FactSheets;
  /** Classes that the states were decided from. */
  readonly classified: Classified;
  /** In the order of the rules. */
  readonly decided: readonly Decided[];
  readonly #position: ReadonlyMap<string, number>;
  /** How many rules forbid each sheet. */
  readonly forbids: Uint16Array;

  constructor(
    rules: readonly LoadedRule[],
    columns: FactColumns,
    index: FactIndex,
    sheets: FactSheets,
    classified: Classified,
    decided: readonly Decided[],
  ) {
    this.rules = rules;
    this.columns = columns;
    this.index = index;
    this.sheets = sheets;
    this.classified = classified;
    this.decided = decided;
    this.#position = new Map(rules.map((loaded, i) => [loaded.rule.id, i]));
    this.forbids = countForbids(rules, decided, sheets.count);
  }

  /** Verdicts on one sheet. */
  of(sheet: number): Verdicts {
    if (!(sheet >= 0 && sheet < this.sheets.count)) throw new Error(`there is no sheet ${sheet}`);
    return new Verdicts(this, sheet);
  }

  /** How many of some rules forbid each sheet. */
  forbidsBy(ruleIds: readonly string[]): Uint16Array {
    const places = ruleIds.flatMap((id) => this.position(id) ?? []);
    const [rules, decided] = [
      places.flatMap((i) => this.rules[i] ?? []),
      places.flatMap((i) => this.decided[i] ?? []),
    ];
    return countForbids(rules, decided, this.sheets.count);
  }

  /** Tells of each sheet whether a rule's conditions hold there; never, where the rule isn't of the edition asked for. */
  firing(ruleId: string): (sheet: number) => boolean {
    const decided = this.decided[this.position(ruleId) ?? -1];
    if (!decided) return () => false;
    const { joint, states } = decided;
    return (sheet) => states[joint.at[sheet] ?? -1] === FIRES;
  }

  /** Whether a rule's conditions hold on any sheet. */
  firesAnywhere(ruleId: string): boolean {
    return fires(this.decided[this.position(ruleId) ?? -1]);
  }

  /** The rules that forbid at least one sheet, with what was decided by each. */
  forbidding(): { readonly rule: Rule; readonly decided: Decided }[] {
    return forbiddingOf(this.rules, this.decided);
  }

  /** Places of the rules that read a fact from one of these slots. */
  readingFrom(slots: ReadonlySet<number>): number[] {
    return this.rules.flatMap(({ rule }, i) => {
      const isRead = this.columns.usesOf(rule).some(({ column }) => {
        const classes = this.classified[column];
        return classes !== undefined && slotsOf(classes).some((slot) => slots.has(slot));
      });
      return isRead ? [i] : [];
    });
  }

  state(sheet: number, rule: number): RuleState {
    const decided = this.decided[rule];
    const state = RULE_STATES[decided?.states[decided.joint.at[sheet] ?? -1] ?? -1];
    if (!state) throw new Error(`no state for rule ${rule} on sheet ${sheet}`);
    return state;
  }

  position(ruleId: string): number | undefined {
    return this.#position.get(ruleId);
  }
}

const FIRES = RULE_STATES.indexOf('fires');

function fires(decided: Decided | undefined): decided is Decided {
  return decided?.states.includes(FIRES) ?? false;
}

function forbiddingOf(rules: readonly LoadedRule[], decided: readonly Decided[]) {
  return rules.flatMap(({ rule }, i) => {
    const own = decided[i];
    return rule.verdict === 'forbid' && fires(own) ? [{ rule, decided: own }] : [];
  });
}

/** Counted for sheets that the same rules can't tell apart, then spread over the sheets. */
function countForbids(rules: readonly LoadedRule[], decided: readonly Decided[], count: number): Uint16Array {
  const byJoint = new Map<Joint, Uint16Array>();
  for (const { decided: own } of forbiddingOf(rules, decided)) {
    const sums = byJoint.get(own.joint) ?? new Uint16Array(own.joint.count);
    byJoint.set(own.joint, sums);
    for (let i = 0; i < sums.length; i++) if (own.states[i] === FIRES) sums[i] = (sums[i] ?? 0) + 1;
  }
  const forbids = new Uint16Array(count);
  for (const [{ at }, sums] of byJoint) {
    for (let i = 0; i < count; i++) forbids[i] = (forbids[i] ?? 0) + (sums[at[i] ?? 0] ?? 0);
  }
  return forbids;
}

/** What all rules of an edition say about one wall. Texts are written only when asked for. */
export class Verdicts {
  readonly #table: VerdictTable;
  readonly #sheet: number;
  #facts: Facts | undefined;
  #outcomes: readonly RuleOutcome[] | undefined;

  constructor(table: VerdictTable, sheet: number) {
    this.#table = table;
    this.#sheet = sheet;
  }

  /** The wall's whole fact sheet. */
  get facts(): Facts {
    this.#facts ??= this.#table.sheets.sheet(this.#sheet);
    return this.#facts;
  }

  /** Some of the wall's facts, without putting its whole sheet together. */
  factsOf(ids: readonly string[]): Facts {
    const facts: Record<string, FactValue> = {};
    for (const id of ids) {
      const value = this.#table.sheets.fact(this.#sheet, id);
      if (value !== undefined) facts[id] = value;
    }
    return facts;
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
    return this.#table.forbids[this.#sheet] ?? 0;
  }

  /** The trace: one outcome for every rule that applies, sorted by rule id. */
  outcomes(): readonly RuleOutcome[] {
    this.#outcomes ??= this.#table.rules.flatMap((_, i) => this.#outcomeAt(i) ?? []);
    return this.#outcomes;
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
