import type { Cladding } from './catalogue-schema.ts';

/** Behind a ventilated space the monthly method takes outdoor air; a drained one keeps the cladding in the way out. */
export function finishPermeance({ drainage, permeance_perm }: Cladding): number {
  return drainage.is_ventilated ? Number.POSITIVE_INFINITY : permeance_perm.value;
}
