import type { Issue } from '../base/refusal.ts';
import type { Scenario } from '../brief/scenario.ts';
import type { Progress } from '../conversation/session.ts';

/** A piece of work for the advisor's thread. */
export type Job =
  | { readonly kind: 'load' | 'basis' }
  | { readonly kind: 'advise' | 'firstImpression' | 'fieldsThatMatter'; readonly scenario: Scenario }
  | { readonly kind: 'whyNot'; readonly scenario: Scenario; readonly words: string };

/** To the thread. */
export type Request =
  | { readonly id: number; readonly job: Job }
  /** Nobody waits for this one any more. */
  | { readonly id: number; readonly job: null };

/** From the thread. */
export type Reply =
  | { readonly id: number; readonly kind: 'done'; readonly result: unknown }
  | { readonly id: number; readonly kind: 'progress'; readonly progress: Progress }
  | { readonly id: number; readonly kind: 'refused'; readonly issues: readonly Issue[] }
  | { readonly id: number; readonly kind: 'stopped' }
  | { readonly id: number; readonly kind: 'fault'; readonly message: string; readonly stack: string };
