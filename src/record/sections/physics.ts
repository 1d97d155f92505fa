import type { RankedAssembly } from '../../advice/advice-schema.ts';
import type { ProfileSeason, WallEnergy, WallThermal } from '../../advice/wall-physics-schema.ts';
import { inches } from '../../base/inches.ts';
import { monthName } from '../../base/month-names.ts';
import { provenanceText } from '../../base/provenance.ts';
import { optionsInWords } from '../../calculators/energy-code.ts';
import { transmittanceToSi } from '../../calculators/thermal/si-units.ts';
import { figureText, fixed, numberText } from '../figure-text.ts';
import { factsOf, listOf, present, type RecordBlock, type TableBlock, tableOf } from '../record-document.ts';
import { under } from './decision.ts';

/** The energy route in a sentence and in figures, the U-factor in parts, what was assumed, what the layers are. */
export function heat({ energy, thermal }: RankedAssembly): RecordBlock[] {
  return present([
    { kind: 'paragraph', text: energy.summary },
    factsOf(energyFacts(energy)),
    ...under('The U-factor in parts', partsOfU(thermal)),
    ...under('Assumed for the U-factor', listOf(thermal.notes.map((text) => ({ text })))),
    ...under('What the code table says besides', listOf(energy.notes.map((text) => ({ text })))),
    ...under('What the layers are made of', materials(thermal)),
  ]);
}

const ROUTES: Readonly<Record<WallEnergy['route'], string>> = {
  'u-factor': 'by the U-factor',
  'r-value': 'by the R-values',
  both: 'by the U-factor and by the R-values',
  none: 'by neither route',
  unknown: 'not known',
};

function energyFacts(energy: WallEnergy) {
  const { nearest_compliant_thickness_in: nearest } = energy;
  return [
    { label: 'Meets the energy code', value: ROUTES[energy.route] },
    energy.u_margin_percent === null
      ? null
      : {
          label: 'Margin of the U-factor',
          value: `${figureText(Math.abs(energy.u_margin_percent), '%')} ${energy.u_margin_percent < 0 ? 'above' : 'below'} the ${numberText(energy.max_u_factor)} allowed`,
        },
    {
      label: 'Thinnest that meets it',
      value: nearest === null ? 'no market thickness does' : `${inches(nearest)} in. of the same insulation`,
    },
    ...sureness(energy),
  ];
}

/** How sure the U-factor limit is and, apart from it, the R-value option: each by its own source. */
function sureness({ max_u_factor_provenance, option_met, option_nearest }: WallEnergy) {
  const option = option_met ?? option_nearest;
  return [
    max_u_factor_provenance === null
      ? null
      : { label: 'The U-factor limit is', value: provenanceText(max_u_factor_provenance) },
    option === null || option.provenance === null
      ? null
      : {
          label: 'The R-value option is',
          value: `${optionsInWords([option])}: ${provenanceText(option.provenance)}`,
        },
  ];
}

function partsOfU(thermal: WallThermal): TableBlock {
  const row = (part: string, u: number) => [part, fixed(u, 4), fixed(transmittanceToSi(u), 3)];
  const { air_gap } = thermal;
  return {
    kind: 'table',
    caption: 'The U-factor in parts',
    columns: [
      { title: 'Part' },
      { title: 'Btu/(h·ft²·°F)', isNumber: true },
      { title: 'W/(m²·K)', isNumber: true },
    ],
    rows: [
      row('Clear wall with its framing', thermal.clear_wall_u_factor),
      row('Fasteners through the insulation', thermal.delta_u_fasteners),
      row('Furring', thermal.delta_u_furring),
      row('Window bucks', thermal.delta_u_bucks),
      row('Steel brackets round the windows', thermal.delta_u_steel_brackets),
      row('Whole wall', thermal.whole_wall_u_factor),
      row(
        `Not counted: air gaps by ISO 6946, level ${air_gap.level}, joints ${air_gap.joints}`,
        air_gap.delta_u,
      ),
    ],
  };
}

function materials({ materials: found }: WallThermal): TableBlock | null {
  return tableOf(
    'What the layers are made of',
    [
      { title: 'Layer' },
      { title: 'Material' },
      { title: 'W/(m·K)', isNumber: true },
      { title: 'R per in.', isNumber: true },
      { title: 'kg/m³', isNumber: true },
      { title: 'lb/ft³', isNumber: true },
      { title: 'How sure' },
    ],
    found.map((entry) => [
      entry.layer,
      entry.material,
      orDash(entry.conductivity_w_mk),
      orDash(entry.r_per_in),
      orDash(entry.density_kg_m3),
      orDash(entry.density_pcf),
      provenanceText(entry.provenance),
    ]),
  );
}

function orDash(value: number | null): string {
  return value === null ? '–' : numberText(value);
}

/** Temperature and dew point through the wall in the coldest and the warmest month, drawn and as tables. */
export function profile({ temperature_profile, layers }: RankedAssembly): RecordBlock[] {
  const { winter, summer, notes } = temperature_profile;
  const isDrawn = winter !== null || summer !== null;
  return present([
    ...(winter ? drawnSeason('winter', 'Coldest month', winter, layers) : []),
    ...(summer ? drawnSeason('summer', 'Warmest month', summer, layers) : []),
    // Without a drawing the notes say why; with one they stand in the appendix.
    isDrawn ? null : listOf(notes.map((text) => ({ text }))),
  ]);
}

/** What the profile rests on and leaves out. */
export function profileNotes({
  temperature_profile: { winter, summer, notes },
}: RankedAssembly): RecordBlock[] {
  return winter === null && summer === null ? [] : present([listOf(notes.map((text) => ({ text })))]);
}

function drawnSeason(
  id: string,
  what: string,
  season: ProfileSeason,
  layers: RankedAssembly['layers'],
): RecordBlock[] {
  const { month, indoor_temp_f, outdoor_temp_f, cavity, stud } = season;
  const title = `${what}, ${monthName(month)}: ${numberText(indoor_temp_f)} °F indoors, ${numberText(outdoor_temp_f)} °F outdoors`;
  return under(title, {
    kind: 'drawn-chart',
    chart: { kind: 'profile', id: `profile-${id}`, title, season, layers },
    table: {
      kind: 'table',
      caption: title,
      columns: [
        { title: 'Outer face of' },
        { title: 'Temperature, °F', isNumber: true },
        { title: 'Dew point, °F', isNumber: true },
        { title: 'At a stud, °F', isNumber: true },
      ],
      rows: cavity.map((plane, i) => [
        plane.after,
        fixed(plane.temp_f, 1),
        plane.dew_point_f === null ? 'not known' : fixed(plane.dew_point_f, 1),
        stud?.[i] ? fixed(stud[i].temp_f, 1) : 'not known',
      ]),
    },
  });
}

/** Water by month, drawn and as a table, with the planes where it sits. */
export function condensate({
  condensate_by_month: months,
  condensate_planes,
  condensate_note,
}: RankedAssembly): RecordBlock[] {
  const title = 'Water held in the wall at the end of each month';
  return present([
    months
      ? {
          kind: 'drawn-chart',
          chart: { kind: 'condensate', id: 'condensate-chart', title, months },
          table: {
            kind: 'table',
            caption: title,
            columns: [
              { title: 'Month' },
              { title: 'Gained, g/m²', isNumber: true },
              { title: 'Held, g/m²', isNumber: true },
            ],
            rows: months.map((month) => [
              monthName(month.month),
              fixed(month.condensate_g_m2, 1),
              fixed(month.accumulated_g_m2, 1),
            ]),
          },
        }
      : null,
    listOf(
      condensate_planes.map(({ where, peak_g_m2 }) => ({
        text: `${figureText(peak_g_m2, 'g/m²')} at most ${where}`,
      })),
    ),
    { kind: 'paragraph', text: condensate_note },
  ]);
}
