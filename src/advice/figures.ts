import type { Candidate } from '../assembly/candidates.ts';
import type { AnswerContext } from '../assessment/answer-context.ts';
import { fastenerCost, shareOfFace } from '../assessment/cost-part.ts';
import type { CalculatedParts } from '../assessment/fact-sheet.ts';
import { fasteningPractice } from '../assessment/schedule/fastening-practice.ts';
import { wholeWall } from '../assessment/thermal-part.ts';
import { COMBINED_SOURCE } from '../calculators/fastening/compute-fastening.ts';
import type { Figure } from './advice-schema.ts';
import { maxUSources } from './energy-sources.ts';
import { informativeFigures } from './informative-figures.ts';
import { openingFigures } from './opening-figures.ts';
import { carbonKgPerM2 } from './scoring.ts';

/** The numbers behind a wall with their methods and sources, for the record and for whoever asks "why". */
export function figuresOf(candidate: Candidate, parts: CalculatedParts, context: AnswerContext): Figure[] {
  return [
    ...thermalFigures(parts, context),
    ...informativeFigures(candidate, parts, context),
    ...moistureFigures(parts, context),
    ...openingFigures(candidate, parts, context),
    ...loadFigures(parts, context),
    ...costFigures(candidate, parts, context),
  ];
}

type Draft = Omit<Figure, 'value' | 'note'> & { value: number | null; note?: string | undefined };

function figure({ note, value, ...rest }: Draft): Figure {
  const rounded = value === null ? null : Number(value.toPrecision(4));
  const said = value === null ? (note ?? 'could not be computed from what is known') : note;
  return { ...rest, value: rounded, ...(said ? { note: said } : {}) };
}

const U = 'Btu/(h·ft²·°F)';

function thermalFigures(
  { thermal, energy, fasteners, buck }: CalculatedParts,
  context: AnswerContext,
): Figure[] {
  const whole = wholeWall(thermal, buck.bridges, context);
  const { framed } = context;
  const method =
    framed.method === 'parallel-path' ? 'parallel paths' : 'effective resistance of steel-framed cavities';
  return [
    figure({
      id: 'clear-wall-u',
      what: 'Clear-wall U-factor, before fasteners',
      value: thermal.clear_wall_u_factor,
      unit: U,
      method:
        framed.framing_fraction === null ? method : `${method}, framing fraction ${framed.framing_fraction}`,
      source: [...framed.source],
      note: framed.notes.join(' ') || undefined,
    }),
    figure({
      id: 'fastener-delta-u',
      what: 'Added by the fasteners through the insulation',
      value: thermal.delta_u_fasteners,
      unit: U,
      method: `${Math.round(fasteners.through_per_100_ft2)} fasteners through all boards in 100 ft², those that carry and those that hold the boards, times point transmittance; those of inner layers by their depth`,
      source: ['ISO 6946 annex F, detailed procedure: U = U0 + n chi; recessed fasteners by depth'],
      note:
        fasteners.groups.length > 0
          ? 'The point transmittance of a long screw is from memory; no published measurement was found.'
          : 'The boards are glued.',
    }),
    figure({
      id: 'u-factor',
      what: 'Wall U-factor, fasteners included',
      value: thermal.u_factor,
      unit: U,
      method,
      source: [...framed.source],
    }),
    figure({
      id: 'max-u-factor',
      what: `Highest U-factor allowed, ${context.brief.code_edition} edition, zone ${context.site.climate_zone}`,
      value: energy.max_u_factor,
      unit: U,
      method: 'code table',
      source: maxUSources(energy.requirement, context.tables.energy),
      note: energy.requirement.provenance.max_u_factor === 'memory' ? 'from memory, not verified' : undefined,
    }),
    figure({
      id: 'buck-delta-u',
      what: 'Added by the window bucks, spread over the wall (reported apart)',
      value: whole.delta_u_linear_bridges,
      unit: U,
      method: 'linear transmittance times perimeter over wall area',
      source: ['ISO 14683 / ISO 10211'],
      note: 'The linear transmittance of the buck is from the catalogue; see its provenance.',
    }),
    figure({
      id: 'whole-wall-u',
      what: 'Whole-wall U-factor with the bucks',
      value: whole.whole_wall_u_factor,
      unit: U,
      method: 'sum of the parts above',
      source: ['ISO 14683 / ISO 10211'],
    }),
  ];
}

function moistureFigures({ dewPoint, moisture, vapour }: CalculatedParts, context: AnswerContext): Figure[] {
  const indoor = context.tables.moisture.indoor_winter;
  const check = `steady state, indoors ${indoor.temp_f} °F and ${Math.round(indoor.rh * 100)} %, outdoors the mean of the three coldest months; insulation at its winter temperature where it loses in the cold`;
  const climate = context.site.climate?.source;
  const months = climate ? [climate] : [];
  return [
    figure({
      id: 'sheathing-temp',
      what: 'Winter temperature at the inner face of the sheathing',
      value: dewPoint.sheathing_temp_f,
      unit: '°F',
      method: check,
      source: ['series resistances', ...months],
    }),
    figure({
      id: 'indoor-dew-point',
      what: 'Indoor dew point it is held against',
      value: dewPoint.indoor_dew_point_f,
      unit: '°F',
      method: 'saturation pressure of ISO 13788',
      source: ['ISO 13788:2012', indoor.source],
      note: `Indoor air of this check: ${indoor.provenance === 'memory' ? 'from memory' : indoor.provenance}.`,
    }),
    figure({
      id: 'exterior-share',
      what: 'Share of the resistance outside the sheathing',
      value: dewPoint.exterior_r_share,
      unit: '',
      method: 'cavity path, films included',
      source: ['series resistances'],
    }),
    figure({
      id: 'exterior-share-needed',
      what: 'Share needed to keep the sheathing at the indoor dew point',
      value: dewPoint.min_exterior_r_share,
      unit: '',
      method: check,
      source: ['series resistances', ...months],
    }),
    figure({
      id: 'condensate-peak',
      what: 'Peak condensate in the year',
      value: moisture.condensate_peak_g_m2,
      unit: 'g/m²',
      method: 'monthly diffusion method; no air leakage, rain or sun',
      source: ['ISO 13788:2012 clause 6', ...months],
    }),
    figure({
      id: 'outward-permeance',
      what: 'Permeance outboard of the sheathing, to the drainage space',
      value: moisture.outward_permeance_perm,
      unit: 'perm',
      method: 'layers in series',
      source: ['catalogue, each with its provenance'],
    }),
    figure({
      id: 'class-iii-min-r',
      what: 'Exterior R-value asked for with a Class III interior retarder',
      value: vapour.min_ci_r_class_iii,
      unit: 'h·ft²·°F/Btu',
      method: 'code table',
      source: [...vapour.source],
      note: vapour.from_memory ? 'a figure of this table is from memory' : undefined,
    }),
  ];
}

function loadFigures({ fastening }: CalculatedParts, context: AnswerContext): Figure[] {
  const { schedule } = fastening;
  return [
    figure({
      id: 'wind',
      what: 'Outward design wind pressure, corner zone, allowable-stress level',
      value: context.outward_wind_psf,
      unit: 'psf',
      method: `components and cladding, ${context.brief.basic_wind_speed_mph} mph, exposure ${context.brief.exposure}, ${context.brief.mean_roof_height_ft} ft`,
      source: [...context.wind.source],
    }),
    figure({
      id: 'cladding-weight',
      what: schedule ? 'Weight that the fasteners carry' : 'Weight that glue and barrier carry',
      value: fastening.cladding_psf,
      unit: 'psf',
      method: 'sum of the layers',
      source: ['catalogue weights, mostly from memory'],
    }),
    ...(schedule
      ? [
          figure({
            id: 'fastener-gravity-use',
            what: 'Use of each fastener under the weight',
            value: schedule.gravity_utilisation,
            unit: '',
            method: 'dowel equations with the insulation as gap, the rule behind the code table',
            source: [schedule.table.source],
            note: schedule.notes().join(' ') || undefined,
          }),
          figure({
            id: 'fastener-wind-use',
            what: 'Use of each fastener under wind',
            value: schedule.wind_utilisation,
            unit: '',
            method: 'withdrawal and head pull-through, the smaller',
            source: ['NDS 2018, sections 12.2.2 and 12.2.5'],
          }),
          ...(schedule.combined_utilisation === null
            ? []
            : [
                figure({
                  id: 'fastener-combined-use',
                  what: 'Use of each fastener under weight and wind together',
                  value: schedule.combined_utilisation,
                  unit: '',
                  method: 'lateral value and withdrawal of the timber standard, both for short gusts',
                  source: [COMBINED_SOURCE],
                }),
              ]),
        ]
      : []),
    ...(fastening.on_furring
      ? [
          figure({
            id: 'on-furring-wind-use',
            what: 'Use of what holds the cladding to its furring, under wind',
            value: fastening.on_furring.wind_utilisation,
            unit: '',
            method: 'withdrawal from the strip, the worse of field and corners',
            source: ['NDS 2018, sections 12.2.2 and 12.2.3'],
            note: 'how the head holds in the cladding is not in this figure: take the tested wind pressure of the cladding',
          }),
        ]
      : []),
  ];
}

function costFigures(
  candidate: Candidate,
  { cost, fasteners }: CalculatedParts,
  context: AnswerContext,
): Figure[] {
  const { prices } = context.catalogue;
  const driven = fastenerCost(fasteners, context);
  const { insulation } = candidate.build;
  return [
    figure({
      id: 'installed-cost',
      what: 'Likely installed cost outside the sheathing',
      value: cost.likely,
      unit: '$/ft²',
      method: `sum of parts, prices of ${prices.year}; range ${cost.low.toFixed(0)} to ${cost.high.toFixed(0)}`,
      source: [prices.source],
      note: 'from memory, get quotes',
    }),
    figure({
      id: 'cladding-cost',
      what: 'Of it, the cladding in place',
      value: shareOfFace(candidate, candidate.cladding).likely,
      unit: '$/ft²',
      method: 'price of a square foot',
      source: [candidate.cladding.cost.source],
    }),
    figure({
      id: 'insulation-cost',
      what: 'Of it, the boards laid and taped',
      value: shareOfFace(candidate, insulation).likely,
      unit: '$/ft²',
      method: 'first inch, each further inch, each further layer',
      source: [insulation.cost.source],
    }),
    figure({
      id: 'fastener-material-cost',
      what: 'Of it, the fasteners through the insulation with caps and washers',
      value: driven.material_usd_per_ft2.likely,
      unit: '$/ft²',
      method: 'count times price by length',
      source: [prices.source],
      note: 'from memory, get quotes',
    }),
    figure({
      id: 'fastener-labour-cost',
      what: 'Of it, the labour of driving them',
      value: driven.labour_usd_per_ft2.likely,
      unit: '$/ft²',
      method: `count times minutes by length, ${driven.minutes_per_ft2.likely.toFixed(2)} min/ft² at $${prices.labour_usd_per_hour.likely} an hour; range ${driven.labour_usd_per_ft2.low.toFixed(2)} to ${driven.labour_usd_per_ft2.high.toFixed(2)}`,
      source: [prices.source, fasteningPractice().minutes_each.source],
      note: 'Minutes and rate from memory. Counted once: the boards’ price is taken to be for laying and taping, the cladding’s to hold its own nails, tacks and ties, the buck’s its screws.',
    }),
    figure({
      id: 'carbon',
      what: 'Product-stage carbon of insulation and cladding',
      value: carbonKgPerM2(candidate),
      unit: 'kg CO2e/m²',
      method: 'insulation by its resistance, cladding by area',
      source: ['catalogue, from memory'],
      note: 'order of magnitude only; ask for product declarations',
    }),
  ];
}
