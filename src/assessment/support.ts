import type { Candidate } from '../assembly/candidates.ts';
import type { FlangePlace } from '../assembly/flange-seat.ts';

/** What decides how far out a window sits, and what holds it there. */
export type Support = Pick<Candidate, 'buck' | 'build' | 'sheathing'> & { readonly place: FlangePlace };

/** The wall's own. */
export function supportOf({ buck, build, sheathing, seat }: Candidate): Support {
  return { buck, build, sheathing, place: seat.place };
}
