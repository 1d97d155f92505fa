import type { RuleOutcome } from '../rulebook/rule-schema.ts';

/** The key by which an answer tells what a firm's own pack said from what the shipped rules say. */
export function houseMark({ house_pack }: RuleOutcome): { house?: string } {
  return house_pack === null ? {} : { house: house_pack };
}
