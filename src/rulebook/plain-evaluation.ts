import type { CodeEdition } from '../brief/brief.ts';
import { outcomeOf } from './outcome.ts';
import { RuleEngine } from './rule-engine.ts';
import type { Facts, RuleOutcome } from './rule-schema.ts';
import type { Rulebook } from './rulebook.ts';
import { missingFacts } from './three-valued.ts';

/**
 * The slow way to the same outcomes: one engine over all rules of an edition, run once for every wall, nothing
 * remembered. Tests hold the fast way against it, and the benchmark measures both.
 */
export class PlainEvaluator {
  readonly #rulebook: Rulebook;
  readonly #edition: CodeEdition;
  readonly #engine: RuleEngine;

  constructor(rulebook: Rulebook, edition: CodeEdition) {
    this.#rulebook = rulebook;
    this.#edition = edition;
    this.#engine = new RuleEngine(rulebook.rulesOf(edition).map((loaded) => loaded.rule));
  }

  /** Outcomes of every rule that applies, sorted by rule id. */
  async evaluate(facts: Facts): Promise<RuleOutcome[]> {
    const states = await this.#engine.run(facts);
    return this.#rulebook.rulesOf(this.#edition).flatMap((loaded, i) => {
      const state = states[i];
      if (!state || state === 'silent') return [];
      const missing = state === 'open' ? missingFacts(loaded.rule, facts) : [];
      return [outcomeOf(loaded, state, missing, facts, this.#rulebook.facts)];
    });
  }
}
