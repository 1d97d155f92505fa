import { advise } from '../advice/advise.ts';
import type { Knowledge } from '../advice/judge-walls.ts';
import { whyNot } from '../advice/why-not.ts';
import { parseInput } from '../base/parse-input.ts';
import { Refusal, showValue } from '../base/refusal.ts';
import { CODE_EDITIONS, type Scenario, scenarioSchema } from '../brief/scenario.ts';
import { blocksToText } from '../conversation/blocks.ts';
import { adviceBlocks } from '../conversation/tell-advice.ts';
import { whyNotBlocks } from '../conversation/tell-why-not.ts';
import { basisOf } from '../record/basis.ts';
import { saveRecord } from '../record/save-record.ts';
import { EXIT, type ExitCode } from './exit-codes.ts';
import { letInterruptsIn } from './interrupts.ts';
import { parseJsonText } from './json-text.ts';
import { loadKnowledge } from './knowledge.ts';
import { jsonDocument, textWidth, writeResult } from './output.ts';
import { readTop } from './read-number.ts';
import { readText, sourceName } from './read-text.ts';
import { saveFolder } from './save-folder.ts';
import { SOURCE_DIGEST, TOOL_VERSION } from './version.ts';

export type AdviseFlags = {
  readonly json?: true;
  readonly top: string;
  readonly save?: string;
  readonly houseRules?: readonly string[];
  readonly edition?: string;
  readonly ascii?: true;
  readonly whyNot?: string;
};

/**
 * `advise SCENARIO`: one answer, no questions. Nothing is written before the whole answer stands, so that a refusal
 * leaves no trace.
 *
 * @returns 1 when no assembly passes
 * @throws Refusal for bad flags, a scenario that can't be read or worked on, house rules with an error
 */
export async function runAdvise(path: string | undefined, flags: AdviseFlags): Promise<ExitCode> {
  const top = readTop(flags.top);
  const edition = readEdition(flags.edition);
  const dir = saveFolder(flags.save);
  const given = await readScenario(path);
  const scenario = edition === undefined ? given : { ...given, code_edition: edition };
  const knowledge = await loadKnowledge({ housePacks: flags.houseRules ?? [] });
  if (flags.whyNot !== undefined) return explainWhyNot(scenario, flags.whyNot, knowledge, flags);
  const advice = await advise(scenario, knowledge, { top, toolVersion: TOOL_VERSION });
  await letInterruptsIn();
  const text = flags.json
    ? jsonDocument(advice)
    : blocksToText(adviceBlocks(advice), textWidth(), { ascii: flags.ascii ?? false });
  if (dir !== undefined) {
    const { paths } = await saveRecord({
      dir,
      scenario,
      advice,
      created: new Date(),
      basis: basisOf(knowledge, SOURCE_DIGEST),
    });
    process.stderr.write(paths.map((saved) => `saved ${saved}\n`).join(''));
  }
  await writeResult(text);
  return advice.ranked.length === 0 ? EXIT.answerIsNo : EXIT.done;
}

/** `advise SCENARIO --why-not WORDS`: one question about one wall. It is answered whatever the answer is, so always 0. */
async function explainWhyNot(
  scenario: Scenario,
  words: string,
  knowledge: Knowledge,
  flags: AdviseFlags,
): Promise<ExitCode> {
  if (flags.save !== undefined)
    throw new Refusal({
      field: '--save',
      value: showValue(flags.save),
      accepted: 'A record holds an answer: leave out "--why-not" to save one.',
    });
  const told = await whyNot(scenario, words, knowledge, TOOL_VERSION);
  await letInterruptsIn();
  await writeResult(
    flags.json
      ? jsonDocument(told)
      : blocksToText(whyNotBlocks(told), textWidth(), { ascii: flags.ascii ?? false }),
  );
  return EXIT.done;
}

async function readScenario(path: string | undefined): Promise<Scenario> {
  if (path === undefined) {
    throw new Refusal({
      field: 'SCENARIO',
      value: showValue(path),
      accepted:
        'Give the path of a scenario file, or "-" for standard input. After "--house-rules" every word counts as a rules file: put the scenario first.',
    });
  }
  return parseInput(scenarioSchema, parseJsonText(await readText(path, 'SCENARIO'), sourceName(path)));
}

function readEdition(text: string | undefined): (typeof CODE_EDITIONS)[number] | undefined {
  if (text === undefined) return undefined;
  const known = CODE_EDITIONS.find((edition) => edition === text);
  if (known) return known;
  throw new Refusal({
    field: '--edition',
    value: showValue(text),
    accepted: `Give one of ${CODE_EDITIONS.join(', ')}.`,
  });
}
