import type { Partitions } from '../base/partitions.ts';
import type { CodeEdition } from '../brief/brief.ts';
import { type ColumnClasses, FactColumns } from './fact-columns.ts';
import type { FactIndex } from './fact-dictionary.ts';
import { FactSheets } from './fact-sheets.ts';
import { type HouseStandard, NO_HOUSE } from './house-standard.ts';
import type { LimitIndex } from './limits.ts';
import type { Dictionaries } from './load-pack.ts';
import type { LoadedRule, PackInfo } from './loaded-rule.ts';
import { type Classified, type Decided, RuleMemo } from './rule-memo.ts';
import type { Facts, RuleOutcome } from './rule-schema.ts';
import { type Verdicts, VerdictTable } from './verdicts.ts';

/** All rules in force, checked, ready to judge walls. Made by `loadRulebook`. */
export class Rulebook {
  readonly facts: FactIndex;
  /** As shipped; what a firm moved stands in `house`. */
  readonly limits: LimitIndex;
  readonly house: HouseStandard;
  readonly packs: readonly PackInfo[];
  /** Sorted by id. */
  readonly rules: readonly LoadedRule[];
  readonly #dictionaries: Dictionaries;
  readonly #columns: FactColumns;
  #shipped: Rulebook | undefined;
  /** Made on first use: an engine for every rule costs time that `rules list` doesn't need to spend. */
  readonly #memos = new Map<string, RuleMemo>();
  /** The last verdicts on sheets of one shape, to take over what still holds. */
  readonly #last = new WeakMap<Partitions, VerdictTable>();
  #queue: Promise<unknown> = Promise.resolve();

  constructor(
    dictionaries: Dictionaries,
    packs: readonly PackInfo[],
    rules: readonly LoadedRule[],
    house: HouseStandard = NO_HOUSE,
  ) {
    this.#dictionaries = dictionaries;
    this.facts = dictionaries.facts;
    this.limits = dictionaries.limits;
    this.house = house;
    this.packs = packs;
    this.rules = [...rules].sort((a, b) => (a.rule.id < b.rule.id ? -1 : 1));
    this.#columns = new FactColumns(
      this.rules.map((loaded) => loaded.rule),
      this.facts,
    );
  }

  /** The rules as shipped, without anything of a firm's packs. */
  get shipped(): Rulebook {
    if (this.house.packs.length === 0) return this;
    this.#shipped ??= new Rulebook(
      this.#dictionaries,
      this.packs.filter((pack) => !pack.house),
      this.rules.flatMap((loaded) => (loaded.house ? [] : [asShipped(loaded)])),
    );
    return this.#shipped;
  }

  /** All rules but one, to find out what that one decides. */
  without(ruleId: string): Rulebook {
    return this.only(this.rules.filter((loaded) => loaded.rule.id !== ruleId));
  }

  /** Some of these rules alone. */
  only(rules: readonly LoadedRule[]): Rulebook {
    return new Rulebook(this.#dictionaries, this.packs, rules, this.house);
  }

  find(ruleId: string): LoadedRule | undefined {
    return this.rules.find((loaded) => loaded.rule.id === ruleId);
  }

  /** The rules of a code edition, sorted by id. */
  rulesOf(edition: CodeEdition): LoadedRule[] {
    return this.rules.filter((loaded) => loaded.rule.editions.includes(edition));
  }

  /**
   * Judges one wall.
   *
   * @param facts  every fact that the edition's rules read or show; null for one that is not known
   * @returns one outcome for each rule that applies, sorted by rule id
   * @throws Error when a fact is missing or doesn't fit its type
   */
  async evaluate(facts: Facts, edition: CodeEdition): Promise<readonly RuleOutcome[]> {
    const [verdicts] = await this.evaluateAll([facts], edition);
    return verdicts ? verdicts.outcomes() : [];
  }

  /** {@link judgeAll} with the verdicts of every sheet at hand, in the order of the sheets. */
  async evaluateAll(sheets: readonly Facts[], edition: CodeEdition): Promise<Verdicts[]> {
    const table = await this.judgeAll(FactSheets.of(sheets), edition);
    return sheets.map((_, i) => table.of(i));
  }

  /**
   * Judges many walls. A rule's engine runs once for each class of facts that the rule can tell apart, not
   * once for each wall; texts are written when they are asked for.
   *
   * @param before  verdicts of which those that still hold are taken over, where this rulebook gave them on sheets of the
   *   same shape; else the last that it gave serve
   * @throws Error when a fact is missing from a sheet or doesn't fit its type
   */
  judgeAll(sheets: FactSheets, edition: CodeEdition, before?: VerdictTable): Promise<VerdictTable> {
    const result = this.#queue.then(() => this.#judgeAlone(sheets, edition, before));
    // A failed call must not keep the next one from starting; its own caller gets the error.
    this.#queue = result.catch(() => undefined);
    return result;
  }

  async #judgeAlone(
    sheets: FactSheets,
    edition: CodeEdition,
    earlier: VerdictTable | undefined,
  ): Promise<VerdictTable> {
    const isMine = earlier?.columns === this.#columns && earlier.sheets.shape === sheets.shape;
    const before = isMine ? earlier : this.#last.get(sheets.shape);
    const rules = this.rulesOf(edition);
    const codes: (ColumnClasses | undefined)[] = new Array(this.#columns.count);
    const decided: Decided[] = [];
    for (const loaded of rules) {
      const memo = this.#memoOf(loaded);
      for (const column of memo.columns) {
        codes[column] ??= this.#columns.classify(column, sheets, before?.classified[column]);
      }
      const held = before && this.#heldSince(before, loaded, memo, codes);
      decided.push(held ?? (await memo.decide(sheets, codes)));
    }
    const table = new VerdictTable(rules, this.#columns, this.facts, sheets, codes, decided);
    this.#last.set(sheets.shape, table);
    return table;
  }

  /** What a rule decided before, where nothing that it reads has changed its class. */
  #heldSince(
    before: VerdictTable,
    { rule }: LoadedRule,
    memo: RuleMemo,
    codes: Classified,
  ): Decided | undefined {
    if (memo.columns.some((column) => codes[column] !== before.classified[column])) return undefined;
    const position = before.position(rule.id);
    return position === undefined ? undefined : before.decided[position];
  }

  #memoOf(loaded: LoadedRule): RuleMemo {
    const found = this.#memos.get(loaded.rule.id);
    if (found) return found;
    const made = new RuleMemo(loaded.rule, this.#columns);
    this.#memos.set(loaded.rule.id, made);
    return made;
  }
}

function asShipped(loaded: LoadedRule): LoadedRule {
  return loaded.tightened ? { ...loaded, rule: loaded.tightened.before, tightened: null } : loaded;
}
