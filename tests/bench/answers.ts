import { advise } from '../../src/advice/advise.ts';
import { chooseAlternatives } from '../../src/advice/choose-alternatives.ts';
import { judgeWalls, type Knowledge } from '../../src/advice/judge-walls.ts';
import { resolveBrief } from '../../src/brief/resolve-brief.ts';
import type { Scenario } from '../../src/brief/scenario.ts';
import { loadKnowledge } from '../../src/cli/knowledge.ts';
import { resolveSite } from '../../src/site/resolve-site.ts';
import { count, heading, line, median, ms, timed } from './measure.ts';
import { sampleScenarios, variedScenario } from './varied-scenarios.ts';

const MINIMAL: Scenario = { schema: 'cladwright-scenario/1', place: { state: 'CO', county: 'Boulder' } };
const OPTIONS = { top: 3, toolVersion: 'bench' };

/** The same knowledge without anything kept of earlier answers. */
const afresh = (knowledge: Knowledge): Knowledge => ({
  ...knowledge,
  catalogue: { ...knowledge.catalogue },
});

async function judgeAndRank(scenario: Scenario, knowledge: Knowledge): Promise<number> {
  const { brief } = resolveBrief(scenario);
  const site = await resolveSite(brief.place, brief.code_edition);
  const judged = await judgeWalls(brief, site, knowledge);
  chooseAlternatives(judged.admitted, 3);
  return judged.set.candidates.length;
}

/** One answer in a warm process, and answers one after the other. */
export async function answers(): Promise<void> {
  const knowledge = await loadKnowledge({ housePacks: [] });
  const samples = sampleScenarios();
  const varied = (i: number) => variedScenario(samples, i);
  // Warm: the machine code is there and the rules know most classes; the jobs themselves are new.
  for (let i = 0; i < 40; i++) await advise(varied(10_000 + i), knowledge, OPTIONS);

  heading('One answer, warm', 'every run another job: other place, wind, height, size and budget');
  let walls = 0;
  const nothingKept = await timed(20, async (i) => {
    walls += await judgeAndRank(varied(i), afresh(knowledge));
  });
  const usual = median(nothingKept);
  line('walls in an answer, mean', count(walls / 20));
  line('judge and rank all walls, nothing kept from other answers', ms(usual), {
    words: 'under 150 ms',
    isMet: usual < 150,
  });
  line('walls judged a second', count((walls / nothingKept.reduce((a, b) => a + b, 0)) * 1000));
  const next = median(await timed(20, (i) => judgeAndRank(varied(100 + i), knowledge)));
  line('the same as the next of a batch', ms(next));

  heading(
    'Full scenarios, one core',
    'advise(): all walls, all other readings of every assumption judged again, top 3 with reasons, figures and schedules; 16 places by 10 walls, of which the water of a year is kept',
  );
  const full = await timed(60, (i) => advise(varied(200 + i), knowledge, OPTIONS));
  const rate = 60_000 / full.reduce((a, b) => a + b, 0);
  line('samples at varied places: each', ms(median(full)));
  line('samples at varied places: a second', rate.toFixed(1), { words: '20 or more', isMet: rate >= 20 });
  const alike = await timed(60, (i) =>
    advise(
      {
        ...varied(i),
        place: { state: 'CO', county: 'Boulder' },
        basic_wind_speed_mph: 115,
        mean_roof_height_ft: 24,
      },
      knowledge,
      OPTIONS,
    ),
  );
  line(
    'at one place in one wind, other sizes and budgets: a second',
    (60_000 / alike.reduce((a, b) => a + b, 0)).toFixed(1),
  );
  const little = await timed(8, (i) => advise({ ...MINIMAL, wall_area_ft2: 1000 + i }, knowledge, OPTIONS));
  line('only a place given, some twenty readings tried: each', ms(median(little)));
}
