import { LOAD_DURATION } from '../../calculators/connections/adjustment-factors.ts';
import { COMBINED_SOURCE, tableSource } from '../../calculators/fastening/compute-fastening.ts';
import type { Evaluation } from '../../calculators/fastening/evaluate-fastening.ts';
import type { FasteningCase } from '../../calculators/fastening/fastening-input.ts';
import { gravityLoad_lb } from '../../calculators/fastening/gap-rule.ts';
import { steelChecks } from '../../calculators/fastening/steel-checks.ts';
import type { ScheduleJob } from './schedule-job.ts';
import type { ScheduleCheck } from './schedule-schema.ts';
import { spacingCheck } from './zone-line.ts';

/**
 * Everything that bears on one zone of the line that carries: weight (by the rule behind the code table and by the
 * timber standard), wind, both together, code table and lath practice decide; the wet weight is told besides.
 */
export function carryingChecks(
  asked: FasteningCase,
  e: Evaluation,
  wet_psf: number,
  job: ScheduleJob,
): ScheduleCheck[] {
  return [
    weightCheck(asked, e, job),
    windCheck(asked, e),
    tableCheck(e),
    ...lathCheck(asked, job),
    ...(asked.framing === 'wood' ? strengthByTheTimberStandard(e) : steelShear(asked, e, job)),
    wetCheck(asked, e, wet_psf),
  ];
}

function strengthByTheTimberStandard(e: Evaluation): ScheduleCheck[] {
  const combined = e.combined();
  return [
    {
      check: 'weight-and-wind',
      what: 'weight as shear and wind as tension together, strength only',
      demand: null,
      capacity: null,
      unit: '',
      utilisation: combined?.weight_and_wind ?? null,
      // A requirement of strength of the standard.
      decides: combined !== null,
      source: COMBINED_SOURCE,
    },
    {
      check: 'weight-alone-by-the-timber-standard',
      what: 'weight alone by the timber standard: strength under a load that never leaves',
      demand: e.gravity_load_lb,
      capacity: combined ? combined.lateral_reference_lb * LOAD_DURATION.permanent : null,
      unit: 'lb',
      utilisation: combined?.weight_alone ?? null,
      // For the thickest screws the standard asks more than the rule behind the code table.
      decides: combined !== null,
      source: 'NDS-2018 12.3.1 with the gap of AWC Technical Report 12, load duration 0.9',
    },
  ];
}

/** What the steel alone would hold; the insulation lets the screw bend long before, so it decides nothing. */
function steelShear(asked: FasteningCase, e: Evaluation, { context }: ScheduleJob): ScheduleCheck[] {
  const steel = steelChecks(asked, e.fastener, context.tables.fastening);
  if (!steel) return [];
  return [
    {
      check: 'steel-shear',
      what: 'weight against the screw’s shear in the stud with the plies in contact: an upper bound',
      demand: e.gravity_load_lb,
      capacity: steel.shear_in_contact_lb,
      unit: 'lb',
      utilisation: e.gravity_load_lb / steel.shear_in_contact_lb,
      decides: false,
      source: 'AISI S100 J4.3.1, safety factor 3.0 (section number from memory)',
    },
  ];
}

function weightCheck(asked: FasteningCase, e: Evaluation, { context }: ScheduleJob): ScheduleCheck {
  const { foam, fasteners } = context.tables.fastening;
  return {
    check: 'weight',
    what: 'weight on one fastener against the rule behind the code table, which limits slow sag',
    demand: e.gravity_load_lb,
    capacity: e.gravity_capacity_lb,
    unit: 'lb',
    utilisation: e.gravity_utilisation,
    decides: true,
    source:
      asked.framing === 'wood'
        ? foam.rule.source
        : (fasteners.steel_gravity_lines[0]?.source ?? 'straight line through recalled cells'),
  };
}

function windCheck(asked: FasteningCase, e: Evaluation): ScheduleCheck {
  const { holding_lb, pull_through_lb, capacity_lb } = e.wind;
  const byHead = pull_through_lb !== null && holding_lb !== null && pull_through_lb < holding_lb;
  const inStud = asked.framing === 'wood' ? 'withdrawal from the stud' : 'pull-out of the steel stud';
  return {
    check: 'wind',
    what: byHead ? 'outward wind against head pull-through' : `outward wind against ${inStud}`,
    demand: e.wind_load_lb,
    capacity: capacity_lb,
    unit: 'lb',
    utilisation: e.wind_utilisation,
    decides: true,
    source:
      asked.framing === 'wood'
        ? 'ANSI/AWC NDS-2018 12.2 withdrawal and 12.2.5 head pull-through (from memory), load duration 1.6'
        : 'AISI S100 J4.4.1, pull-out, safety factor 3.0 (section number from memory)',
  };
}

/** Thickness against the table's cell; where there is no cell it decides nothing but says why. */
function tableCheck(e: Evaluation): ScheduleCheck {
  const most_in = e.max_insulation_in;
  const [outside] = e.outside;
  return {
    check: 'code-table',
    what: outside
      ? `outside the code table: ${outside}`
      : most_in === null
        ? 'the code table says "design required" at this weight and spacing'
        : 'board and mat against the thickest that the code table allows',
    demand: e.gap_in,
    capacity: outside ? null : most_in,
    unit: 'in.',
    utilisation: outside || most_in === null ? null : e.gap_in / most_in,
    decides: !outside && most_in !== null,
    source: tableSource(e),
  };
}

function lathCheck(asked: FasteningCase, { candidate, context, practice }: ScheduleJob): ScheduleCheck[] {
  if (asked.support !== 'direct' || candidate.cladding.lath === 'none') return [];
  const most = practice.lath.max_spacing_in[context.brief.code_edition];
  return [
    spacingCheck(
      'lath-practice',
      'spacing along the stud against the widest for lath',
      asked.fastener_spacing_in,
      most.value,
      most.source,
    ),
  ];
}

function wetCheck(asked: FasteningCase, e: Evaluation, wet_psf: number): ScheduleCheck {
  const wet_lb = gravityLoad_lb(wet_psf, asked.fastener_spacing_in, asked.framing_spacing_in);
  return {
    check: 'weight-when-wet-with-boards',
    what: 'wet weight with the boards hung on too: what the fastener sees where no ledger or track holds the boards',
    demand: wet_lb,
    capacity: e.gravity_capacity_lb,
    unit: 'lb',
    utilisation: e.gravity_capacity_lb === null ? null : wet_lb / e.gravity_capacity_lb,
    decides: false,
    source: 'catalogue weights, mostly from memory; capacity as for the weight',
  };
}
