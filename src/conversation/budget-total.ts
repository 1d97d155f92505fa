import { dollarsAFoot } from '../brief/field-words.ts';
import { assumedArea_ft2 } from '../brief/resolve-brief.ts';
import type { Answers, Finding } from './answers.ts';
import { dollarsInAll } from './describe.ts';
import type { Reading } from './understanding/reading.ts';

/** A total divided by the wall: what it comes to, and how that was found, to be told. */
export type Divided = { readonly usd_per_ft2: number; readonly words: string };

/** Divides a budget for the whole wall by the area that was said, else by the one that the brief would assume. */
export function dividedTotal(total_usd: number, answers: Answers): Divided {
  const { wall_area_ft2, windows } = answers;
  const isSaid = typeof wall_area_ft2 === 'number';
  const area_ft2 = isSaid ? wall_area_ft2 : assumedArea_ft2(windows);
  const usd_per_ft2 = Math.round((total_usd / area_ft2) * 100) / 100;
  const area = `${area_ft2.toLocaleString('en-US')} sq ft`;
  const over = isSaid ? `${area} of wall` : `${area} of wall, which I assume for now`;
  const later = isSaid ? '' : ' Say how much wall there is, and I divide anew.';
  return {
    usd_per_ft2,
    words: `${dollarsInAll(total_usd)} in all over ${over}: ${dollarsAFoot(usd_per_ft2)} a square foot.${later}`,
  };
}

/** The reading with a total taken as the budget per square foot that it comes to. */
export function withTotalDivided(reading: Reading, answers: Answers): Reading {
  const { budgetTotal } = reading;
  if (!budgetTotal) return reading;
  const area = reading.findings.find(({ field }) => field === 'wall_area_ft2')?.value;
  const known = typeof area === 'number' ? { ...answers, wall_area_ft2: area } : answers;
  const { usd_per_ft2, words } = dividedTotal(budgetTotal.usd, known);
  const finding: Finding = {
    field: 'budget_usd_per_ft2',
    value: usd_per_ft2,
    words: budgetTotal.words,
    total_usd: budgetTotal.usd,
  };
  return {
    ...reading,
    findings: [...reading.findings, finding],
    budgetTotal: null,
    notes: [...reading.notes, `Taken as ${words}`],
  };
}
