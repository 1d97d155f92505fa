import type { RankedAssembly } from '../advice/advice-schema.ts';
import {
  aimWords,
  checkUseWords,
  decidedWords,
  fastenerWords,
  STEP_VERDICT_WORDS,
  spacingWords,
} from '../advice/schedule-words.ts';
import type { ScheduleStep } from '../assessment/schedule/schedule-schema.ts';
import { inches } from '../base/inches.ts';
import type { Block, FigureRow } from './blocks.ts';

/** The fastening schedule, what to buy, how to hit the studs, and what it all weighs. */
export function scheduleBlocks({ fastening_schedule: schedule, dead_load }: RankedAssembly): Block[] {
  const carrying = schedule.steps.find((step) => step.aim !== null && step.does === 'carries');
  const coastal = schedule.steps.find((step) => step.corrosion.coastal !== null)?.corrosion.coastal;
  return [
    { kind: 'heading', text: 'Fastening, in the order of work' },
    { kind: 'list', numbered: true, items: schedule.steps.map(stepLine) },
    { kind: 'paragraph', text: schedule.why },
    { kind: 'paragraph', text: `${windWords(schedule.steps)}${schedule.corner_zone.text}` },
    ...(coastal ? [{ kind: 'paragraph' as const, text: coastal, role: 'warning' as const }] : []),
    ...(carrying?.aim
      ? [
          { kind: 'heading' as const, text: 'Hitting the studs' },
          { kind: 'list' as const, items: [aimWords(carrying.aim), ...carrying.aim.how] },
        ]
      : []),
    { kind: 'heading', text: 'Fasteners to buy, waste included' },
    { kind: 'figures', rows: schedule.take_off.map(buyRow) },
    { kind: 'paragraph', text: schedule.labour.text },
    { kind: 'list', items: [...schedule.notes, `Minutes for one fastener: ${schedule.labour.source}.`] },
    { kind: 'heading', text: 'Dead load outside the barrier' },
    {
      kind: 'figures',
      rows: [
        { label: 'Dry', value: `${dead_load.dry_psf.toFixed(1)} lb per square foot` },
        {
          label: 'Wet',
          value: `${dead_load.wet_is_lower_bound ? 'at least ' : ''}${dead_load.wet_psf.toFixed(1)} lb per square foot`,
        },
      ],
    },
    { kind: 'list', items: dead_load.notes },
  ];
}

/** The pressures that the lines were held against. */
function windWords(steps: readonly ScheduleStep[]): string {
  const zones = steps.find((step) => step.zones.length > 0)?.zones ?? [];
  const psf = (name: 'field' | 'corner') =>
    zones.find((zone) => zone.zone === name)?.outward_wind_psf.toFixed(1);
  return zones.length === 0
    ? ''
    : `Outward wind for these checks: ${psf('field')} psf in the field, ${psf('corner')} psf at the corners. `;
}

function stepLine(step: ScheduleStep): string {
  const washer = step.washer_to_buy === null ? '' : `, ${step.washer}`;
  const parts = [
    `${step.fixes}, to ${step.to}: ${fastenerWords(step)}${washer}`,
    ...zoneWords(step),
    ...otherChecks(step),
    STEP_VERDICT_WORDS[step.verdict],
  ];
  return `${parts.join('; ')}.`;
}

function zoneWords({ zones }: ScheduleStep): string[] {
  const [field, corner] = zones;
  if (!field || !corner) return [];
  const [inField, atCorners] = [spacingWords(field), spacingWords(corner)];
  const isSpaced = field.spacing_along_in !== null;
  const spacing =
    inField === atCorners ? `${inField}, corners the same` : `field ${inField}, corners ${atCorners}`;
  const [decided, decidedAtCorners] = [decidedWords(field), decidedWords(corner)];
  const deciding =
    decided === decidedAtCorners
      ? `decided by ${decided}`
      : `decided by ${decided} in the field and ${decidedAtCorners} at the corners`;
  return [...(isSpaced ? [spacing] : []), deciding];
}

/** The corner's other checks, which a reviewer looks for. */
function otherChecks({ zones, does }: ScheduleStep): string[] {
  const corner = zones.find((zone) => zone.zone === 'corner');
  if (!corner || does !== 'carries') return [];
  const others = corner.checks
    .filter((check) => check.check !== corner.governing && check.utilisation !== null)
    .map(checkUseWords);
  return others.length > 0 ? [`at the corners also ${others.join(', ')}`] : [];
}

function buyRow({
  item,
  length_in,
  count_with_waste,
}: {
  item: string;
  length_in: number | null;
  count_with_waste: number;
}): FigureRow {
  const length = length_in === null ? '' : `, ${inches(length_in)} in.`;
  return { label: count_with_waste.toLocaleString('en-US'), value: `${item}${length}` };
}
