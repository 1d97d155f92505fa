import type { Services } from '../conversation/session.ts';
import { advisorHere } from './advisor.ts';
import { advisorInThread } from './advisor-thread.ts';

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
  const advisor = inThread ? advisorInThread(housePacks) : advisorHere(housePacks);
  if (housePacks.length > 0) await advisor.load();
  return {
    warmUp: () => advisor.load(),
    close: () => advisor.close(),
    advise: (scenario, how) => advisor.advise(scenario, how),
    firstImpression: (scenario, signal) => advisor.firstImpression(scenario, { signal }),
    fieldsThatMatter: (scenario, signal) => advisor.fieldsThatMatter(scenario, { signal }),
    whyNot: (scenario, words, how) => advisor.whyNot(scenario, words, how),
    async findPlaces(text) {
      const { findPlaces } = await import('../site/find-places.ts');
      return findPlaces(text);
    },
    async saveRecord(scenario, advice) {
      const [{ saveRecord }, basis] = await Promise.all([
        import('../record/save-record.ts'),
        advisor.basis(),
      ]);
      return saveRecord({ dir: recordDir, scenario, advice, created: new Date(), basis });
    },
  };
}
