import { citationText } from './citation.ts';
import type { FactIndex } from './fact-dictionary.ts';
import { fillText } from './fill-text.ts';
import type { LoadedRule } from './loaded-rule.ts';
import type { Facts, FactValue, RuleOutcome } from './rule-schema.ts';
import { appliesTruth, known, type RuleState } from './three-valued.ts';

/**
 * Writes out what one rule says about one wall.
 *
 * @param missing  ids of the unknown facts that left it open; empty otherwise
 */
export function outcomeOf(
  loaded: LoadedRule,
  state: Exclude<RuleState, 'silent'>,
  missing: readonly string[],
  facts: Facts,
  index: FactIndex,
): RuleOutcome {
  const { rule, concern, pack, house } = loaded;
  const read: Record<string, FactValue> = {};
  for (const id of loaded.reads) read[id] = known(facts, id);
  return {
    rule,
    concern,
    pack,
    house,
    verdict: state === 'fires' ? rule.verdict : state === 'open' ? 'undecided' : 'pass',
    text: textOf(loaded, state, missing, facts, index),
    remedy: fillText(rule.remedy, facts, index),
    citation: citationText(rule.citation),
    missing,
    facts: read,
  };
}

function textOf(
  { rule }: LoadedRule,
  state: Exclude<RuleState, 'silent'>,
  missing: readonly string[],
  facts: Facts,
  index: FactIndex,
): string {
  const title = rule.title.replace(/[.\s]+$/, '');
  switch (state) {
    case 'fires':
      return fillText(rule.reason, facts, index);
    case 'open': {
      const what = missing.map((id) => index.get(id).meaning).join('; ');
      return `${title}: can't be decided, because this is not known: ${what}.`;
    }
    case 'pass':
      if (appliesTruth(rule, facts) === null) return `${title}: kept, whether or not it applies here.`;
      return rule.pass_reason ? fillText(rule.pass_reason, facts, index) : `${title}: kept.`;
  }
}

/**
 * Whether an outcome is an open question that the user must hear of. A preference that can't be decided is
 * simply not given.
 */
export function isOpenQuestion(outcome: RuleOutcome): boolean {
  return outcome.verdict === 'undecided' && outcome.rule.verdict !== 'prefer';
}
