import { LOAD_DURATION } from '../../calculators/connections/adjustment-factors.ts';
import { minimumPenetration_in } from '../../calculators/connections/penetration.ts';
import { withdrawalReference_lb_per_in } from '../../calculators/connections/withdrawal.ts';
import { fastenerData } from '../../calculators/fastening/evaluate-fastening.ts';
import type { FastenerData } from '../../calculators/fastening/fastening-tables.ts';
import { thicknessOf } from '../fastening-part.ts';
import { corrosion } from './corrosion.ts';
import type { OnFurring } from './fastening-practice.ts';
import type { ScheduleJob, StepDraft } from './schedule-job.ts';
import type { ScheduleCheck, ScheduleZone } from './schedule-schema.ts';
import { NO_LENGTH, stockLength } from './stock.ts';
import { holds, sameInBothZones, spacingCheck, zoneLine } from './zone-line.ts';

/** Furring is bought as spruce-pine-fir unless somebody says better. */
const FURRING_GRAVITY = 0.42;

/**
 * The line that fixes lath, panels or siding to the furring strips: smooth-nail withdrawal from the strip under the
 * zone's wind, at the widest of the customary spacings that holds, corners never wider than the field.
 */
export function onFurringStep(job: ScheduleJob): StepDraft {
  const { candidate, context, practice } = job;
  const { cladding, face } = candidate;
  const way = Object.values(practice.on_furring).find((one) => one.claddings.includes(cladding.id));
  if (!way) return byTheMaker(job);
  const fastener = fastenerData(way.fastener, context.tables.fastening);
  const furring_in = thicknessOf(face, 'furring');
  const field = pickSpacing('field', way.spacings_in, way, fastener, furring_in, job);
  const corner = pickSpacing('corner', notWider(way, field), way, fastener, furring_in, job);
  const zones = [field, corner];
  const isHeld = holds(zones);
  const finish_in = cladding.layers.find((layer) => layer.role === 'finish')?.thickness_in ?? 0;
  return {
    fixes: cladding.lath === 'none' ? cladding.label : 'the lath',
    to: `the furring, ${way.rows}`,
    does: 'carries',
    fastener: way.label,
    diameter_in: fastener.diameter_in,
    ...stockLength(
      [
        {
          label: way.through_in === null ? 'cladding' : 'lath, furred out',
          thickness_in: way.through_in ?? finish_in,
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
    why: isHeld
      ? 'The point goes right through the strip and counts in withdrawal as a smooth nail; a ring-shank nail holds more by its own tests.'
      : 'None of the customary spacings holds the wind: screws into deeper furring or the maker’s tested fastening, by a design professional.',
    source: [way.source, ...new Set(zones.flatMap((zone) => zone.checks.map((check) => check.source)))],
    notes: [
      'How the head holds in lath or siding has no published equation: take it from the tested wind pressure of the cladding, against the zone’s figure here.',
      'The weight on each is a few pounds in shear with no value for such a thin side: the spacing of practice settles it.',
    ],
    work: 'nail',
    priced_with: 'cladding',
  };
}

function notWider(way: OnFurring, field: ScheduleZone): number[] {
  return way.spacings_in.filter((spacing) => spacing <= (field.spacing_along_in ?? Number.POSITIVE_INFINITY));
}

/** The widest spacing that holds in this zone, else the closest there is. */
function pickSpacing(
  zone: ScheduleZone['zone'],
  spacings_in: readonly number[],
  way: OnFurring,
  fastener: FastenerData,
  furring_in: number,
  job: ScheduleJob,
): ScheduleZone {
  const lines = [...spacings_in]
    .sort((a, b) => b - a)
    .map((along_in) => {
      const spacing = { along_in, across_in: job.context.brief.framing.spacing_in };
      return zoneLine(zone, job.wind_psf[zone], spacing, [
        windCheck(job.wind_psf[zone], spacing, fastener, furring_in),
        practiceCheck(along_in, way, job),
      ]);
    });
  const found = lines.find((line) => holds([line])) ?? lines.at(-1);
  if (!found) throw new Error('no spacing is listed for what goes on furring');
  return found;
}

function windCheck(
  wind_psf: number,
  spacing: { along_in: number; across_in: number },
  fastener: FastenerData,
  furring_in: number,
): ScheduleCheck {
  const demand = (wind_psf * spacing.along_in * spacing.across_in) / 144;
  const isDeepEnough = furring_in >= minimumPenetration_in('nail', fastener.diameter_in) - 1e-9;
  const capacity = isDeepEnough
    ? withdrawalReference_lb_per_in('smooth-nail', fastener.diameter_in, FURRING_GRAVITY) *
      furring_in *
      LOAD_DURATION.wind_or_seismic
    : null;
  return {
    check: 'wind',
    what: 'outward wind against withdrawal from the furring',
    demand,
    capacity,
    unit: 'lb',
    utilisation: capacity === null ? null : demand / capacity,
    decides: true,
    source: 'ANSI/AWC NDS-2018 12.2.3, smooth nail, specific gravity 0.42, load duration 1.6',
  };
}

function practiceCheck(
  along_in: number,
  way: OnFurring,
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
