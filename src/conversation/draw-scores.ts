import { criterionWords } from '../advice/criterion-words.ts';
import type { FigureRow } from './blocks.ts';

const LABEL = 22;
const FIGURE = 4;

/**
 * The parts of a score as bars with their figures, 0 worst and 1 best; the best part first.
 *
 * @param width  columns, at most 64 are used; under 36 it is taken as 36
 */
export function drawScores(scores: Readonly<Record<string, number>>, width: number): string[] {
  const room = Math.max(36, Math.min(64, Math.floor(width))) - 2 - LABEL - FIGURE - 3;
  return sorted(scores).map(([part, value]) => {
    const filled = Math.round(Math.max(0, Math.min(1, value)) * room);
    const bar = '#'.repeat(filled) + '.'.repeat(room - filled);
    return `  ${criterionWords(part).padEnd(LABEL)}${value.toFixed(2).padStart(FIGURE)}  ${bar}`;
  });
}

export function scoresInWords(scores: Readonly<Record<string, number>>): FigureRow[] {
  return sorted(scores).map(([part, value]) => ({ label: criterionWords(part), value: value.toFixed(2) }));
}

function sorted(scores: Readonly<Record<string, number>>): [string, number][] {
  return Object.entries(scores).sort(([a, x], [b, y]) => y - x || (a < b ? -1 : 1));
}
