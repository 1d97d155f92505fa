import type { Services } from '../conversation/session.ts';
import type { ReadyAdvisor } from './advisor.ts';

export type ServiceOptions = {
  readonly housePacks: readonly string[];
  /** Folder of the decision records. */
  readonly recordDir: string;
  /** Works in a thread of its own, so that keys are answered meanwhile. */
  readonly inThread?: boolean;
};

/** What the conversation needs done for it, and how to get it ready and put it away. */
export type RunningServices = Services & {
  /** Loads rules and engine before they are needed. */
  warmUp(): Promise<void>;
  /** Gives up whatever is still being worked out. */
  close(): Promise<void>;
};

/**
 * What the conversation needs done for it. Rules and engine are loaded when first needed, so that the first question is
 * there at once; only house packs are looked at before, for nobody should answer fifteen questions to hear that a rules
 * file has an error.
 *
 * @throws Refusal for a house pack with an error
 */
export async function conversationServices(options: ServiceOptions): Promise<RunningServices> {
  const { housePacks, recordDir, inThread = false } = options;
  let starting: Promise<ReadyAdvisor> | undefined;
  const advisor = () => {
    starting ??= startAdvisor(housePacks, inThread);
    return starting;
  };
  if (housePacks.length > 0) await (await advisor()).load();
  return {
    warmUp: async () => (await advisor()).load(),
    close: async () => (await starting)?.close(),
    advise: async (scenario, how) => (await advisor()).advise(scenario, how),
    firstImpression: async (scenario, signal) => (await advisor()).firstImpression(scenario, { signal }),
    fieldsThatMatter: async (scenario, signal) => (await advisor()).fieldsThatMatter(scenario, { signal }),
    whyNot: async (scenario, words, how) => (await advisor()).whyNot(scenario, words, how),
    async findPlaces(text) {
      const { findPlaces } = await import('../site/find-places.ts');
      return findPlaces(text);
    },
    async saveRecord(scenario, advice) {
      const [{ saveRecord }, basis] = await Promise.all([
        import('../record/save-record.ts'),
        advisor().then((ready) => ready.basis()),
      ]);
      return saveRecord({ dir: recordDir, scenario, advice, created: new Date(), basis });
    },
  };
}

async function startAdvisor(housePacks: readonly string[], inThread: boolean): Promise<ReadyAdvisor> {
  if (inThread) return (await import('./advisor-thread.ts')).advisorInThread(housePacks);
  return (await import('./advisor.ts')).advisorHere(housePacks);
}
