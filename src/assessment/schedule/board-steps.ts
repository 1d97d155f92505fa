import { inches } from '../../base/inches.ts';
import { countPer100Ft2 } from '../../calculators/fastening/choose-fastening.ts';
import { screwChi } from '../thermal-part.ts';
import { aim } from './aim.ts';
import { boardFastening } from './board-fastening.ts';
import { corrosion } from './corrosion.ts';
import type { ScheduleJob, StepDraft } from './schedule-job.ts';
import { sameInBothZones, spacingCheck } from './zone-line.ts';

/**
 * The lines that hold the boards until the cladding or furring does: few fasteners with caps, into studs, so that the
 * barrier is not pierced twice over. No load is counted on them.
 */
export function boardSteps(job: ScheduleJob): StepDraft[] {
  return job.candidate.build.boards_in.map((_, layer) => boardStep(job, layer));
}

function boardStep(job: ScheduleJob, layer: number): StepDraft {
  const { candidate, context, practice } = job;
  const { build } = candidate;
  const { fastener, stock, spacing, studs, rule, is_outer_layer } = boardFastening(
    candidate.face,
    layer,
    context,
  );
  const cap = inches(practice.boards.cap_washer_in.value);
  return {
    fixes: `${build.insulation.label}, ${inches(build.boards_in[layer] ?? 0)} in.${layerWords(layer, build.boards_in.length)}`,
    to: studs === 1 ? 'every stud' : 'every second stud',
    does: 'holds-until-covered',
    fastener: fastener.label,
    diameter_in: fastener.diameter_in,
    ...stock,
    washer: `${cap} in. plastic or steel cap`,
    washer_to_buy: `${cap} in. cap`,
    corrosion: corrosion('boards', context.brief),
    aim: aim(stock.stack_in, fastener, job),
    zones: sameInBothZones(job.wind_psf, spacing, [
      spacingCheck(
        'practice',
        'rows apart: held only until covered',
        spacing.along_in,
        spacing.along_in,
        rule.source,
      ),
    ]),
    verdict: 'practice',
    why: is_outer_layer
      ? 'As few as keep the boards tight and flat: what carries comes next, through the same studs, and every needless screw is a hole in the barrier and a bridge for heat.'
      : 'The next layer holds this one too, with its joints offset: half the fasteners do.',
    source: [rule.source],
    notes: boardNotes(job, layer, countPer100Ft2(spacing.along_in, spacing.across_in)),
    work: 'screw',
    priced_with: 'fasteners',
  };
}

function boardNotes({ candidate, context }: ScheduleJob, layer: number, count_per_100_ft2: number): string[] {
  const { insulation, boards_in } = candidate.build;
  const delta_u = (count_per_100_ft2 / 100) * screwChi(context);
  return [
    'Set them on the stud line, clear of where the carrying fasteners go.',
    ...(!insulation.is_foam_plastic && layer === 0
      ? [
          'Fibrous boards stand on a track or ledger at the foot of the wall, screwed to every stud there: count it by the length of the foot, which is not asked for. The caps do not carry them.',
        ]
      : []),
    ...(layer === 0
      ? []
      : ['Joints at least 6 in. off those of the layer below (common practice, no source).']),
    ...(layer === boards_in.length - 1
      ? [
          `They stay in and bridge all the boards: about ${delta_u.toFixed(4)} Btu/(h·ft²·°F) more (point transmittance from memory). The wall’s U-factor, price and labour count them.`,
        ]
      : []),
  ];
}

function layerWords(layer: number, layers: number): string {
  if (layers === 1) return '';
  if (layer === 0) return ', inner layer';
  return layer === layers - 1 ? ', outer layer' : ', middle layer';
}
