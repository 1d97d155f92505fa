import type { ScheduleStep } from '../assessment/schedule/schedule-schema.ts';
import { inches } from '../base/inches.ts';
import type { FigureRow } from './blocks.ts';
import { fillOf, spansOf } from './draw-layers.ts';

const INDENT = '  ';
/** Stud shown beyond the point of the fastener, in. */
const BEYOND_POINT_IN = 0.75;

/** The step whose fastener goes through the boards into the stud and carries: what the sketch is about. */
export function carryingStep(steps: readonly ScheduleStep[]): ScheduleStep | null {
  const through = steps.filter(
    (step) =>
      step.does === 'carries' && step.aim !== null && step.length_in !== null && step.stack.length > 0,
  );
  return through[0] ?? null;
}

/**
 * One fastener through everything it holds, cut along its length, stud on the left, all at one scale.
 *
 * @param width  columns, at most 72 are used; under 44 it is taken as 44
 */
export function drawFastening(step: ScheduleStep, width: number): string[] {
  const length_in = step.length_in ?? 0;
  const into_in = Math.max(0, length_in - step.stack_in);
  const outward = [...step.stack].reverse();
  const layers = [
    { role: 'stud', thickness_in: into_in + BEYOND_POINT_IN },
    ...outward.map(({ label, thickness_in }) => ({ role: roleOf(label), thickness_in })),
  ];
  const room = Math.max(44, Math.min(72, Math.floor(width))) - INDENT.length - 2;
  const { spans, columns_per_in } = spansOf(layers, room);
  const end = spans.reduce((last, { from, width: own }) => Math.max(last, from + own), 0);
  const plain = (row: number) =>
    `${INDENT}${layers
      .map(({ role }, i) => {
        const span = spans[i];
        if (!span) return '';
        if (span.isSheet) return fillOf(role, 1, row);
        const fill = role === 'stud' ? '~'.repeat(span.width - 1) : fillOf(role, span.width - 1, row);
        return i === 0 ? `~${fill}` : `|${fill}`;
      })
      .join('')}|`;
  const point = Math.min(end - 3, Math.round(BEYOND_POINT_IN * columns_per_in));
  const rows = [0, 1, 3, 4].map(plain);
  const base = plain(2).slice(INDENT.length);
  const shank = `${base.slice(0, point)}<${'-'.repeat(Math.max(1, end - point - 1))}[]`;
  const keys = spans.map((_, i) => String.fromCharCode('a'.charCodeAt(0) + i));
  const keyCells = Array.from({ length: end + 1 }, () => ' ');
  for (const [i, { from, width: own }] of spans.entries())
    keyCells[from + Math.floor(own / 2)] = keys[i] ?? '';
  return [`${INDENT}${keyCells.join('')}`, ...rows.slice(0, 2), `${INDENT}${shank}`, ...rows.slice(2)].map(
    (line) => line.trimEnd(),
  );
}

/** What the letters over the sketch mean, from the stud outward. */
export function fasteningKey(step: ScheduleStep): FigureRow[] {
  const rows = fasteningInWords(step);
  const last = rows.length - 1;
  return rows.map(({ value }, i) => ({
    label: i === last ? '<--[]' : String.fromCharCode('a'.charCodeAt(0) + i),
    value,
  }));
}

/** The sketch in words: stud, what lies over it, and the fastener. */
export function fasteningInWords(step: ScheduleStep): FigureRow[] {
  const length_in = step.length_in ?? 0;
  return [
    { label: 'stud', value: `stud: the point is ${size(length_in - step.stack_in)} in it` },
    ...[...step.stack].reverse().map(({ label, thickness_in }) => ({
      label: 'over it',
      value: withSize(label, size(thickness_in)),
    })),
    {
      label: 'fastener',
      value: `${step.fastener ?? 'fastener'}, ${size(length_in)} long, head outside; ${step.washer.replace(/^none; /, '')}`,
    },
  ];
}

function roleOf(label: string): string {
  if (/furring|strip/i.test(label)) return 'stud';
  if (/barrier|wrap|paper/i.test(label)) return 'barrier';
  if (/sheathing|OSB|plywood/i.test(label)) return 'sheathing';
  if (/lath/i.test(label)) return 'lath';
  if (/mat\b/i.test(label)) return 'drainage';
  return 'insulation';
}

function size(value: number): string {
  return value < 1 / 16 ? `${value} in.` : `${inches(Math.round(value * 16) / 16)} in.`;
}

/** Labels often bring their size along. */
function withSize(label: string, words: string): string {
  return label.includes(words) ? label : `${label}, ${words}`;
}
