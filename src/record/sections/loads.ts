import type { Advice, RankedAssembly } from '../../advice/advice-schema.ts';
import {
  aimWords,
  checkWords,
  decidedWords,
  fastenerWords,
  percentWords,
  STEP_VERDICT_WORDS,
  spacingWords,
  stackWords,
} from '../../advice/schedule-words.ts';
import type { ScheduleStep } from '../../assessment/schedule/schedule-schema.ts';
import { inches } from '../../base/inches.ts';
import { provenanceText } from '../../base/provenance.ts';
import { figureText, fixed, numberText } from '../figure-text.ts';
import { listOf, present, type RecordBlock, tableOf } from '../record-document.ts';
import { under } from './decision.ts';

/** The schedule as tables: order of work, checks, lengths, aim and metal, and what to buy. */
export function schedule({ fastening_schedule: all }: RankedAssembly): RecordBlock[] {
  const { steps, take_off } = all;
  return present([
    ...under('Schedule, in the order of work', orderOfWork(steps)),
    { kind: 'paragraph', text: all.why },
    { kind: 'paragraph', text: all.corner_zone.text },
    ...under('What each line was checked for', checks(steps)),
    ...under('Lengths and metal', lengths(steps)),
    ...under('Hitting the studs', listOf(aims(steps).map((text) => ({ text })))),
    ...under(
      'Fasteners to buy',
      tableOf(
        'Field and corners each by its area and spacing',
        [
          { title: 'Item' },
          { title: 'Length, in.', isNumber: true },
          { title: 'Count', isNumber: true },
          { title: 'With waste', isNumber: true },
          { title: 'For lines' },
        ],
        take_off.map((line) => [
          line.item,
          line.length_in === null ? '' : inches(line.length_in),
          numberText(line.count),
          numberText(line.count_with_waste),
          line.for_steps.join(', '),
        ]),
      ),
    ),
    ...under('Labour of fastening', labour(all)),
    { kind: 'paragraph', text: all.labour.text },
    listOf(
      [...all.notes, `Minutes for one fastener: ${all.labour.source}.`, ...steps.flatMap(stepNotes)].map(
        (text) => ({ text }),
      ),
    ),
  ]);
}

function stepNotes({ step, notes }: ScheduleStep): string[] {
  return notes.map((note) => `Line ${step}: ${note}`);
}

function zone(step: ScheduleStep, name: 'field' | 'corner'): ScheduleStep['zones'][number] | undefined {
  return step.zones.find((one) => one.zone === name);
}

function orderOfWork(steps: readonly ScheduleStep[]): RecordBlock | null {
  return tableOf(
    'What fixes what',
    [
      { title: 'Line', isNumber: true },
      { title: 'Fixes' },
      { title: 'To' },
      { title: 'Fastener' },
      { title: 'Washer' },
      { title: 'Field' },
      { title: 'Corners' },
      { title: 'Decided at the corners by' },
      { title: 'Per 100 ft²', isNumber: true },
      { title: 'Verdict' },
    ],
    steps.map((step) => {
      const [field, corner] = [zone(step, 'field'), zone(step, 'corner')];
      return [
        `${step.step}`,
        step.fixes,
        step.to,
        fastenerWords(step),
        step.washer,
        field ? spacingWords(field) : 'none',
        corner ? spacingWords(corner) : 'none',
        corner ? decidedWords(corner) : 'none',
        step.count_per_100_ft2 === null ? 'not known' : numberText(Math.ceil(step.count_per_100_ft2 - 1e-6)),
        STEP_VERDICT_WORDS[step.verdict],
      ];
    }),
  );
}

function checks(steps: readonly ScheduleStep[]): RecordBlock | null {
  return tableOf(
    'Checks by zone; a use of 100 % is the limit',
    [
      { title: 'Line', isNumber: true },
      { title: 'Zone' },
      { title: 'Wind, psf', isNumber: true },
      { title: 'Check' },
      { title: 'What' },
      { title: 'Asked', isNumber: true },
      { title: 'Holds or allows', isNumber: true },
      { title: 'Use', isNumber: true },
      { title: 'Part' },
      { title: 'Source' },
    ],
    steps.flatMap((step) =>
      step.zones.flatMap((one) =>
        one.checks.map((check) => [
          `${step.step}`,
          one.zone,
          fixed(one.outward_wind_psf, 1),
          checkWords(check.check),
          check.what,
          check.demand === null ? '' : figureText(check.demand, check.unit),
          check.capacity === null ? '' : figureText(check.capacity, check.unit),
          percentWords(check.utilisation),
          check.check === one.governing ? 'decides' : check.decides ? 'counts' : 'told besides',
          check.source,
        ]),
      ),
    ),
  );
}

function lengths(steps: readonly ScheduleStep[]): RecordBlock | null {
  return tableOf(
    'Length: everything outboard and the embedment, rounded up to a length that is sold',
    [
      { title: 'Line', isNumber: true },
      { title: 'Goes through and holds in' },
      { title: 'Least, in.', isNumber: true },
      { title: 'Stock, in.', isNumber: true },
      { title: 'Metal' },
      { title: 'Coast' },
    ],
    steps.map((step) => [
      `${step.step}`,
      step.length === 'has-none' ? 'no length' : stackWords(step),
      step.min_length_in === null ? '' : inches(step.min_length_in),
      step.length === 'none-on-the-market'
        ? 'none reaches'
        : step.length_in === null
          ? ''
          : inches(step.length_in),
      `${step.corrosion.class}. ${step.corrosion.why}`,
      step.corrosion.coastal ?? 'no sign of one in the answers',
    ]),
  );
}

function labour({ steps }: RankedAssembly['fastening_schedule']): RecordBlock | null {
  return tableOf(
    'One person’s time, waste and scaffold not counted',
    [
      { title: 'Line', isNumber: true },
      { title: 'Count', isNumber: true },
      { title: 'Minutes each', isNumber: true },
      { title: 'Hours', isNumber: true },
      { title: 'Hours, low to high' },
      { title: 'Paid with the price of' },
    ],
    steps.flatMap(({ step, project_count, labour: work }) =>
      work === null || project_count === null
        ? []
        : [
            [
              `${step}`,
              numberText(project_count),
              fixed(work.minutes_each.likely, 2),
              fixed(work.hours.likely, 1),
              `${fixed(work.hours.low, 1)} to ${fixed(work.hours.high, 1)}`,
              work.priced_with,
            ],
          ],
    ),
  );
}

function aims(steps: readonly ScheduleStep[]): string[] {
  const carrying = steps.find((step) => step.aim !== null && step.does === 'carries');
  return carrying?.aim ? [aimWords(carrying.aim), ...carrying.aim.how] : [];
}

/** Wind on field and corners of the walls. */
export function wind({ wind: w }: Advice): RecordBlock[] {
  return present([
    ...under(
      'Wind on the walls',
      tableOf(
        `${w.standard}, ${w.basic_wind_speed_mph} mph, exposure ${w.exposure}, mean roof height ${w.mean_roof_height_ft} ft: velocity pressure ${fixed(w.velocity_pressure_psf, 1)} psf`,
        [
          { title: 'Zone', isNumber: true },
          { title: 'Where' },
          { title: 'Inward, strength, psf', isNumber: true },
          { title: 'Outward, strength, psf', isNumber: true },
          { title: 'Inward, allowable, psf', isNumber: true },
          { title: 'Outward, allowable, psf', isNumber: true },
        ],
        w.zones.map((one) => [
          `${one.zone}`,
          one.name,
          fixed(one.strength.inward_psf, 1),
          fixed(one.strength.outward_psf, 1),
          fixed(one.allowable.inward_psf, 1),
          fixed(one.allowable.outward_psf, 1),
        ]),
      ),
    ),
    listOf([w.why_this_standard, ...w.notes, ...w.source].map((text) => ({ text }))),
  ]);
}

/** Dead load layer by layer, dry and wet. */
export function deadLoad({ dead_load: load }: RankedAssembly): RecordBlock[] {
  return present([
    ...under(
      'Dead load outside the barrier',
      tableOf(
        'By layer, psf',
        [
          { title: 'Layer' },
          { title: 'Dry', isNumber: true },
          { title: 'Wet', isNumber: true },
          { title: 'Weight from' },
        ],
        [
          ...load.layers.map((layer) => [
            layer.label,
            fixed(layer.dry_psf, 2),
            layer.wet_psf === null ? 'not known' : fixed(layer.wet_psf, 2),
            `${layer.source} (${provenanceText(layer.provenance)})`,
          ]),
          [
            'All',
            fixed(load.dry_psf, 2),
            `${load.wet_is_lower_bound ? 'at least ' : ''}${fixed(load.wet_psf, 2)}`,
            load.source.join('; '),
          ],
        ],
      ),
    ),
    listOf(load.notes.map((text) => ({ text }))),
  ]);
}
