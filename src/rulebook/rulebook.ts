import type { CodeEdition } from '../brief/brief.ts';
import { FactColumns } from './fact-columns.ts';
import type { FactIndex } from './fact-dictionary.ts';
import { FactSheets } from './fact-sheets.ts';
import { type HouseStandard, NO_HOUSE } from './house-standard.ts';
import type { LimitIndex } from './limits.ts';
import type { Dictionaries } from './load-pack.ts';
import type { LoadedRule, PackInfo } from './loaded-rule.ts';
import { RuleMemo } from './rule-memo.ts';
import type { Facts, RuleOutcome } from './rule-schema.ts';
import { Verdicts, VerdictTable } from './verdicts.ts';

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
    const others = this.rules.filter((loaded) => loaded.rule.id !== ruleId);
    return new Rulebook(this.#dictionaries, this.packs, others, this.house);
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
  async evaluate(facts: Facts, edition: CodeEdition): Promise<RuleOutcome[]> {
    const [verdicts] = await this.evaluateAll([facts], edition);
    return verdicts ? verdicts.outcomes() : [];
  }

  /**
   * Judges many walls. A rule's engine runs once for each class of facts that the rule can tell apart, not
   * once for each wall; texts are written when they are asked for.
   *
   * @param sheets  whole sheets, or sheets put together from shared parts (much faster for many walls)
   * @returns verdicts in the order of the sheets
   * @throws Error when a fact is missing from a sheet or doesn't fit its type
   */
  evaluateAll(sheets: readonly Facts[] | FactSheets, edition: CodeEdition): Promise<Verdicts[]> {
    const all = sheets instanceof FactSheets ? sheets : FactSheets.of(sheets);
    const result = this.#queue.then(() => this.#evaluateAlone(all, edition));
    // A failed call must not keep the next one from starting; its own caller gets the error.
    this.#queue = result.catch(() => undefined);
    return result;
  }

  async #evaluateAlone(sheets: FactSheets, edition: CodeEdition): Promise<Verdicts[]> {
    const rules = this.rulesOf(edition);
    const memos = rules.map((loaded) => this.#memoOf(loaded));
    const codes: (Uint16Array | undefined)[] = new Array(this.#columns.count);
    for (const column of new Set(memos.flatMap((memo) => memo.columns))) {
      codes[column] = this.#columns.classify(column, sheets);
    }
    const states: Uint8Array[] = [];
    for (const memo of memos) states.push(await memo.decide(sheets, codes));
    const table = new VerdictTable(rules, this.facts, sheets, states);
    return Array.from({ length: sheets.count }, (_, i) => new Verdicts(table, i));
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
