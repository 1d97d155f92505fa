import type { Advice } from '../advice/advice-schema.ts';
import { advise } from '../advice/advise.ts';
import type { Knowledge } from '../advice/judge-walls.ts';
import type { WhyNot } from '../advice/why-not-schema.ts';
import { Refusal, showValue } from '../base/refusal.ts';
import { readScenario } from '../brief/read-scenario.ts';
import { CODE_EDITIONS, type Scenario } from '../brief/scenario.ts';
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
  const given = await scenarioAt(path);
  const scenario = edition === undefined ? given : { ...given, code_edition: edition };
  const knowledge = await loadKnowledge({ housePacks: flags.houseRules ?? [] });
  if (flags.whyNot !== undefined) return explainWhyNot(scenario, flags.whyNot, knowledge, flags);
  const advice = await advise(scenario, knowledge, { top, toolVersion: TOOL_VERSION });
  await letInterruptsIn();
  const text = flags.json ? jsonDocument(advice) : await adviceText(advice, flags);
  if (dir !== undefined) await save(dir, scenario, advice, knowledge);
  await writeResult(text);
  return advice.ranked.length === 0 ? EXIT.answerIsNo : EXIT.done;
}

// What draws text, writes records or explains is loaded where it is asked for: a JSON answer needs none of it.

async function adviceText(advice: Advice, flags: AdviseFlags): Promise<string> {
  const [{ blocksToText }, { adviceBlocks }] = await Promise.all([
    import('../conversation/blocks.ts'),
    import('../conversation/tell-advice.ts'),
  ]);
  return blocksToText(adviceBlocks(advice), textWidth(), { ascii: flags.ascii ?? false });
}

async function whyNotText(told: WhyNot, flags: AdviseFlags): Promise<string> {
  const [{ blocksToText }, { whyNotBlocks }] = await Promise.all([
    import('../conversation/blocks.ts'),
    import('../conversation/tell-why-not.ts'),
  ]);
  return blocksToText(whyNotBlocks(told), textWidth(), { ascii: flags.ascii ?? false });
}

async function save(dir: string, scenario: Scenario, advice: Advice, knowledge: Knowledge): Promise<void> {
  const [{ saveRecord }, { basisOf }] = await Promise.all([
    import('../record/save-record.ts'),
    import('../record/basis.ts'),
  ]);
  const basis = basisOf(knowledge, SOURCE_DIGEST);
  const { paths } = await saveRecord({ dir, scenario, advice, created: new Date(), basis });
  process.stderr.write(paths.map((saved) => `saved ${saved}\n`).join(''));
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
  const { whyNot } = await import('../advice/why-not.ts');
  const told = await whyNot(scenario, words, knowledge, TOOL_VERSION);
  await letInterruptsIn();
  await writeResult(flags.json ? jsonDocument(told) : await whyNotText(told, flags));
  return EXIT.done;
}

async function scenarioAt(path: string | undefined): Promise<Scenario> {
  if (path === undefined) {
    throw new Refusal({
      field: 'SCENARIO',
      value: showValue(path),
      accepted:
        'Give the path of a scenario file, or "-" for standard input. After "--house-rules" every word counts as a rules file: put the scenario first.',
    });
  }
  return readScenario(parseJsonText(await readText(path, 'SCENARIO'), sourceName(path)));
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
