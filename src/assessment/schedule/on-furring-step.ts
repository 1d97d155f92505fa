import { inches } from '../../base/inches.ts';
import type { OnFurring, OnFurringZone } from '../on-furring.ts';
import { corrosion } from './corrosion.ts';
import type { OnFurringWay } from './fastening-practice.ts';
import type { ScheduleJob, StepDraft } from './schedule-job.ts';
import type { ScheduleCheck, ScheduleZone } from './schedule-schema.ts';
import { NO_LENGTH, stockLength } from './stock.ts';
import { holds, sameInBothZones, spacingCheck, zoneLine } from './zone-line.ts';

/**
 * The line that fixes lath, panels or siding to the furring strips: as `onFurring` found it, the widest of the customary
 * spacings that holds the zone's wind, corners never wider than the field.
 */
export function onFurringStep(job: ScheduleJob): StepDraft {
  const { candidate, context, practice } = job;
  const { cladding } = candidate;
  const found = job.parts.fastening.on_furring;
  const kind = Object.values(practice.on_furring).find((one) => one.claddings.includes(cladding.id));
  if (!kind || !found?.way || !found.fastener || !found.field || !found.corner) return byTheMaker(job);
  const { way, fastener, furring_in } = found;
  const zones = [
    zoneOf('field', found.field, found, way, job),
    zoneOf('corner', found.corner, found, way, job),
  ];
  const isHeld = holds(zones);
  const finish_in = cladding.layers.find((layer) => layer.role === 'finish')?.thickness_in ?? 0;
  return {
    fixes: cladding.lath === 'none' ? cladding.label : 'the lath',
    to: `the furring, ${kind.rows}`,
    does: 'carries',
    fastener: way.label,
    diameter_in: fastener.diameter_in,
    ...stockLength(
      [
        {
          label: kind.through_in === null ? 'cladding' : 'lath, furred out',
          thickness_in: kind.through_in ?? finish_in,
        },
      ],
      furring_in,
      way.market_lengths_in,
    ),
    washer: `none; ${way.head_in} in. head`,
    washer_to_buy: null,
    corrosion: corrosion('treated-wood', context.brief),
    aim: null,
    zones,
    verdict: isHeld ? 'checked' : 'design-required',
    why: isHeld ? heldWords(way) : NOT_HELD,
    source: [way.source, ...new Set(zones.flatMap((zone) => zone.checks.map((check) => check.source)))],
    notes: [
      ...(furring_in > USUAL_FURRING_IN ? [deeperNote(furring_in)] : []),
      'How the head holds in lath or siding has no published equation: take it from the tested wind pressure of the cladding, against the zone’s figure here.',
      'The weight on each is a few pounds in shear with no value for such a thin side: the spacing of practice settles it.',
    ],
    work: way.driven_as,
    priced_with: 'cladding',
  };
}

/** 1x lumber, net. */
const USUAL_FURRING_IN = 0.75;

const NOT_HELD =
  'None of the customary spacings and fasteners holds the wind: the maker’s tested fastening, by a design professional.';

function heldWords({ driven_as }: OnFurringWay): string {
  return driven_as === 'nail'
    ? 'The point goes right through the strip and counts in withdrawal as a smooth nail; a ring-shank nail holds more by its own tests.'
    : 'No customary nail holds this wind. The threads go right through the strip and count in withdrawal over all of its depth.';
}

function deeperNote(furring_in: number): string {
  return `The strips are ${inches(furring_in)} in. deep because none of the listed fasteners holds this wind in 3/4 in. of wood. The code’s furring table names 2-in. nominal furring where a cladding’s fasteners need more than 3/4 in. (footnote c, code page seen).`;
}

function zoneOf(
  zone: ScheduleZone['zone'],
  { spacing_in, wind_lb, utilisation }: OnFurringZone,
  { capacity_lb }: OnFurring,
  way: OnFurringWay,
  job: ScheduleJob,
): ScheduleZone {
  const spacing = { along_in: spacing_in, across_in: job.context.brief.framing.spacing_in };
  const windCheck: ScheduleCheck = {
    check: 'wind',
    what: 'outward wind against withdrawal from the furring',
    demand: wind_lb,
    capacity: capacity_lb,
    unit: 'lb',
    utilisation,
    decides: true,
    source: WITHDRAWAL_SOURCE[way.driven_as],
  };
  return zoneLine(zone, job.wind_psf[zone], spacing, [windCheck, practiceCheck(spacing_in, way, job)]);
}

const WITHDRAWAL_SOURCE: Readonly<Record<OnFurringWay['driven_as'], string>> = {
  nail: 'ANSI/AWC NDS-2018 12.2.3, smooth nail, specific gravity 0.42, load duration 1.6',
  screw: 'ANSI/AWC NDS-2018 12.2.2, wood screw, specific gravity 0.42, load duration 1.6',
};

function practiceCheck(
  along_in: number,
  way: OnFurringWay,
  { candidate, context, practice }: ScheduleJob,
): ScheduleCheck {
  if (candidate.cladding.lath !== 'none') {
    const most = practice.lath.max_spacing_in[context.brief.code_edition];
    return spacingCheck(
      'lath-practice',
      'spacing along the strip against the widest for lath',
      along_in,
      most.value,
      most.source,
    );
  }
  return spacingCheck(
    'practice',
    'spacing along the strip against the customary one',
    along_in,
    Math.max(...way.spacings_in),
    way.source,
  );
}

/** A cladding that the practice figures don't know. */
function byTheMaker({ candidate, context, wind_psf }: ScheduleJob): StepDraft {
  return {
    fixes: candidate.cladding.label,
    to: 'the furring',
    does: 'carries',
    fastener: null,
    diameter_in: null,
    ...NO_LENGTH,
    washer: 'as the maker says',
    washer_to_buy: null,
    corrosion: corrosion('treated-wood', context.brief),
    aim: null,
    zones: sameInBothZones(wind_psf, null, [
      {
        check: 'evaluation-report',
        what: 'tested wind pressure of the cladding',
        demand: null,
        capacity: null,
        unit: 'psf',
        utilisation: null,
        decides: true,
        source: 'the cladding maker’s report',
      },
    ]),
    verdict: 'design-required',
    why: 'No customary fastening is on the list for this cladding: take the maker’s, tested for the wind of each zone.',
    source: ['the cladding maker’s report'],
    notes: [],
    work: 'nail',
    priced_with: 'cladding',
  };
}
