import { judgeWalls } from '../../src/advice/judge-walls.ts';
import { Partitions } from '../../src/base/partitions.ts';
import { resolveBrief } from '../../src/brief/resolve-brief.ts';
import { loadKnowledge } from '../../src/cli/knowledge.ts';
import { FactSheets } from '../../src/rulebook/fact-sheets.ts';
import { PlainEvaluator } from '../../src/rulebook/plain-evaluation.ts';
import { RuleEngine } from '../../src/rulebook/rule-engine.ts';
import { resolveSite } from '../../src/site/resolve-site.ts';
import { count, heading, line, median, ms, timed, times } from './measure.ts';
import { sampleScenarios } from './varied-scenarios.ts';

/** The plain way is slow: it is timed on so many walls, spread over all. */
const PLAIN_WALLS = 150;

/** Rules judged once for each class of facts against one engine run for every wall. The outcomes must be the same. */
export async function rules(): Promise<void> {
  heading(
    'Rules',
    `json-rules-engine both ways; the plain way is timed on ${PLAIN_WALLS} walls of an answer and held against the other`,
  );
  for (const scenario of sampleScenarios().slice(0, 3)) {
    const { brief } = resolveBrief(scenario);
    const edition = brief.code_edition;
    const knowledge = await loadKnowledge({ housePacks: [] });
    const { rulebook } = knowledge;
    const judged = await judgeWalls(brief, await resolveSite(brief.place, edition), knowledge);
    const { sheets } = judged.verdicts;
    const evaluations = rulebook.rulesOf(edition).length * sheets.count;

    const plain = new PlainEvaluator(rulebook, edition);
    const step = Math.max(1, Math.floor(sheets.count / PLAIN_WALLS));
    const walls = Array.from({ length: PLAIN_WALLS }, (_, i) => (i * step) % sheets.count);
    const facts = walls.map((wall) => sheets.sheet(wall));
    // Without the texts of the outcomes, which the other way writes only when they are asked for.
    const engine = new RuleEngine(rulebook.rulesOf(edition).map((loaded) => loaded.rule));
    await engine.run(facts[0] ?? {});
    const each = median(await timed(PLAIN_WALLS, (i) => engine.run(facts[i] ?? {})));
    let differing = 0;
    for (const [i, wall] of walls.entries()) {
      const same = await plain.evaluate(facts[i] ?? {});
      if (JSON.stringify(same) !== JSON.stringify(judged.verdicts.of(wall).outcomes())) differing += 1;
    }

    // A rulebook that has seen nothing yet; and one that knows the classes, given sheets of which it has seen none.
    const [cold = 0] = await timed(1, async () => {
      const fresh = await loadKnowledge({ housePacks: [] });
      const start = performance.now();
      await fresh.rulebook.judgeAll(sheets, edition);
      return performance.now() - start;
    });
    const warm = median(await timed(15, () => rulebook.judgeAll(unseen(sheets), edition)));
    const plainMs = each * sheets.count;
    console.log(
      `  ${scenario.name ?? 'no name'}: ${count(sheets.count)} walls, ${count(evaluations)} evaluations`,
    );
    line('  plain, one engine run for every wall', `${count(evaluations / plainMs)}/ms`);
    line('  once for each class, warm', `${count(evaluations / warm)}/ms`);
    line('  the same, whole answer', ms(warm));
    line('  the first answer of a process, engines made as well', ms(cold));
    line('  ratio warm', times(plainMs / warm), { words: '20x', isMet: plainMs / warm >= 20 });
    line('  ratio of the first answer', times(plainMs / cold), { words: '20x', isMet: plainMs / cold >= 20 });
    line('  walls with another outcome', String(differing), { words: 'none', isMet: differing === 0 });
    if (differing > 0) process.exitCode = 1;
  }
}

/** The same facts for a rulebook that can't know it: nothing of the last verdicts is taken over. */
function unseen({ shape, slots }: FactSheets): FactSheets {
  return new FactSheets(new Partitions(shape.items, shape.parts), slots);
}
