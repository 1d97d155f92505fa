import { corrosion } from './corrosion.ts';
import type { ScheduleJob, StepDraft } from './schedule-job.ts';
import { NO_LENGTH } from './stock.ts';
import { sameInBothZones } from './zone-line.ts';

/** Boards glued to the barrier: nothing to screw, nothing that a published equation could check. */
export function gluedStep({ candidate, context, wind_psf }: ScheduleJob): StepDraft {
  return {
    fixes: `${candidate.build.insulation.label}, the finish on it`,
    to: 'the barrier',
    does: 'carries',
    fastener: null,
    diameter_in: null,
    ...NO_LENGTH,
    washer: 'none',
    washer_to_buy: null,
    corrosion: corrosion('glue', context.brief),
    aim: null,
    zones: sameInBothZones(wind_psf, null, [
      {
        check: 'evaluation-report',
        what: 'the zone’s wind against the pressure that the system was tested for, on this barrier and sheathing',
        demand: null,
        capacity: null,
        unit: 'psf',
        utilisation: null,
        decides: true,
        source: 'the system’s evaluation report',
      },
    ]),
    verdict: 'design-required',
    why: 'Wind and weight go through glue, barrier and sheathing: only the system’s evaluation report says what that holds.',
    source: ['the system’s evaluation report'],
    notes: ['Add mechanical fasteners where the report asks for them.'],
    work: 'tack',
    priced_with: 'cladding',
  };
}
