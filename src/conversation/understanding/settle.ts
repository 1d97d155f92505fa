import type { FieldId, Finding } from '../answers.ts';
import { sameAnswer } from '../answers.ts';
import { OWN_HANDS_HINT } from './read-job.ts';
import type { Gathering } from './reading.ts';

/** Nominal lumber is wood unless steel was said; then its size says nothing. */
export function settleFraming(gathering: Gathering): void {
  const nominal = gathering.findings.find(
    (finding) => finding.field === 'framing.depth_in' && /^(?:2|two|38) ?(?:x|by|-)/.test(finding.words),
  );
  if (!nominal) return;
  const said = gathering.findings.find((finding) => finding.field === 'framing.material')?.value;
  const known = gathering.context.answers['framing.material'];
  if (
    said === 'steel' ||
    (said === undefined && known === 'steel' && !gathering.isOpen('framing.material'))
  ) {
    gathering.findings.splice(gathering.findings.indexOf(nominal), 1);
    gathering.puzzle(nominal.words, 'Steel studs go by their depth in inches: 3 1/2, 3 5/8, 5 1/2, 6 or 8.');
  } else if (said === undefined && known === undefined) {
    gathering.findings.push({ field: 'framing.material', value: 'wood', words: nominal.words });
  }
}

/** Insulation between the studs became usual in the 1970s, with the first energy codes (from memory). */
const USUALLY_FILLED_SINCE = 1980;

/** An old house stands already, and its stud bays may be empty: that is said where it is still open. */
export function settleAge(gathering: Gathering): void {
  const { builtIn, context, findings } = gathering;
  const isCavityOpen =
    context.answers.cavity_insulation_r === undefined &&
    !findings.some(({ field }) => field === 'cavity_insulation_r');
  if (builtIn === null || builtIn >= USUALLY_FILLED_SINCE || !isCavityOpen) return;
  gathering.notes.push(
    `A house of ${builtIn} may have nothing between the studs, or fill that came later (from memory): find out before you order. I ask about it; "how can I tell" says how.`,
  );
}

/** "Ourselves, never done it before": the second half answers what the first leaves open. */
export function settleOwnHands({ findings, unclear }: Gathering): void {
  const at = unclear.findIndex(({ hint }) => hint === OWN_HANDS_HINT);
  if (at >= 0 && findings.some(({ field }) => field === 'crew_skill')) unclear.splice(at, 1);
}

/** What is named without its figure is asked about, unless the line gives the figure or leaves it open. */
export function settleVague(
  { vague, unclear, findings, context }: Gathering,
  unknowns: readonly FieldId[],
): void {
  if (vague && !context.open.some((field) => isSaid(field, findings, unknowns)))
    unclear.push({ words: vague.words, hint: vague.hint });
}

export function isSaid(field: FieldId, findings: readonly Finding[], unknowns: readonly FieldId[]): boolean {
  return findings.some((finding) => finding.field === field) || unknowns.includes(field);
}

/** One line that gives a field two values gives it none. */
export function withoutClashes(findings: readonly Finding[]): {
  findings: Finding[];
  clashes: { words: string; hint: string }[];
} {
  const kept: Finding[] = [];
  const clashes: { words: string; hint: string }[] = [];
  for (const field of new Set(findings.map((finding) => finding.field))) {
    const same = findings.filter((finding) => finding.field === field);
    const [first] = same;
    if (!first) continue;
    if (same.every((finding) => sameAnswer(finding.value, first.value))) kept.push(first);
    else {
      clashes.push({
        words: same.map((finding) => finding.words).join(' / '),
        hint: 'Those are two answers to one question. Which one holds?',
      });
    }
  }
  return { findings: kept, clashes };
}
