import type { Catalogue } from '../assembly/catalogue.ts';
import { CLIMATE_ZONES } from '../base/climate-zones.ts';
import type { Brief } from '../brief/brief.ts';
import type { Framing } from '../calculators/fastening/fastening-tables.ts';
import { computeWind, type WallZone, type WindStandard } from '../calculators/wind.ts';
import type { Site } from '../site/site.ts';
import type { CodeTables } from './code-tables.ts';
import { type CornerZone, cornerZone } from './corner-zone.ts';
import { type FramedLayer, framedLayer } from './framed-layer.ts';
import { namingScenarioFields } from './scenario-fields.ts';
import { shelfOf } from './shelf.ts';
import { withConventions } from './thermal-conventions.ts';
import { windStandardOf } from './wind-standard.ts';

/** Everything that is the same for every candidate of one answer. */
export type AnswerContext = {
  readonly brief: Brief;
  readonly site: Site;
  readonly tables: CodeTables;
  readonly catalogue: Catalogue;
  readonly framed: FramedLayer;
  /** Outward pressure on the corner zone, allowable-stress level, as a positive number of psf. */
  readonly outward_wind_psf: number;
  /** The same on the field. */
  readonly field_wind_psf: number;
  readonly corner_zone: CornerZone;
  readonly wind: {
    readonly standard: WindStandard;
    readonly velocity_pressure_psf: number;
    readonly source: readonly string[];
  };
  readonly fastening_framing: Framing;
  readonly climate_zone: (typeof CLIMATE_ZONES)[number];
};

/** A cladding fastener's tributary area is small; below 10 ft² the coefficients no longer change. */
export const FASTENER_AREA_FT2 = 10;

/**
 * Studs and tables that are the same as in an earlier answer are the same objects.
 *
 * @throws Refusal where a given value lies outside a method's range (wind, framing)
 */
export function answerContext(
  brief: Brief,
  site: Site,
  tables: CodeTables,
  catalogue: Catalogue,
): AnswerContext {
  const shelf = shelfOf(catalogue);
  const { framing, thermal_assumptions } = brief;
  const thermal = shelf.hold('thermal table', [tables.thermal, JSON.stringify(thermal_assumptions)], () =>
    withConventions(tables.thermal, thermal_assumptions),
  ).work;
  const studs = [
    thermal,
    framing.material,
    framing.depth_in,
    framing.spacing_in,
    thermal_assumptions.framing_style,
    brief.cavity_insulation_r,
  ];
  const standard = windStandardOf(brief.code_edition);
  const windOn = (wall_zone: WallZone) =>
    computeWind({
      standard,
      basic_wind_speed_mph: brief.basic_wind_speed_mph,
      exposure: brief.exposure,
      mean_roof_height_ft: brief.mean_roof_height_ft,
      wall_zone,
      effective_area_ft2: FASTENER_AREA_FT2,
      kzt: 1,
      ke: 1,
    });
  const wind = windOn(5);
  return {
    brief,
    site,
    tables: { ...tables, thermal },
    catalogue,
    climate_zone: knownZone(site.climate_zone),
    framed: shelf.hold('studs', studs, () => namingScenarioFields(() => framedLayer(brief, thermal))).work,
    outward_wind_psf: Math.abs(wind.allowable.outward_psf),
    field_wind_psf: Math.abs(windOn(4).allowable.outward_psf),
    corner_zone: namingScenarioFields(() => cornerZone(brief)),
    wind: { standard, velocity_pressure_psf: wind.velocity_pressure_psf, source: wind.source },
    fastening_framing: fasteningFraming(brief.framing),
  };
}

function fasteningFraming({ material, steel_thickness_mil }: Brief['framing']): Framing {
  if (material === 'wood') return 'wood';
  // The brief never leaves it open for steel; the thinnest stud would be the safe reading.
  return `steel-${steel_thickness_mil ?? 33}mil`;
}

/** The site's zone as the code tables name it. */
function knownZone(zone: string): AnswerContext['climate_zone'] {
  const found = CLIMATE_ZONES.find((known) => known === zone);
  if (!found) throw new Error(`the site has a climate zone that no table knows: ${zone}`);
  return found;
}
