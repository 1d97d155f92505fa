import type { RetarderClass } from './brief.ts';

/** What may be behind a lining that nobody has looked behind, to go after "if". */
export const LINING_READINGS: Readonly<Record<RetarderClass, string>> = {
  none: 'the lining is bare (not even painted)',
  'class-iii': 'there is only painted gypsum board',
  'class-ii': 'there is kraft paper behind the lining',
  'class-i': 'there is polyethylene behind the lining',
  responsive: 'there is a responsive membrane behind the lining',
};
