import { type Candidate, drawUpCandidates } from '../../src/assembly/candidates.ts';
import { type AnswerContext, answerContext } from '../../src/assessment/answer-context.ts';
import { fasteningPart } from '../../src/assessment/fastening-part.ts';
import { fasteningSchedule } from '../../src/assessment/fastening-schedule.ts';
import { claddingsOnDeeperFurring } from '../../src/assessment/on-furring.ts';
import type {
  FasteningScheduleAnswer,
  ScheduleStep,
  ScheduleZone,
} from '../../src/assessment/schedule/schedule-schema.ts';
import { windowsPart } from '../../src/assessment/windows-part.ts';
import { resolveSite } from '../../src/site/resolve-site.ts';
import { briefOf, KNOWLEDGE } from '../advice/pipeline.ts';

export async function contextOf(change: object = {}): Promise<AnswerContext> {
  const brief = briefOf(change);
  const site = await resolveSite(brief.place, brief.code_edition);
  return answerContext(brief, site, KNOWLEDGE.tables, KNOWLEDGE.catalogue);
}

/** As an answer draws them up: on deeper furring where the wind asks for it. */
function drawn(context: AnswerContext): Candidate[] {
  return drawUpCandidates(context.brief, KNOWLEDGE.catalogue, {
    deeper: claddingsOnDeeperFurring(context),
    units: windowsPart(context).windows,
  });
}

/** One wall for each cladding and board build of the catalogue. */
export function everyFace(context: AnswerContext): Candidate[] {
  const seen = new Set<Candidate['face']>();
  return drawn(context).filter(({ face }) => {
    if (seen.has(face)) return false;
    seen.add(face);
    return true;
  });
}

/** @param build  for example "mineral-wool-1.5+1.5" */
export function wallOf(context: AnswerContext, cladding: string, build: string, buck?: string): Candidate {
  const found = drawn(context).find(
    (candidate) =>
      candidate.cladding.id === cladding &&
      `${candidate.build.insulation.id}-${candidate.build.boards_in.join('+')}` === build &&
      (buck === undefined || candidate.buck.id === buck),
  );
  if (!found) throw new Error(`the catalogue draws up no ${cladding} over ${build}`);
  return found;
}

export function scheduleOf(candidate: Candidate, context: AnswerContext): FasteningScheduleAnswer {
  return fasteningSchedule(candidate, { fastening: fasteningPart(candidate.face, context) }, context);
}

export async function schedule(
  cladding: string,
  build: string,
  change: object = {},
  buck?: string,
): Promise<FasteningScheduleAnswer> {
  const context = await contextOf(change);
  return scheduleOf(wallOf(context, cladding, build, buck), context);
}

/** The line whose words for what it fixes begin so. */
export function line({ steps }: FasteningScheduleAnswer, fixes: string): ScheduleStep {
  const found = steps.find((step) => step.fixes.startsWith(fixes));
  if (!found) throw new Error(`no line fixes "${fixes}": ${steps.map((step) => step.fixes).join(' | ')}`);
  return found;
}

export function zone(step: ScheduleStep, name: 'field' | 'corner'): ScheduleZone {
  const found = step.zones.find((one) => one.zone === name);
  if (!found) throw new Error(`no ${name}`);
  return found;
}
