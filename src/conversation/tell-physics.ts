import type { RankedAssembly } from '../advice/advice-schema.ts';
import type { ProfileSeason, TemperatureProfile, WallThermal } from '../advice/wall-physics-schema.ts';
import { monthName } from '../base/month-names.ts';
import type { Block } from './blocks.ts';
import { condensateDrawing } from './draw-condensate.ts';
import { profileDrawing } from './draw-profile.ts';

/** Heat and moisture of one wall: energy route, parts of the U-factor, both profiles and water by month, drawn. */
export function physicsBlocks(wall: RankedAssembly): Block[] {
  const { temperature_profile: profile, energy, thermal } = wall;
  return [
    { kind: 'heading', text: 'Heat, and the energy code' },
    { kind: 'list', items: [energy.summary, partsOfU(thermal), assumed(thermal)] },
    ...profileBlocks(profile, wall.insulation.r),
    ...condensateBlocks(wall),
  ];
}

function partsOfU({
  clear_wall_u_factor,
  delta_u_fasteners,
  delta_u_bucks,
  delta_u_steel_brackets,
  whole_wall_u_factor,
}: WallThermal): string {
  const u = (value: number) => value.toFixed(4);
  const opening =
    delta_u_steel_brackets > 0
      ? `${u(delta_u_steel_brackets)} for the steel brackets round the windows`
      : `${u(delta_u_bucks)} for the window bucks`;
  return `U-factor in parts: ${u(clear_wall_u_factor)} clear wall, ${u(delta_u_fasteners)} for the fasteners, nothing for furring, ${opening}: ${u(whole_wall_u_factor)} for the whole wall.`;
}

function assumed({ assumptions, air_gap }: WallThermal): string {
  const framing =
    assumptions.framing_fraction === null
      ? 'steel studs and cavity insulation together by tabulated effective resistances'
      : `${Math.round(assumptions.framing_fraction * 100)} % framing`;
  const cavity =
    assumptions.cavity_installed_r === assumptions.cavity_labelled_r
      ? `cavity R-${assumptions.cavity_installed_r} as labelled`
      : `cavity R-${assumptions.cavity_installed_r} for a label of R-${assumptions.cavity_labelled_r}`;
  const gaps =
    air_gap.level === 0
      ? 'joints offset'
      : `one layer with butted joints, which by ISO 6946 would add ${air_gap.delta_u.toFixed(4)} (not counted)`;
  return `Counted with ${framing}, air films R-${assumptions.film_inside_r} and R-${assumptions.film_outside_r}, ${cavity}, ${assumptions.fasteners_per_100_ft2} fasteners through the boards to 100 ft², ${gaps}. The record lists every assumption.`;
}

/** The season with the larger difference, and summer too where heat and vapour both go inward. */
export function seasonsToDraw({ winter, summer }: TemperatureProfile): ProfileSeason[] {
  if (!winter || !summer) return [];
  const difference = (season: ProfileSeason) => Math.abs(season.indoor_temp_f - season.outdoor_temp_f);
  const isInward =
    summer.outdoor_temp_f > summer.indoor_temp_f &&
    (summer.outdoor_dew_point_f ?? Number.NEGATIVE_INFINITY) >
      (summer.indoor_dew_point_f ?? Number.POSITIVE_INFINITY);
  const isWinterWorth = difference(winter) >= difference(summer);
  return [...(isWinterWorth ? [winter] : []), ...(isInward || !isWinterWorth ? [summer] : [])];
}

function profileBlocks(profile: TemperatureProfile, rated_r: number): Block[] {
  const seasons = seasonsToDraw(profile);
  if (seasons.length === 0) return profile.notes.map((text) => ({ kind: 'paragraph', text }));
  return [
    { kind: 'heading', text: 'Temperature and dew point through the wall' },
    ...seasons.flatMap((season): Block[] => [
      { kind: 'paragraph', text: seasonWords(season, season === profile.winter, rated_r) },
      profileDrawing(season),
    ]),
    { kind: 'paragraph', text: legend(seasons) },
  ];
}

function seasonWords(season: ProfileSeason, isWinter: boolean, rated_r: number): string {
  const { month, indoor_temp_f, outdoor_temp_f, insulation_r } = season;
  const difference = insulation_r - rated_r;
  return [
    `${isWinter ? 'Coldest' : 'Warmest'} month, ${monthName(month)}: ${indoor_temp_f} °F indoors, ${outdoor_temp_f} °F outdoors, through the cavity insulation.`,
    studWords(season),
    Math.abs(difference) >= 0.05
      ? `The exterior insulation is taken at its own temperature: R-${insulation_r} against its rated R-${rated_r}.`
      : '',
  ]
    .filter((words) => words !== '')
    .join(' ');
}

function studWords({ cavity, stud }: ProfileSeason): string {
  if (stud === null)
    return 'Steel studs have no path of their own here: over them the lining is colder and the sheathing warmer.';
  const at = cavity.findIndex((plane) => plane.role === 'framing');
  const behindFill = cavity[at]?.temp_f;
  const behindStud = stud[at]?.temp_f;
  if (behindFill === undefined || behindStud === undefined) return '';
  const outside = cavity[at + 1]?.role === 'sheathing' ? 'the sheathing' : 'what lies on the studs';
  return `The inner face of ${outside} is ${behindFill} °F there and ${behindStud} °F at a stud.`;
}

function legend(seasons: readonly ProfileSeason[]): string {
  const knowsVapour = seasons.some((season) => season.cavity.some((plane) => plane.dew_point_f !== null));
  return knowsVapour
    ? 'T is the temperature at the outer face of each layer, d the dew point of the vapour there, °F; X where they meet: water can form. Steady state at monthly means, no sun.'
    : 'T is the temperature at the outer face of each layer, °F. The dew point is not known. Steady state at monthly means, no sun.';
}

function condensateBlocks({
  condensate_by_month,
  condensate_planes,
  condensate_note,
}: RankedAssembly): Block[] {
  const where = condensate_planes.map(({ where: at, peak_g_m2 }) => `${at} (${peak_g_m2.toFixed(1)} g/m²)`);
  return [
    { kind: 'heading', text: 'Condensate by month' },
    ...condensateDrawing(condensate_by_month),
    ...(where.length > 0 ? [{ kind: 'paragraph' as const, text: `Water sits ${where.join('; ')}.` }] : []),
    { kind: 'paragraph', text: condensate_note },
  ];
}
