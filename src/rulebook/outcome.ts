import { citationText } from './citation.ts';
import type { FactIndex } from './fact-dictionary.ts';
import { fillText } from './fill-text.ts';
import type { LoadedRule } from './loaded-rule.ts';
import type { Facts, FactValue, RuleOutcome } from './rule-schema.ts';
import { appliesTruth, known, type RuleState, stateOf, truthOf } from './three-valued.ts';

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
  const { rule, concern, pack } = loaded;
  const mark = houseMark(loaded, state, facts);
  const text = textOf(loaded, state, missing, facts, index);
  const read: Record<string, FactValue> = {};
  for (const id of loaded.reads) read[id] = known(facts, id);
  return {
    rule,
    concern,
    pack,
    house: mark !== null,
    house_pack: mark?.pack ?? null,
    verdict: state === 'fires' ? rule.verdict : state === 'open' ? 'undecided' : 'pass',
    text: mark ? `House rule (${mark.pack}): ${text}${mark.why}` : text,
    remedy: fillText(rule.remedy, facts, index),
    citation: citationText(rule.citation),
    missing,
    facts: read,
  };
}

type HouseMark = { readonly pack: string; readonly why: string };

/** A shipped rule that a firm tightened speaks for the firm only where it would not have spoken so by itself. */
function houseMark(
  { rule, house, pack, tightened }: LoadedRule,
  state: Exclude<RuleState, 'silent'>,
  facts: Facts,
): HouseMark | null {
  if (house) return { pack, why: '' };
  if (!tightened || state === 'pass') return null;
  const { before, limits, raised } = tightened;
  const shipped = stateOf(appliesTruth(before, facts), truthOf(before.conditions, facts));
  if (shipped === state && before.verdict === rule.verdict) return null;
  const moved = limits.map(
    ({ meaning, from_text, to_text, reason }) =>
      ` The firm's own limit on ${meaning} is ${to_text} instead of ${sentence(from_text)} ${sentence(reason)}`,
  );
  const ban = raised
    ? [` The firm made this a ban; it is shipped as "${raised.from}". ${sentence(raised.reason)}`]
    : [];
  const by = limits[0]?.pack ?? raised?.pack;
  return { pack: by?.name ?? pack, why: [...moved, ...ban].join('') };
}

function sentence(text: string): string {
  return /[.!?]$/.test(text) ? text : `${text}.`;
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
