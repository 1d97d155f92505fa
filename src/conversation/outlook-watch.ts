import { Refusal } from '../base/refusal.ts';
import type { Answers } from './answers.ts';
import type { Services } from './session.ts';
import type { ConversationState, Outlook } from './state.ts';
import { isStopped, orStopped } from './stopping.ts';

export type OutlookWatch = {
  /** Called with each new state; returns at once. */
  look(state: ConversationState): void;
};

/**
 * Keeps a first impression beside the questions: each time the answers change it is worked out anew, and what was under
 * way for older answers is given up. Nothing here makes the talk wait.
 */
export function watchOutlook(
  services: Pick<Services, 'firstImpression' | 'fieldsThatMatter'>,
  found: (outlook: Outlook) => Promise<void>,
  { onFault }: { readonly onFault: (error: unknown) => void },
): OutlookWatch {
  let looked: Answers | null = null;
  let running: AbortController | null = null;

  async function workOut(answers: Answers, signal: AbortSignal): Promise<void> {
    const { toScenario } = await import('./answers-schema.ts');
    if (signal.aborted) return;
    const scenario = toScenario(answers);
    const impression = await orStopped(services.firstImpression(scenario, signal), signal);
    await found({ answers, impression, matters: null });
    const matters = await orStopped(services.fieldsThatMatter(scenario, signal), signal);
    await found({ answers, impression, matters });
  }

  return {
    look({ answers, stage }) {
      const isTalking = stage === 'asking' || stage === 'looking-up';
      if (!isTalking) {
        // The answer itself is being worked out: the impression must not take the machine from it.
        running?.abort();
        if (stage === 'advising') looked = null;
        return;
      }
      if (answers === looked || answers.place === undefined) return;
      looked = answers;
      running?.abort();
      const controller = new AbortController();
      running = controller;
      workOut(answers, controller.signal).catch((error: unknown) => {
        // Answers that make no scenario yet give no impression; the questions say what is wrong with them.
        if (!isStopped(error) && !(error instanceof Refusal)) onFault(error);
      });
    },
  };
}
