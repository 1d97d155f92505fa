import type { Knowledge } from '../advice/judge-walls.ts';
import type { Services } from '../conversation/session.ts';
import { letInterruptsIn } from './interrupts.ts';
import { SOURCE_DIGEST, TOOL_VERSION } from './version.ts';

/** Assemblies that a conversation ranks. */
const RANKED = 3;

export type ServiceOptions = {
  readonly housePacks: readonly string[];
  /** Folder of the decision records. */
  readonly recordDir: string;
};

/**
 * What the conversation needs done for it. Rules and engine are loaded when the first answer is worked out, so that
 * the first question is there at once; only house packs are looked at before, for nobody should answer fifteen
 * questions to hear that a rules file has an error.
 *
 * @throws Refusal for a house pack with an error
 */
export async function conversationServices({ housePacks, recordDir }: ServiceOptions): Promise<Services> {
  let loading: Promise<Knowledge> | undefined;
  const knowledge = () => {
    loading ??= import('./knowledge.ts').then(({ loadKnowledge }) => loadKnowledge({ housePacks }));
    return loading;
  };
  if (housePacks.length > 0) await knowledge();
  return {
    async advise(scenario) {
      const { advise } = await import('../advice/advise.ts');
      const advice = await advise(scenario, await knowledge(), { top: RANKED, toolVersion: TOOL_VERSION });
      await letInterruptsIn();
      return advice;
    },
    async findPlaces(text) {
      const { findPlaces } = await import('../site/find-places.ts');
      return findPlaces(text);
    },
    async saveRecord(scenario, advice) {
      const [{ saveRecord }, { basisOf }] = await Promise.all([
        import('../record/save-record.ts'),
        import('../record/basis.ts'),
      ]);
      const basis = basisOf(await knowledge(), SOURCE_DIGEST);
      return saveRecord({ dir: recordDir, scenario, advice, created: new Date(), basis });
    },
  };
}
