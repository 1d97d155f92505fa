import type { Advice, RankedAssembly } from '../advice/advice-schema.ts';

/** What an answer comes down to: its first choice, else the fallback, else nothing. */
export type Decision = {
  readonly kind: 'first-choice' | 'fallback' | 'none';
  readonly id: string | null;
  readonly title: string;
};

/** The wall that an answer describes in full: the first choice or the fallback. */
export function decidedWall({ ranked, fallback }: Advice): RankedAssembly | null {
  return ranked[0] ?? fallback?.assembly ?? null;
}

export function decisionOf(advice: Advice): Decision {
  const wall = decidedWall(advice);
  if (!wall) return { kind: 'none', id: null, title: 'none of the walls passes every rule' };
  const kind = advice.ranked.length > 0 ? 'first-choice' : 'fallback';
  return { kind, id: wall.id, title: kind === 'fallback' ? `fallback: ${wall.title}` : wall.title };
}

export function isSameDecision(a: Decision, b: Decision): boolean {
  return a.kind === b.kind && a.id === b.id;
}
