import { advise } from '../../advice/advise.ts';
import type { Knowledge } from '../../advice/judge-walls.ts';
import { describeIssue, type Issue, Refusal } from '../../base/refusal.ts';
import { readScenario } from '../../brief/read-scenario.ts';
import type { Scenario } from '../../brief/scenario.ts';
import { parseJsonText } from '../json-text.ts';
import { jsonLine } from '../output.ts';
import { decodeText, STANDARD_INPUT, sourceName } from '../read-text.ts';
import { TOOL_VERSION } from '../version.ts';
import type { BatchAnswer, BatchTask } from './batch-item.ts';
import { shortAnswer } from './short-answer.ts';

/** How messages call a line: which one it is stands beside them. */
export const LINE_NAME = 'this line';

/** More would make a line of a hopeless document longer than any answer. */
const MOST_ISSUES = 20;

/**
 * The answer to one scenario as a line: what `advise --json` says, or what is wrong with the scenario. Nothing that
 * comes in makes it fail.
 */
export async function answerLine(task: BatchTask, knowledge: Knowledge): Promise<BatchAnswer> {
  try {
    const given = scenarioOf(task);
    const { edition, top, isShort } = task.means;
    const scenario = edition === null ? given : { ...given, code_edition: edition };
    const advice = await advise(scenario, knowledge, { top, toolVersion: TOOL_VERSION });
    return {
      text: jsonLine(isShort ? shortAnswer(advice) : advice),
      outcome: advice.ranked.length > 0 ? 'answered' : 'nothing-passes',
    };
  } catch (error) {
    return error instanceof Refusal
      ? failedLine(task, error.issues, 'failed')
      : failedLine(task, [faultIssue(error)], 'fault');
  }
}

function scenarioOf({ content, source, source_line }: BatchTask): Scenario {
  if ('field' in content) throw new Refusal(content);
  const isOneLine = source_line !== null;
  const name = isOneLine ? LINE_NAME : source;
  const text = decodeText(content, name);
  if (isOneLine && text.trim() === '') {
    throw new Refusal({ field: name, value: '(nothing)', accepted: 'Give one scenario on each line.' });
  }
  return readScenario(parseJsonText(text, name, isOneLine));
}

/** The line in the place of an answer; `cladwright-batch-error/1`. */
export function failedLine(
  { line, source, source_line }: Pick<BatchTask, 'line' | 'source' | 'source_line'>,
  issues: readonly Issue[],
  outcome: 'failed' | 'fault',
): BatchAnswer {
  const shown = issues.slice(0, MOST_ISSUES);
  const more = issues.length - shown.length;
  const message = [...shown.map(describeIssue), ...(more > 0 ? [`and ${more} more`] : [])].join('\n');
  return {
    outcome,
    message,
    text: jsonLine({
      schema: 'cladwright-batch-error/1',
      line,
      source,
      // On standard input it says no more than "line", and a part of a longer input must fail in the same words.
      ...(source_line === null || source === sourceName(STANDARD_INPUT) ? {} : { source_line }),
      error: outcome === 'fault' ? `internal fault: ${message}` : message,
      issues: shown,
    }),
  };
}

/** A defect of the program, told in the same shape. */
export function faultIssue(error: unknown): Issue {
  const message = error instanceof Error ? error.message : String(error);
  return {
    field: 'this scenario',
    value: 'the answer to it',
    accepted: `The program failed at it: ${message.split('\n')[0] || 'no message'}`,
  };
}
