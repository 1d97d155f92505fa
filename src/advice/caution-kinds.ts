import type { Concern } from '../rulebook/rule-schema.ts';
import type { CautionKind } from './advice-schema.ts';

/** What a caution of a concern is about, for the reader. */
export const KIND_OF_CONCERN: Readonly<Record<Concern, CautionKind>> = {
  energy: 'energy',
  vapour: 'moisture',
  rain: 'moisture',
  structure: 'structural',
  fire: 'fire',
  openings: 'openings',
  'ground-and-termite': 'ground',
  'stucco-practice': 'practice',
  buildability: 'buildability',
  budget: 'cost',
  safety: 'site-work',
};

/** Rules of the safety pack that speak of a licensed professional or of health. */
const KIND_OF_RULE: Readonly<Record<string, CautionKind>> = {
  'safety.structural-design': 'professional',
  'safety.local-code': 'professional',
  'safety.cement-lime-and-silica': 'health',
  'safety.fibre-cement-dust': 'health',
  'safety.fibre-dust': 'health',
  'safety.lead-and-asbestos': 'health',
  'safety.combustion-air': 'health',
  'safety.foam-storage': 'fire',
  'safety.open-wall-fire': 'fire',
};

export function cautionKind(ruleId: string, concern: Concern): CautionKind {
  return KIND_OF_RULE[ruleId] ?? KIND_OF_CONCERN[concern];
}
