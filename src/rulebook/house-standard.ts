import type { PriceBook } from '../brief/price-book.ts';
import type { CREW_SKILLS } from '../brief/scenario.ts';
import type { RuleVerdict } from './rule-schema.ts';

/** A firm's pack as the answer names it. */
export type HouseName = { readonly name: string; readonly version: string; readonly firm: string | null };

/** A named limit that a firm moved to the stricter side. */
export type MovedLimit = {
  readonly limit: string;
  readonly meaning: string;
  readonly from: number;
  readonly to: number;
  /** Both with their unit, as they stand in a sentence. */
  readonly from_text: string;
  readonly to_text: string;
  readonly pack: HouseName;
  readonly reason: string;
};

/** A caution that a firm made a ban. */
export type RaisedVerdict = {
  readonly rule: string;
  readonly from: RuleVerdict;
  readonly pack: HouseName;
  readonly reason: string;
};

/** What a firm's packs say beside their own rules; empty without packs. */
export type HouseStandard = {
  readonly packs: readonly HouseName[];
  readonly limits: readonly MovedLimit[];
  readonly raised: readonly RaisedVerdict[];
  readonly crew_skill: { readonly value: (typeof CREW_SKILLS)[number]; readonly pack: HouseName } | null;
  readonly prices: { readonly book: PriceBook; readonly packs: readonly HouseName[] } | null;
};

export const NO_HOUSE: HouseStandard = {
  packs: [],
  limits: [],
  raised: [],
  crew_skill: null,
  prices: null,
};

/** "Harrow Lane Builders (pack harrow-lane 1.2.0)". */
export function houseWords({ name, version, firm }: HouseName): string {
  return firm === null ? `house pack ${name} ${version}` : `${firm} (house pack ${name} ${version})`;
}
