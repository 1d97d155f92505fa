import type { CodeEdition } from '../brief/brief.ts';
import { citationText } from './citation.ts';
import type { Concern, RuleProvenance, RuleVerdict } from './rule-schema.ts';
import type { Rulebook } from './rulebook.ts';

export type RuleRow = {
  readonly id: string;
  readonly title: string;
  readonly concern: Concern;
  readonly pack: string;
  readonly house: boolean;
  /** What it says when its conditions hold. */
  readonly verdict: RuleVerdict;
  readonly editions: readonly CodeEdition[];
  readonly citation: string;
  readonly provenance: RuleProvenance;
};

/** One row for every rule in force, sorted by id. */
export function listRules(rulebook: Rulebook): RuleRow[] {
  return rulebook.rules.map(({ rule, concern, pack, house }) => ({
    id: rule.id,
    title: rule.title,
    concern,
    pack,
    house,
    verdict: rule.verdict,
    editions: rule.editions,
    citation: citationText(rule.citation),
    provenance: rule.citation.provenance,
  }));
}
