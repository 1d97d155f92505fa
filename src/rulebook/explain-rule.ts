import { Refusal, showValue } from '../base/refusal.ts';
import { citationText } from './citation.ts';
import { PLACEHOLDER } from './condition-tree.ts';
import { describeCondition } from './describe-condition.ts';
import { limitLines } from './explain-limit.ts';
import type { FactIndex } from './fact-dictionary.ts';
import { formatFact } from './format-fact.ts';
import type { LoadedRule } from './loaded-rule.ts';
import { didYouMean } from './nearest-name.ts';
import type { Facts, Rule, RuleProvenance, RuleVerdict } from './rule-schema.ts';
import type { Rulebook } from './rulebook.ts';

const VERDICT_WORDS: Readonly<Record<RuleVerdict, string>> = {
  forbid: 'the wall is ruled out',
  caution: 'the wall is admitted with a caution',
  prefer: 'the wall is preferred',
  undecided: 'the question stays open and somebody must settle it',
};

const PROVENANCE_WORDS: Readonly<Record<RuleProvenance, string>> = {
  verified: 'seen in a published document',
  'two-sources': 'two independent sources agree',
  computed: 'computed from a published method',
  memory: 'from memory, not verified: look it up before you rely on it',
  proposal: 'a proposal of this program, in no published document',
  'common-practice': 'common practice, no source',
  house: 'the firm’s own rule',
};

/**
 * All there is to say about one rule, as plain lines.
 *
 * @throws Refusal for an unknown id, with the nearest ones
 */
export function explainRule(rulebook: Rulebook, id: string): string {
  const loaded = rulebook.find(id);
  if (!loaded) {
    const near = didYouMean(
      id,
      rulebook.rules.map((known) => known.rule.id),
    );
    throw new Refusal({
      field: 'rule id',
      value: showValue(id),
      accepted: `Give the id of a rule in force; "rules list" shows them all.${near}`,
    });
  }
  const { rule } = loaded;
  const index = rulebook.facts;
  const lines = [
    `${rule.id}: ${rule.title}`,
    `${loaded.concern}, ${loaded.house ? 'house pack' : 'pack'} ${loaded.pack}, editions ${rule.editions.join(', ')}`,
    '',
    ...(rule.applies_when
      ? ['Applies when', ...describeCondition(rule.applies_when, index)]
      : ['Applies to every wall']),
    '',
    `Fires (${rule.verdict}: ${VERDICT_WORDS[rule.verdict]}) when`,
    ...describeCondition(rule.conditions, index),
    '',
    'Says',
    `  ${withMeanings(rule.reason, index)}`,
    ...(rule.pass_reason ? ['Says when kept', `  ${withMeanings(rule.pass_reason, index)}`] : []),
    'What to do',
    `  ${withMeanings(rule.remedy, index)}`,
    '',
    'Source',
    `  ${citationText(rule.citation)}`,
    `  ${PROVENANCE_WORDS[rule.citation.provenance]}`,
    '',
    ...underLimits(loaded, rulebook),
    ...(loaded.tightened?.raised
      ? [
          `Made a ban by house pack ${loaded.tightened.raised.pack.name}`,
          `  ${loaded.tightened.raised.reason}`,
          '',
        ]
      : []),
    ...(rule.reach
      ? [
          `${rule.reach.fires === 'never' ? 'Never' : 'Always'} fires with the shipped catalogue`,
          `  ${rule.reach.why}`,
          '',
        ]
      : []),
    'Examples',
    ...exampleLines(rule, index),
  ];
  return lines.join('\n');
}

function underLimits(loaded: LoadedRule, rulebook: Rulebook): string[] {
  const lines = limitLines(
    rulebook,
    loaded.limits.map(({ limit }) => limit),
  );
  return lines.length === 0 ? [] : ['Named limits that it reads', ...lines, ''];
}

function withMeanings(text: string, index: FactIndex): string {
  return text.replace(PLACEHOLDER, (_, id: string) => `[${index.get(id).meaning}]`);
}

function exampleLines(rule: Rule, index: FactIndex): string[] {
  const groups = [
    ['fires', rule.examples.fires],
    ['does not fire', rule.examples.silent],
    ['undecided', rule.examples.undecided ?? []],
  ] as const;
  return groups.flatMap(([word, examples]) =>
    examples.map((example) => `  - ${word}: ${example.name} (${factList(example.facts, index)})`),
  );
}

function factList(facts: Facts, index: FactIndex): string {
  return Object.entries(facts)
    .map(([id, value]) => {
      const entry = index.find(id);
      return `${id} ${entry ? formatFact(entry, value) : String(value)}`;
    })
    .join(', ');
}
