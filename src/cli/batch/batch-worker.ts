import type { Knowledge } from '../../advice/judge-walls.ts';
import { loadKnowledge } from '../knowledge.ts';
import { answerLine } from './answer-line.ts';
import type { BatchAnswer, BatchTask } from './batch-item.ts';

let loading: Promise<Knowledge> | undefined;

/** What a worker thread does: one task after the other, with rules and catalogue loaded once. */
export default async function answerTask(task: BatchTask): Promise<BatchAnswer> {
  loading ??= loadKnowledge({ housePacks: task.means.housePacks });
  return answerLine(task, await loading);
}
