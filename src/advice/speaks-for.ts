import type { RankedAssembly } from './advice-schema.ts';

/** Everything that speaks for a wall: what the rules find, then the merits of its cladding, which no rule weighs. */
export function speaksFor({
  reasons,
  gains,
}: Pick<RankedAssembly, 'reasons' | 'gains'>): readonly RankedAssembly['reasons'][number][] {
  return [...reasons, ...gains.map((text) => ({ text }))];
}
