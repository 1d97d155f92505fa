import type { Face, RetarderChoice } from '../assembly/candidates.ts';
import type { Barrier, Buck, Cladding, Price, SheathingEntry } from '../assembly/catalogue-schema.ts';
import type { InsulationBuild } from '../assembly/insulation-builds.ts';
import { provenanceText } from '../base/provenance.ts';
import { type EnergyCompliance, optionsInWords } from '../calculators/energy-code.ts';
import type { SheathingDewPoint } from '../calculators/moisture/sheathing-dew-point.ts';
import type { RetarderJudgement } from '../calculators/vapour-code.ts';
import type { AnswerContext } from './answer-context.ts';
import type { BuckPart } from './buck-part.ts';
import type { CostColumns } from './cost-part.ts';
import type { FastenerCounts } from './fastener-counts.ts';
import type { FasteningPart } from './fastening-part.ts';
import { type Condensate, inwardPermeance, type MoisturePart } from './moisture-part.ts';
import type { OnFurring } from './on-furring.ts';
import type { SetApart } from './own-support.ts';
import type { ThermalPart } from './thermal-part.ts';
import { addedThickness, insulationPermeance } from './wall-layers.ts';
import type { WindowsPart } from './windows-part.ts';

/** A fact's value; null is "not known" and never passes for anything. */
export type FactSheet = Readonly<Record<string, string | number | boolean | null>>;

/** The crew on one scale, so that a rule can compare what is there with what is needed. */
export const CREW_RANK = {
  'first-time': 0,
  general: 1,
  'stucco-experienced': 2,
  'exterior-insulation-experienced': 2,
} as const;

/** Facts that are the same for every candidate of an answer. */
export function siteFacts(context: AnswerContext, windows: WindowsPart): FactSheet {
  const { brief, site } = context;
  const depth = brief.framing.depth_in;
  return {
    'site.climate_zone': site.climate_zone,
    'site.zone_number': site.zone_number,
    'site.moisture_regime': site.moisture_regime,
    'site.is_marine': site.is_marine,
    'site.is_cold_table_zone': site.zone_number >= 5 || (site.zone_number === 4 && site.is_marine),
    'site.annual_precip_in': site.climate?.annual_precip_in ?? null,
    'site.winter_mean_temp_f': site.climate?.winter_mean_temp_f ?? null,
    'site.basic_wind_speed_mph': brief.basic_wind_speed_mph,
    'site.exposure': brief.exposure,
    'site.mean_roof_height_ft': brief.mean_roof_height_ft,
    'site.fire_separation_ft': brief.fire_separation_ft,
    'site.is_wildfire_area': brief.wildfire_area,
    'site.termite_area': brief.termite_area,
    'project.is_retrofit': brief.project === 'retrofit',
    'project.code_edition': brief.code_edition,
    'project.finish_wanted': brief.finish,
    'project.budget_usd_per_ft2': brief.budget_usd_per_ft2,
    'project.crew_skill': brief.crew_skill,
    'project.crew_rank': CREW_RANK[brief.crew_skill],
    'project.rough_opening_can_change': brief.rough_opening_can_change,
    'project.has_thickness_limit': brief.max_added_thickness_in !== null,
    'project.max_added_thickness_in': brief.max_added_thickness_in,
    'project.wall_area_ft2': brief.wall_area_ft2,
    'framing.material': brief.framing.material,
    'framing.depth_in': depth,
    'framing.steel_thickness_mil': brief.framing.steel_thickness_mil ?? null,
    'framing.nominal': nominal(depth),
    'framing.spacing_in': brief.framing.spacing_in,
    'framing.species_gravity': brief.framing.species_gravity,
    'cavity.insulation_r': brief.cavity_insulation_r,
    'cavity.fill_r_per_in': brief.cavity_insulation_r / depth,
    'wind.outward_psf': context.outward_wind_psf,
    'windows.count': windows.count,
    'windows.open_share_percent': openShare(context, windows),
    'windows.heaviest_lb': windows.heaviest_lb,
    'windows.heaviest_but_doors_lb': windows.heaviest_but_doors_lb,
    'windows.largest_but_doors_ft2': windows.largest_but_doors_ft2,
    'windows.any_flangeless': windows.any_flangeless,
    'windows.any_door': windows.any_door,
    'windows.any_large_fixed_triple': windows.any_large_fixed_triple,
    'windows.all_large_fixed_triple': windows.all_large_fixed_triple,
    'windows.heaviest_large_fixed_triple_lb': windows.heaviest_large_fixed_triple_lb,
    'thermal.method': context.framed.method,
  };
}

/** How much of the wall the openings take, %; null where it isn't known. */
function openShare({ brief }: AnswerContext, { windows }: WindowsPart): number | null {
  if (!brief.open_share_is_known) return null;
  const open_ft2 = windows.reduce((sum, { count, area_ft2 }) => sum + count * area_ft2, 0);
  return (100 * open_ft2) / brief.wall_area_ft2;
}

function nominal(depth_in: number): '2x4' | '2x6' | '2x8' | 'other' {
  if (depth_in === 3.5) return '2x4';
  if (depth_in === 5.5) return '2x6';
  return depth_in === 7.25 ? '2x8' : 'other';
}

/** Facts of the cladding system, and of what holds it to its furring. */
export function claddingFacts(cladding: Cladding, onFurring: OnFurring | null): FactSheet {
  return {
    'cladding.id': cladding.id,
    'cladding.finish_kind': cladding.finish_kind,
    'cladding.is_cement_stucco': cladding.is_cement_stucco,
    'cladding.is_one_coat': cladding.is_one_coat,
    'cladding.is_insulated_finish': cladding.is_insulated_finish,
    'cladding.is_adhered_veneer': cladding.is_adhered_veneer,
    'cladding.is_fibre_cement': cladding.is_fibre_cement,
    'cladding.is_wood_siding': cladding.is_wood_siding,
    'cladding.is_combustible': cladding.is_combustible,
    'cladding.is_reservoir': cladding.is_reservoir,
    'cladding.needs_evaluation_report': cladding.needs_evaluation_report,
    'cladding.attachment': cladding.attachment,
    'cladding.lath': cladding.lath,
    'drainage.kind': cladding.drainage.kind,
    'drainage.gap_in': cladding.drainage.gap_in,
    'drainage.is_ventilated': cladding.drainage.is_ventilated,
    'drainage.counts_as_vented_cladding': cladding.drainage.counts_as_vented_cladding,
    'crew.needed_rank': cladding.crew.needed_rank,
    'crew.trades': cladding.crew.trades.length,
    'crew.needs_plasterer': cladding.crew.needs_plasterer,
    'fastening.furring_in': onFurring?.furring_in ?? 0,
    'fastening.on_furring_fastener': onFurring?.way?.label ?? null,
    'fastening.on_furring_spacing_in': onFurring?.corner?.spacing_in ?? null,
    'fastening.on_furring_wind_load_lb': onFurring?.corner?.wind_lb ?? null,
    'fastening.on_furring_wind_utilisation': onFurring?.wind_utilisation ?? null,
    'fastening.on_furring_combined_utilisation': onFurring?.combined_utilisation ?? null,
  };
}

/** Facts of the exterior insulation and of the sheathing that it lies on. */
export function buildFacts(build: InsulationBuild, sheathing: SheathingEntry): FactSheet {
  const { insulation } = build;
  return {
    'sheathing.kind': sheathing.id,
    'sheathing.is_wood_based': sheathing.is_wood_based,
    'insulation.id': insulation.id,
    'insulation.is_foam_plastic': insulation.is_foam_plastic,
    'insulation.is_combustible': insulation.is_combustible,
    'insulation.is_fibrous': !insulation.is_foam_plastic,
    'insulation.layers': build.boards_in.length,
    'insulation.thickness_in': build.thickness_in,
    'insulation.thickest_board_in': Math.max(...build.boards_in),
    'insulation.ci_r': build.r,
    'insulation.compressive_psi': insulation.compressive_psi.value,
    'insulation.permeance_perm': insulationPermeance(insulation, build.thickness_in, build.boards_in.length),
  };
}

/** Facts of the interior lining; all null when it is not known. */
export function insideFacts(inside: RetarderChoice): FactSheet {
  const { retarder, is_existing } = inside;
  return {
    'retarder.class': retarder?.class ?? null,
    'retarder.dry_cup_perm': retarder?.dry_cup_perm.value ?? null,
    'retarder.wet_cup_perm': retarder?.wet_cup_perm.value ?? null,
    'retarder.is_existing': is_existing,
    'moisture.inward_permeance_perm': inwardPermeance(inside),
  };
}

/** Facts of the water-resistive barrier. */
export function barrierFacts(barrier: Barrier): FactSheet {
  return {
    'wrb.id': barrier.id,
    'wrb.permeance_perm': barrier.permeance_perm.value,
    'wrb.is_vapour_barrier': barrier.permeance_perm.value <= CLASS_I_PERM,
    'wrb.is_adhered_or_fluid': barrier.is_adhered_or_fluid,
    'wrb.is_taped': barrier.is_taped,
    'wrb.layers': barrier.layers,
    'wrb.grade': barrier.grade,
  };
}

/** A vapour barrier by the residential code's classes: 0.1 perm or less. */
const CLASS_I_PERM = 0.1;

/** Facts of the window buck and how it fares with the worst of the windows that it is for. */
export function buckFacts(buck: Buck, part: BuckPart): FactSheet {
  return {
    'buck.id': buck.id,
    'buck.support': buck.support,
    'buck.projection_in': part.projection_in,
    'buck.max_projection_in': buck.max_projection_in,
    'buck.needs_larger_opening': part.needs_larger_opening,
    'buck.needed_rank': buck.min_crew_rank,
    'buck.verdict': part.worst?.verdict ?? null,
    'buck.utilisation': part.worst?.utilisation ?? null,
    'buck.worst_window': part.worst?.window ?? null,
    'buck.why': part.worst?.why ?? null,
    'buck.large_set_apart_lb': Math.max(0, ...part.apart.map(largeSetApart_lb)),
    'buck.corner_temp_factor': part.corner_temp_factor,
    'buck.corner_is_estimated': part.corner_not_estimated === null,
    'buck.corner_not_estimated': part.corner_not_estimated,
    'buck.required_temp_factor': part.required_temp_factor,
  };
}

/** Weight of a unit that is set apart for its size or weight alone; doors and large fixed triples have rules of their own. */
function largeSetApart_lb({ window, reason }: SetApart): number {
  return reason === 'large' || reason === 'heavy' ? window.judged_weight_lb : 0;
}

/** What the vapour table says; the verdict is null when the interior retarder is not known. */
export type VapourPart = Omit<RetarderJudgement, 'verdict' | 'why'> & {
  readonly verdict: RetarderJudgement['verdict'] | null;
  readonly why: string | null;
};

/** What the calculators found for one wall. */
export type CalculatedParts = FaceParts & {
  readonly moisture: Omit<MoisturePart, 'dew_point'>;
  /** The condensate alone, without the permeances beside it. */
  readonly water: Condensate;
  readonly vapour: VapourPart;
  readonly buck: BuckPart;
  readonly cost: Price;
};

/** What depends on the cladding and the insulation alone. */
export type FaceParts = {
  readonly thermal: ThermalPart;
  readonly energy: EnergyCompliance;
  readonly dewPoint: SheathingDewPoint;
  readonly fastening: FasteningPart;
  /** Everything that is driven through the insulation. */
  readonly fasteners: FastenerCounts;
};

/** How a wall meets the energy code, to go after "is met"; null where it can't be said. */
export const ROUTE_WORDS: Readonly<Record<EnergyCompliance['route'], string | null>> = {
  'u-factor': 'by its U-factor',
  'r-value': 'by one of the R-value options, though not by its U-factor',
  both: 'by its U-factor and by an R-value option',
  none: 'by no route',
  unknown: null,
};

/** Heat, energy code, winter sheathing, weight and fastening. */
export function faceFacts(
  face: Face,
  { thermal, energy, dewPoint, fastening, fasteners }: FaceParts,
): FactSheet {
  const { schedule } = fastening;
  return {
    'thermal.u_factor': thermal.u_factor,
    'thermal.clear_wall_u_factor': thermal.clear_wall_u_factor,
    'thermal.r_effective': thermal.r_effective,
    'energy.max_u_factor': energy.max_u_factor,
    'energy.max_u_sureness': maxUSureness(energy),
    'energy.complies_by_u': energy.complies_by_u,
    'energy.complies_by_r': energy.complies_by_r,
    'energy.complies': energy.complies,
    'energy.u_margin_percent': energy.u_margin_percent,
    'energy.route': ROUTE_WORDS[energy.route],
    'energy.r_options': energy.r_options,
    'energy.r_options_sureness': optionsSureness(energy),
    'energy.table_provenance': energy.provenance,
    'moisture.sheathing_temp_f': dewPoint.sheathing_temp_f,
    'moisture.indoor_dew_point_f': dewPoint.indoor_dew_point_f,
    'moisture.exterior_r_share': dewPoint.exterior_r_share,
    'moisture.min_exterior_r_share': dewPoint.min_exterior_r_share,
    'moisture.dew_point_margin_f': dewPoint.dew_point_margin_f,
    'weight.cladding_psf': fastening.cladding_psf,
    'weight.total_psf': fastening.cladding_psf + fastening.insulation_psf,
    'fastening.fastener': schedule?.fastener ?? 'none',
    'fastening.support': face.cladding.attachment,
    'fastening.spacing_in': schedule?.fastener_spacing_in ?? 0,
    'fastening.table_verdict': schedule?.table.verdict ?? 'outside-table',
    'fastening.outside_because': schedule ? schedule.table.outside_because : NO_SCHEDULE,
    'fastening.max_insulation_in': schedule ? (schedule.table.max_insulation_in ?? 0) : null,
    'fastening.length_in': schedule?.length_in ?? null,
    'fastening.length_on_market': schedule ? schedule.length_in !== null : true,
    'fastening.gravity_load_lb': schedule?.gravity_load_lb ?? 0,
    'fastening.wind_load_lb': schedule?.wind_load_lb ?? 0,
    'fastening.wind_utilisation': schedule?.wind_utilisation ?? null,
    'fastening.weight_has_figure': (schedule?.gravity_utilisation ?? null) !== null,
    'fastening.weight_use_at_least': schedule?.weight_use_at_least ?? null,
    'fastening.weight_alone_utilisation': schedule?.weight_alone_utilisation ?? null,
    'fastening.combined_utilisation': schedule?.combined_utilisation ?? null,
    'fastening.gravity_utilisation': schedule?.gravity_utilisation ?? null,
    'fastening.count_per_100_ft2': schedule?.count_per_100_ft2 ?? 0,
    'fastening.into_studs_per_100_ft2': fasteners.through_per_100_ft2 + fasteners.inner_per_100_ft2,
    'crew.work_steps': face.cladding.crew.steps.length + face.build.boards_in.length + 1,
  };
}

const NO_SCHEDULE = 'no fastener of the catalogue is laid out for it';

function maxUSureness({ requirement }: EnergyCompliance): string | null {
  const { max_u_factor } = requirement.provenance;
  return max_u_factor === null ? null : provenanceText(max_u_factor);
}

/** How sure the R-value options are together; those from memory are named where others were seen. */
function optionsSureness({ requirement: { options, provenance } }: EnergyCompliance): string | null {
  const recalled = options.filter((_, at) => provenance.options[at] === 'memory');
  if (options.length === 0) return null;
  if (recalled.length === 0) return 'seen in published sources';
  if (recalled.length === options.length) return provenanceText('memory');
  return `${optionsInWords(recalled)} from memory, the rest seen in published sources`;
}

/** The vapour table's minima and verdict. */
export function vapourFacts(vapour: VapourPart): FactSheet {
  return {
    'vapour.verdict': vapour.verdict,
    'vapour.min_ci_r_class_iii': vapour.min_ci_r_class_iii,
    'vapour.min_ci_r_class_ii': vapour.min_ci_r_class_ii,
    'vapour.class_iii_ci_met': vapour.class_iii_ci_met,
    'vapour.class_ii_ci_met': vapour.class_ii_ci_met,
  };
}

/** Where the wall stands before the work, and whether the work goes on top of it. */
export type LotLine = { readonly distance_ft: number | null; readonly is_retrofit: boolean };

/**
 * Drying outward, the thickness that comes of it all, and where the finished face then stands: fire separation is
 * measured from the face, and what is added to a standing wall brings it nearer to the lot line. The distance of a new
 * wall is taken as that of its finished face.
 */
export function outerFacts(
  face: Face,
  barrier: Barrier,
  outward_permeance_perm: number,
  { distance_ft, is_retrofit }: LotLine,
): FactSheet {
  const added_in = addedThickness(face, barrier);
  const face_in = distance_ft === null ? null : 12 * distance_ft - (is_retrofit ? added_in : 0);
  return {
    'moisture.outward_permeance_perm': outward_permeance_perm,
    'thickness.added_in': added_in,
    'thickness.face_to_lot_line_ft': face_in === null ? null : Math.max(0, face_in) / 12,
    'thickness.over_lot_line_in': face_in === null ? null : Math.max(0, -face_in),
  };
}

/** Facts of which nearly every wall has its own, as one column each. */
export type FactColumns = {
  readonly count: number;
  readonly columns: Readonly<Record<string, ArrayLike<string | number | boolean | null>>>;
};

export function waterFacts(water: readonly Condensate[]): FactColumns {
  return {
    count: water.length,
    columns: {
      'moisture.condensate_peak_g_m2': water.map((one) => one.condensate_peak_g_m2),
      'moisture.condensate_told': water.map(condensateTold),
      'moisture.dries_within_year': water.map((one) => one.dries_within_year),
    },
  };
}

/** To go after "by the monthly method"; what rounds to nothing is told as nothing. */
function condensateTold({ condensate_peak_g_m2: peak, dries_within_year }: Condensate): string | null {
  if (peak === null || dries_within_year === null) return null;
  const most = Math.round(peak);
  if (most === 0 && dries_within_year) return 'nothing condenses in any month';
  return dries_within_year
    ? `what condenses (up to ${most} g/m²) is gone within the year`
    : `what condenses (up to ${most} g/m²) is not gone within the year`;
}

export function costFacts({ low, likely, high }: CostColumns): FactColumns {
  return {
    count: likely.length,
    columns: {
      'cost.low_usd_per_ft2': low,
      'cost.likely_usd_per_ft2': likely,
      'cost.high_usd_per_ft2': high,
    },
  };
}
