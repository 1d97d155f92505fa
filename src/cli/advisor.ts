import type { Advice } from '../advice/advice-schema.ts';
import type { Impression } from '../advice/first-impression.ts';
import type { Knowledge } from '../advice/judge-walls.ts';
import type { WhyNot } from '../advice/why-not-schema.ts';
import type { Scenario } from '../brief/scenario.ts';
import type { Progress } from '../conversation/session.ts';
import { Stopped } from '../conversation/stopping.ts';
import type { Basis } from '../record/record-schema.ts';
import { letInterruptsIn } from './interrupts.ts';
import { SOURCE_DIGEST, TOOL_VERSION } from './version.ts';

/** Assemblies that a conversation ranks. */
const RANKED = 3;

/** What a piece of work is told while it runs. */
export type WorkOptions = {
  readonly signal?: AbortSignal | undefined;
  readonly onProgress?: ((progress: Progress) => void) | undefined;
};

/** The work behind a conversation: everything that takes longer than a keystroke may. */
export type Advisor = {
  advise(scenario: Scenario, options?: WorkOptions): Promise<Advice>;
  firstImpression(scenario: Scenario, options?: WorkOptions): Promise<Impression>;
  fieldsThatMatter(scenario: Scenario, options?: WorkOptions): Promise<readonly string[]>;
  whyNot(scenario: Scenario, words: string, options?: WorkOptions): Promise<WhyNot>;
  /** What a record rests on: rules, tables, catalogue, program. */
  basis(): Promise<Basis>;
};

/** An advisor that can be got ready before it is asked, and put away. */
export type ReadyAdvisor = Advisor & { load(): Promise<void>; close(): Promise<void> };

/**
 * The advisor in this thread. Rules and engine are loaded when the first answer is worked out, so that the first
 * question is there at once.
 */
export function advisorHere(housePacks: readonly string[]): ReadyAdvisor {
  let loading: Promise<Knowledge> | undefined;
  const knowledge = () => {
    loading ??= import('./knowledge.ts').then(({ loadKnowledge }) => loadKnowledge({ housePacks }));
    return loading;
  };
  const watched = async (options: WorkOptions = {}) => watching(await knowledge(), options);
  return {
    async load() {
      await knowledge();
    },
    async close() {},
    async advise(scenario, options) {
      const { advise } = await import('../advice/advise.ts');
      const advice = await advise(scenario, await watched(options), {
        top: RANKED,
        toolVersion: TOOL_VERSION,
      });
      await letInterruptsIn();
      return advice;
    },
    async firstImpression(scenario, options) {
      const { firstImpression } = await import('../advice/first-impression.ts');
      return firstImpression(scenario, await watched(options));
    },
    async fieldsThatMatter(scenario, options) {
      const { fieldsThatMatter } = await import('../advice/first-impression.ts');
      const { isAskedAbout } = await import('../conversation/matter.ts');
      return fieldsThatMatter(scenario, await watched(options), isAskedAbout);
    },
    async whyNot(scenario, words, options) {
      const { whyNot } = await import('../advice/why-not.ts');
      return whyNot(scenario, words, await watched(options), TOOL_VERSION);
    },
    async basis() {
      const { basisOf } = await import('../record/basis.ts');
      return basisOf(await knowledge(), SOURCE_DIGEST);
    },
  };
}

/** The same knowledge, which tells how often all walls were judged, and gives up between two judgements when told to. */
function watching(knowledge: Knowledge, { signal, onProgress }: WorkOptions): Knowledge {
  let times = 0;
  return {
    ...knowledge,
    onJudged(walls) {
      times += 1;
      if (signal?.aborted) throw new Stopped();
      onProgress?.({ walls, times });
    },
  };
}
