import { inches } from '../../base/inches.ts';
import { matDepth_in } from '../fastening-part.ts';
import { corrosion } from './corrosion.ts';
import type { ScheduleJob, StepDraft } from './schedule-job.ts';
import { NO_LENGTH, stockLength } from './stock.ts';
import { sameInBothZones, spacingCheck, zoneLine } from './zone-line.ts';

/** A loose mat under separate lath: tacked into the outer board alone; the lath's fasteners hold it for good. */
export function matStep(job: ScheduleJob): StepDraft {
  const { practice, context, candidate } = job;
  const { mat_tacks } = practice;
  const mat_in = matDepth_in(candidate.face);
  const board_in = candidate.build.boards_in.at(-1) ?? 0;
  const spacing_in = mat_tacks.spacing_in.value;
  return {
    fixes: 'the drainage mat',
    to: 'the outer board alone, not through the barrier',
    does: 'holds-until-covered',
    fastener: mat_tacks.label,
    diameter_in: null,
    ...stockLength(
      [{ label: 'drainage mat', thickness_in: mat_in }],
      mat_tacks.embedment_in.value,
      // One that reached the barrier would leak.
      mat_tacks.market_lengths_in.filter((length) => length < mat_in + board_in),
    ),
    washer: 'its own cap',
    washer_to_buy: null,
    corrosion: corrosion('plaster', context.brief),
    aim: null,
    zones: sameInBothZones(job.wind_psf, { along_in: spacing_in, across_in: spacing_in }, [
      spacingCheck(
        'practice',
        'tacks apart: the lath holds the mat',
        spacing_in,
        spacing_in,
        mat_tacks.spacing_in.source,
      ),
    ]),
    verdict: 'practice',
    why: 'The lath and its fasteners follow at once and go through the mat: it needs no screws of its own.',
    source: [mat_tacks.spacing_in.source, mat_tacks.embedment_in.source],
    notes: [
      'Lap filter fabric and mat as the maker says, so that plaster cannot get into the drainage space.',
    ],
    work: 'tack',
    priced_with: 'cladding',
  };
}

/** Wire ties on the side laps of lath, between the studs or strips. */
export function lapStep(job: ScheduleJob): StepDraft {
  const { practice, context } = job;
  const { lath } = practice;
  const studs_in = context.brief.framing.spacing_in;
  const most_in = lath.side_lap_tie_max_in.value;
  const bays = Math.ceil(studs_in / most_in - 1e-9);
  const tie_in = studs_in / bays;
  const courses_in = lath.sheet_width_in.value - lath.side_lap_in.value;
  const check = spacingCheck(
    'lath-practice',
    'ties and studs apart along a side lap',
    tie_in,
    most_in,
    lath.side_lap_tie_max_in.source,
  );
  const zones = (['field', 'corner'] as const).map((zone) => ({
    ...zoneLine(zone, job.wind_psf[zone], { along_in: courses_in, across_in: tie_in }, [check]),
    // The studs hold the lap too: only the places between them are tied.
    count_per_100_ft2: ((100 * 144) / (courses_in * studs_in)) * (bays - 1),
    tributary_ft2: null,
  }));
  return {
    fixes: 'side laps of the lath, sheet to sheet',
    to: `each other, ${bays - 1} between every two studs`,
    does: 'joins',
    fastener: lath.tie_label,
    diameter_in: null,
    ...NO_LENGTH,
    washer: 'none',
    washer_to_buy: null,
    corrosion: corrosion('plaster', context.brief),
    aim: null,
    zones,
    verdict: 'practice',
    why: `Sheets ${inches(lath.sheet_width_in.value)} in. wide lap ${inches(lath.side_lap_in.value)} in. at their sides; end laps fall on studs and are held there.`,
    source: [lath.side_lap_tie_max_in.source, lath.sheet_width_in.source, lath.side_lap_in.source],
    notes: ['No lath runs through a control joint.'],
    work: 'tie',
    priced_with: 'cladding',
  };
}
