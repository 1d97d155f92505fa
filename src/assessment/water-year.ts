import type { Candidate } from '../assembly/candidates.ts';
import type { Plane } from '../calculators/moisture/wall-planes.ts';
import type { AnswerContext } from './answer-context.ts';
import { yearConditions } from './moisture-part.ts';
import { monthsOfWater, type WaterLayer, waterLayers, wetWall } from './wall-water.ts';

export type WaterMonth = {
  /** 1 January to 12 December. */
  readonly month: number;
  /** Water gained in the month by all planes together, g/m²; negative while drying. */
  readonly condensate_g_m2: number;
  /** Water held at the end of the month, g/m². */
  readonly accumulated_g_m2: number;
};

export type WaterYear = {
  /** Twelve, from the first condensing month on; from January when no month condenses. */
  readonly months: readonly WaterMonth[];
  readonly peak_g_m2: number;
  readonly dries_within_year: boolean;
  /** Where water forms, the wettest plane first; empty when the wall stays dry. */
  readonly planes: readonly { readonly where: string; readonly peak_g_m2: number }[];
};

/** Why there is no year: what is not known. */
export type WaterUnknown = { readonly why: string };

/** Under a hundredth of a gram a plane counts as dry: the method is nowhere near as exact. */
const DRY_G_M2 = 0.01;

/**
 * Condensate of one wall month by month through the year of its site: the year behind the peak that the rules read.
 *
 * Source: ISO 13788:2012, clause 6. Diffusion only: no air leakage, storage, rain or sun.
 */
export function waterYear(candidate: Candidate, context: AnswerContext): WaterYear | WaterUnknown {
  const { inside } = candidate;
  const months = context.site.climate?.monthly;
  const year = yearConditions(context);
  if (!months || !year) return { why: 'The monthly temperature and humidity of the place are not known.' };
  if (!inside.retarder) return { why: 'The interior vapour retarder is not known.' };
  const wall = wetWall(candidate, inside.retarder);
  const result = monthsOfWater(wall, context, year);
  if (result.unbounded) {
    return { why: 'In some month nothing holds the room air back from a plane below its dew point.' };
  }
  const layers = waterLayers(wall, context);
  return {
    months: result.months.map((m) => ({
      month: months[m.index]?.month ?? m.index + 1,
      condensate_g_m2: m.condensate_kg_m2 * 1000,
      accumulated_g_m2: m.accumulated_kg_m2 * 1000,
    })),
    peak_g_m2: result.peak_kg_m2 * 1000,
    dries_within_year: result.dries_out,
    planes: wettest(result.planes, layers),
  };
}

/** Planes by name, the wettest first; planes inside one layer come to the wettest of them. */
function wettest(planes: readonly Readonly<Plane>[], layers: readonly WaterLayer[]): WaterYear['planes'] {
  const byName = new Map<string, number>();
  for (const plane of planes) {
    const peak = plane.peak_kg_m2 * 1000;
    if (peak < DRY_G_M2) continue;
    const name = planeName(plane, layers);
    byName.set(name, Math.max(peak, byName.get(name) ?? 0));
  }
  return [...byName]
    .map(([where, peak_g_m2]) => ({ where, peak_g_m2 }))
    .sort((a, b) => b.peak_g_m2 - a.peak_g_m2);
}

const NAMES: Readonly<Partial<Record<WaterLayer['role'], string>>> = {
  lining: 'the lining',
  framing: 'the cavity insulation',
  sheathing: 'the sheathing',
  barrier: 'the water-resistive barrier',
  insulation: 'the exterior insulation',
  finish: 'the finish',
};

function planeName(plane: Readonly<Plane>, layers: readonly WaterLayer[]): string {
  const name = (index: number) => NAMES[layers[index]?.role ?? 'lining'] ?? 'a layer';
  if (plane.layer < 0) return 'at the room face of the lining';
  if (plane.part < plane.parts) return `inside ${name(plane.layer)}`;
  if (plane.layer === layers.length - 1) return `at the outer face of ${name(plane.layer)}`;
  return `between ${name(plane.layer)} and ${name(plane.layer + 1)}`;
}
