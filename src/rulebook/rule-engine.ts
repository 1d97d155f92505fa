import { Engine, Fact } from 'json-rules-engine';
import { factsRead } from './condition-tree.ts';
import type { Facts, Rule } from './rule-schema.ts';
import { appliesTruth, known, type RuleState, stateOf, type Truth, truthOf } from './three-valued.ts';

const APPLIES = '#applies';
const FIRES = '#fires';

/**
 * One engine over one or more rules. Two engine rules stand for each of ours: whether it applies, and whether
 * its conditions hold. Runs queue up, because overlapping runs of one engine silently drop rules.
 */
export class RuleEngine {
  readonly #rules: readonly Rule[];
  readonly #reads: readonly string[];
  readonly #engine: Engine;
  readonly #runsExpected: number;
  #queue: Promise<unknown> = Promise.resolve();

  constructor(rules: readonly Rule[]) {
    this.#rules = rules;
    this.#reads = [...new Set(rules.flatMap(factsRead))];
    this.#engine = new Engine([], { allowUndefinedFacts: false, pathResolver: refusePath });
    let count = 0;
    const add = (name: string, conditions: Rule['conditions']) => {
      this.#engine.addRule({ name, conditions, event: { type: 'holds' } });
      count += 1;
    };
    for (const rule of rules) {
      if (rule.applies_when) add(rule.id + APPLIES, rule.applies_when);
      add(rule.id + FIRES, rule.conditions);
    }
    this.#runsExpected = count;
  }

  /**
   * Evaluates all rules on one set of facts.
   *
   * @returns a state for each rule, in the order given to the constructor
   * @throws Error when a fact that a rule reads is missing or not a finite number, or when the engine loses a rule
   */
  run(facts: Facts): Promise<RuleState[]> {
    const result = this.#queue.then(() => this.#runAlone(facts));
    // A failed run must not keep the next one from starting; its own caller gets the error.
    this.#queue = result.catch(() => undefined);
    return result;
  }

  async #runAlone(facts: Facts): Promise<RuleState[]> {
    const given: Record<string, Fact> = {};
    let allKnown = true;
    for (const id of this.#reads) {
      const value = known(facts, id);
      if (value === null) allKnown = false;
      // NaN compares false both ways, so that a limit and its opposite would both be "kept".
      if (typeof value === 'number' && !Number.isFinite(value)) throw new Error(`fact ${id} is ${value}`);
      given[id] = new Fact(id, value, { cache: false });
    }
    const { results, failureResults } = await this.#engine.run(given);
    if (results.length + failureResults.length !== this.#runsExpected) {
      throw new Error(
        `the engine dropped ${this.#runsExpected - results.length - failureResults.length} rules`,
      );
    }
    const held = new Set(results.map((result) => result.name));
    return this.#rules.map((rule) => {
      const applies = rule.applies_when === undefined || held.has(rule.id + APPLIES);
      const fires = held.has(rule.id + FIRES);
      if (allKnown) return stateOf(applies, fires);
      return stateOf(
        settled(rule, applies, appliesTruth(rule, facts)),
        settled(rule, fires, truthOf(rule.conditions, facts)),
      );
    });
  }
}

/** The engine's answer where it holds whatever the unknown facts are; null where it doesn't. */
function settled(rule: Rule, engineSays: boolean, truth: Truth): Truth {
  if (truth === null) return null;
  if (truth !== engineSays)
    throw new Error(`${rule.id}: the engine and the check for unknown facts disagree`);
  return engineSays;
}

/** Facts are flat and rules have no paths: the engine's own path language is never reached. */
export function refusePath(_value: object, path: string): never {
  throw new Error(`paths into facts are not allowed: ${path}`);
}
