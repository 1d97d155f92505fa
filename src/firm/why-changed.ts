import type { Judged, JudgedWall } from '../advice/judge-walls.ts';
import { CRITERIA } from '../advice/scoring.ts';
import type { Provenance } from '../base/provenance.ts';
import { dollars, fixed, keyWords, numberText } from '../record/figure-text.ts';
import type { RuleOutcome, Verdict } from '../rulebook/rule-schema.ts';
import type { Reason } from './changes-schema.ts';
import type { Ruled } from './first-choice.ts';
import { optionsSurely, surely } from './report-words.ts';

/** Smaller differences of a part of the score are not worth a line. */
const SCORE_STEP = 0.01;

/**
 * Why two rule sets decide differently, or give other figures, told of the first choice before: what decides first
 * (rules against it now, rules that were against the new choice, a better score), then limits, prices, scores, verdicts.
 */
export function whyItChanged(before: Ruled, after: Ruled): Reason[] {
  const { choice: old } = before;
  const { choice: chosen } = after;
  const oldNow = old ? sameWall(after.judged, old) : undefined;
  const chosenThen = chosen ? sameWall(before.judged, chosen) : undefined;
  const anyWall = old ?? before.judged.walls[0];
  const anyNow = oldNow ?? (anyWall ? sameWall(after.judged, anyWall) : undefined);
  return [
    ...(oldNow ? ruledOut(oldNow) : []),
    ...(old && !oldNow
      ? [
          {
            kind: 'rules-it-out' as const,
            text: 'The old wall is no longer drawn up: a part of it is not on offer.',
          },
        ]
      : []),
    ...(chosenThen ? noLongerRuledOut(chosenThen, chosen) : []),
    ...(old && oldNow?.forbids === 0 ? outscored(old, oldNow, chosenThen, chosen) : []),
    ...(anyWall && anyNow ? otherLimits(before.judged, anyWall, after.judged, anyNow) : []),
    ...(old && oldNow ? otherPrice(before.judged, old, after.judged, oldNow) : []),
    ...(old && oldNow?.forbids === 0 ? otherScores(old, oldNow) : []),
    ...(old && oldNow ? otherVerdicts(old, oldNow) : []),
  ];
}

function sameWall({ walls }: Judged, { candidate }: JudgedWall): JudgedWall | undefined {
  return walls.find((wall) => wall.candidate.id === candidate.id);
}

function ruledOut(oldNow: JudgedWall): Reason[] {
  return oldNow.verdicts
    .outcomesWith('forbid')
    .map((outcome) => ({ kind: 'rules-it-out', text: outcome.text, ...sourceOf(outcome) }));
}

function noLongerRuledOut(chosenThen: JudgedWall, chosen: JudgedWall | null): Reason[] {
  if (!chosen) return [];
  return chosenThen.verdicts.outcomesWith('forbid').map((outcome) => ({
    kind: 'no-longer-ruled-out',
    text: `The new wall was ruled out: ${outcome.text}`,
    ...sourceOf(outcome),
  }));
}

function sourceOf({ rule, citation }: RuleOutcome): Pick<Reason, 'rule' | 'citation'> {
  return { rule: rule.id, citation };
}

const VERDICT_WORDS: Readonly<Record<Verdict | 'silent', string>> = {
  pass: 'kept',
  silent: 'nothing to say',
  caution: 'a caution',
  forbid: 'forbidden',
  prefer: 'in favour',
  undecided: 'can’t be decided',
};

/** Rules that say something else of the old wall now; those that rule it out have been told. */
function otherVerdicts(old: JudgedWall, oldNow: JudgedWall): Reason[] {
  const then = new Map(old.verdicts.outcomes().map((outcome) => [outcome.rule.id, outcome]));
  const now = new Map(oldNow.verdicts.outcomes().map((outcome) => [outcome.rule.id, outcome]));
  return [...new Set([...then.keys(), ...now.keys()])].sort().flatMap((id) => {
    const [a, b] = [then.get(id), now.get(id)];
    const outcome = b ?? a;
    if (!outcome || b?.verdict === 'forbid' || weight(a) === weight(b)) return [];
    const says = b !== undefined && weight(b) !== 'nothing';
    return [
      {
        kind: 'verdict' as const,
        text: outcome.rule.title,
        before: VERDICT_WORDS[a?.verdict ?? 'silent'],
        after: VERDICT_WORDS[b?.verdict ?? 'silent'],
        ...(says ? { detail: b.text } : {}),
        ...sourceOf(outcome),
      },
    ];
  });
}

/** What counts as the same: a rule that is kept and one with nothing to say; a preference that can't be decided. */
function weight(outcome: RuleOutcome | undefined): string {
  if (!outcome || outcome.verdict === 'pass') return 'nothing';
  return outcome.verdict === 'undecided' && outcome.rule.verdict === 'prefer' ? 'nothing' : outcome.verdict;
}

type Limit = {
  readonly text: string;
  /** In words, so that any two compare. */
  readonly value: string;
  readonly provenance?: Provenance | null;
  /** The value with how sure it is, where that differs from part to part of it. */
  readonly told?: string;
};

/** Limits and demands; the wall only says for which they are asked. */
function limitsOf({ assess, context }: Judged, { candidate }: JudgedWall): Limit[] {
  const { energy, vapour } = assess.partsOf(candidate);
  const { max_u_factor, requirement } = energy;
  return [
    { text: 'Climate zone', value: context.site.climate_zone },
    {
      text: 'Highest U-factor allowed',
      value: max_u_factor === null ? 'none' : fixed(max_u_factor, 3),
      provenance: requirement.provenance.max_u_factor,
    },
    { text: 'R-value options', value: energy.r_options ?? 'none', told: optionsSurely(energy) },
    {
      text: 'Exterior R-value asked for with a Class III retarder',
      value: vapour.min_ci_r_class_iii === null ? 'none' : `R-${numberText(vapour.min_ci_r_class_iii)}`,
    },
    { text: 'Outward wind at the corners', value: `${context.outward_wind_psf.toFixed(1)} psf` },
  ];
}

function otherLimits(before: Judged, old: JudgedWall, after: Judged, now: JudgedWall): Reason[] {
  const then = limitsOf(before, old);
  return limitsOf(after, now).flatMap((is) => {
    const was = then.find(({ text }) => text === is.text);
    if (!was || was.value === is.value) return [];
    return [{ kind: 'limit' as const, text: is.text, before: toldOf(was), after: toldOf(is) }];
  });
}

function toldOf({ told, value, provenance }: Limit): string {
  return told ?? surely(value, provenance);
}

function otherPrice(before: Judged, old: JudgedWall, after: Judged, now: JudgedWall): Reason[] {
  const [was, is] = [
    before.assess.partsOf(old.candidate).cost.likely,
    after.assess.partsOf(now.candidate).cost.likely,
  ].map((usd) => `${dollars(Number((usd ?? 0).toFixed(2)))} per ft²`);
  if (was === is || was === undefined || is === undefined) return [];
  return [{ kind: 'price', text: 'Likely cost of the old wall', before: was, after: is }];
}

/** The old wall still passes, but another comes out better. */
function outscored(
  old: JudgedWall,
  oldNow: JudgedWall,
  chosenThen: JudgedWall | undefined,
  chosen: JudgedWall | null,
): Reason[] {
  if (!chosen || chosen.candidate.id === old.candidate.id) return [];
  const then =
    chosenThen && chosenThen.forbids === 0
      ? `before, ${fixed(chosenThen.score, 4)} against ${fixed(old.score, 4)}`
      : 'before, the new one did not pass';
  return [
    {
      kind: 'score',
      text: `The old wall still passes, but the new one scores ${fixed(chosen.score, 4)} against its ${fixed(oldNow.score, 4)} (${then}).`,
    },
  ];
}

/** What the old wall scores now, part by part. */
function otherScores(old: JudgedWall, oldNow: JudgedWall): Reason[] {
  return CRITERIA.flatMap((key): Reason[] => {
    const [was, is] = [old.scores[key], oldNow.scores[key]];
    if (Math.abs(was - is) < SCORE_STEP) return [];
    return [{ kind: 'score', text: keyWords(key), before: fixed(was, 2), after: fixed(is, 2) }];
  });
}
