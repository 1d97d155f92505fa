import { isOpenQuestion } from '../rulebook/outcome.ts';
import type { RuleOutcome } from '../rulebook/rule-schema.ts';
import type { Caution } from './advice-schema.ts';
import { cautionKind } from './caution-kinds.ts';
import { howToFindOut } from './find-out.ts';
import { houseMark } from './house-mark.ts';

/** Cautions of the safety pack are told once for the whole answer, as far as they hold for the first choice. */
export function isGeneral(caution: Caution): boolean {
  return caution.rule?.startsWith('safety.') ?? false;
}

/** Cautions in the order of the rules, then what can't be decided, one caution for each thing that is not known. */
export function cautionsOf(outcomes: readonly RuleOutcome[]): Caution[] {
  const spoken = outcomes.filter(
    ({ verdict, missing }) => verdict === 'caution' || (verdict === 'undecided' && missing.length === 0),
  );
  const open = outcomes.filter((outcome) => isOpenQuestion(outcome) && outcome.missing.length > 0);
  return [...spoken.map((outcome) => caution(outcome, outcome.text)), ...openQuestions(open, outcomes)];
}

function caution(outcome: RuleOutcome, text: string): Caution {
  return {
    text,
    kind: cautionKind(outcome.rule.id, outcome.concern),
    rule: outcome.rule.id,
    remedy: outcome.remedy,
    ...houseMark(outcome),
  };
}

/** Facts that are only unknown because the interior vapour retarder is. */
const FOLLOWS_FROM_RETARDER = new Set([
  'retarder.dry_cup_perm',
  'retarder.wet_cup_perm',
  'vapour.verdict',
  'moisture.inward_permeance_perm',
  'moisture.condensate_peak_g_m2',
  'moisture.dries_within_year',
]);

/** Facts that are only unknown because another one is. */
const FOLLOWS_FROM: Readonly<Record<string, string>> = {
  'thickness.face_to_lot_line_ft': 'site.fire_separation_ft',
};

/** The answer that each of these facts is. */
const ANSWER_OF: Readonly<Record<string, string>> = {
  'retarder.class': 'interior_vapour_retarder',
  'site.fire_separation_ft': 'fire_separation_ft',
  'site.is_wildfire_area': 'wildfire_area',
  'site.termite_area': 'termite_area',
  'project.budget_usd_per_ft2': 'budget_usd_per_ft2',
};

/** Rules that wait for the same unknown facts speak as one. */
function openQuestions(open: readonly RuleOutcome[], all: readonly RuleOutcome[]): Caution[] {
  const retarderUnknown = all.some(({ facts }) => facts['retarder.class'] === null);
  const rootOf = (id: string) =>
    retarderUnknown && FOLLOWS_FROM_RETARDER.has(id) ? 'retarder.class' : (FOLLOWS_FROM[id] ?? id);
  const groups = new Map<string, RuleOutcome[]>();
  for (const outcome of open) {
    const key = [...new Set(outcome.missing.map(rootOf))].sort().join(' ');
    groups.set(key, [...(groups.get(key) ?? []), outcome]);
  }
  return [...groups.values()].flatMap((group) => {
    // The one that waits for the thing itself, not for what follows from it, says most plainly what is missing.
    const derived = ({ missing }: RuleOutcome) => missing.filter((id) => rootOf(id) !== id).length;
    const [first] = [...group].sort((a, b) => derived(a) - derived(b) || a.missing.length - b.missing.length);
    if (!first) return [];
    const answers = first.missing.map((id) => ANSWER_OF[rootOf(id)]);
    const how = [...new Set(answers)].map((field) => (field === undefined ? null : howToFindOut(field)));
    if (group.length === 1) return [{ ...caution(first, first.text), ...remedyOf(how, first) }];
    // Titles are sentences or phrases; quoted, they stand side by side.
    const titles = group.map((outcome) => `“${outcome.rule.title}”`).join(', ');
    const text = `${group.length} rules wait for something not known (${missingWords(first)}): ${titles}.`;
    return [{ ...caution(first, text), ...remedyOf(how, null) }];
  });
}

/** What is not known is found out first; what to do if a rule then holds is told where only one waits. */
function remedyOf(how: readonly (string | null)[], alone: RuleOutcome | null): { remedy?: string } {
  if (how.length === 0 || how.includes(null)) return {};
  const then = alone?.remedy ? ` If the rule then holds: ${alone.remedy}` : '';
  return { remedy: `Find it out first. ${how.join(' ')}${then}` };
}

/** The outcome's own words for what it lacks; it ends "…, because this is not known: <words>." */
function missingWords(outcome: RuleOutcome): string {
  const marker = 'this is not known: ';
  const at = outcome.text.indexOf(marker);
  return at < 0 ? outcome.missing.join(', ') : outcome.text.slice(at + marker.length).replace(/\.$/, '');
}
