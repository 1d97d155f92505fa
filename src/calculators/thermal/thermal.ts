import { Refusal, showValue } from '../../base/refusal.ts';
import { plausibleCavityR } from './cavity-insulation.ts';
import { iso6946Combined } from './iso-6946.ts';
import { isoAirGapCorrection } from './iso-corrections.ts';
import { isothermalPlanesU, parallelPathU } from './parallel-path.ts';
import { resistanceToUs, transmittanceToUs } from './si-units.ts';
import { steelCavity, steelFrameU } from './steel-frame.ts';
import type { Interface } from './temperature-profile.ts';
import { CAVITY_LABEL, type IsoInput, type ThermalInput } from './thermal-input.ts';
import { cavityProfile, seriesR } from './thermal-paths.ts';
import type { ThermalTable } from './thermal-table.ts';
import { fastenerDeltaU } from './whole-wall.ts';

export type ThermalAnswer = {
  readonly method: ThermalInput['method'];
  /** Of the whole: clear wall, fasteners and, by ISO 6946, air gaps; Btu/(h·ft²·°F). */
  readonly u_factor: number;
  /** 1 / u_factor, h·ft²·°F/Btu. */
  readonly r_effective: number;
  readonly clear_wall_u_factor: number;
  readonly delta_u_fasteners: number;
  /** By ISO 6946 only. */
  readonly delta_u_air_gaps?: number;
  /** When both temperatures are given: the outer face of each layer through the cavity insulation. */
  readonly interfaces?: readonly Interface[];
  readonly source: readonly string[];
  readonly notes: readonly string[];
};

type ClearWall = {
  readonly u_factor: number;
  readonly delta_u_air_gaps?: number;
  readonly source: readonly string[];
  readonly notes: readonly string[];
};

/**
 * U-factor of a framed wall by the method asked for, with fasteners and, on request, the temperature profile.
 *
 * @param input  as checked by `thermalInputSchema`; resistances h·ft²·°F/Btu, temperatures °F
 * @param table  framing, steel and ISO figures with their sources
 * @throws Refusal for cavity insulation out of reach in its depth, fasteners through a layer that is not there, and
 *         whatever the method is not valid for (untabulated steel, ISO limits too far apart)
 *
 * Source: per method, named in the answer.
 */
export function computeThermal(input: ThermalInput, table: ThermalTable): ThermalAnswer {
  plausibleCavityR(table, input.cavity.insulation_r, input.cavity.depth_in);
  refuseEmptyCavity(input, table);
  const clear = clearWall(input, table);
  const delta_u_fasteners = fastenersOf(input);
  const u_factor = clear.u_factor + (clear.delta_u_air_gaps ?? 0) + delta_u_fasteners;
  const interfaces = interfacesOf(input);
  return {
    method: input.method,
    u_factor,
    r_effective: 1 / u_factor,
    clear_wall_u_factor: clear.u_factor,
    delta_u_fasteners,
    ...(clear.delta_u_air_gaps === undefined ? {} : { delta_u_air_gaps: clear.delta_u_air_gaps }),
    ...(interfaces ? { interfaces } : {}),
    source: [
      ...clear.source,
      ...(input.fasteners
        ? ['ISO 6946 Annex F, detailed procedure: fasteners by point thermal transmittance']
        : []),
    ],
    notes: [...clear.notes, ...fastenerNotes(input), ...profileNotes(input)],
  };
}

function clearWall(input: ThermalInput, table: ThermalTable): ClearWall {
  switch (input.method) {
    case 'parallel-path':
      return {
        u_factor: parallelPathU(framedWall(input)),
        source: ['ASHRAE Handbook Fundamentals: parallel paths; ASHRAE 90.1 Appendix A for wood framing'],
        notes: [
          'Parallel paths let no heat flow sideways: of the usual methods the one most favourable to the wall, and the one US energy codes take for wood framing.',
          ...emptyCavityNotes(input, table),
        ],
      };
    case 'isothermal-planes':
      return {
        u_factor: isothermalPlanesU(framedWall(input)),
        source: ['ASHRAE Handbook Fundamentals: isothermal planes'],
        notes: [
          'Isothermal planes let heat flow sideways freely: of the usual methods the least favourable to the wall.',
        ],
      };
    case 'iso-6946':
      return isoWall(input, table);
    case 'steel-correction-factor':
      return steelWall(input, table);
  }
}

function framedWall(input: Exclude<ThermalInput, { method: 'steel-correction-factor' }>) {
  const { insulation_r, framing_r, framing_fraction } = input.cavity;
  return { series_r: seriesR(input), cavity_r: insulation_r, framing_r, framing_fraction };
}

function isoWall(input: IsoInput, table: ThermalTable): ClearWall {
  const iso = table.iso_6946;
  const combined = iso6946Combined(iso, framedWall(input));
  const level = input.air_gap_level ?? 0;
  const gaps = airGapLayer(input);
  const delta_u_air_gaps = transmittanceToUs(isoAirGapCorrection(iso, level, gaps.r / combined.r));
  return {
    u_factor: combined.u_factor,
    delta_u_air_gaps,
    source: ['ISO 6946:2017: combined method, coefficients seen second-hand; the standard itself not seen'],
    notes: [
      `Upper limit R-${combined.upper_r.toFixed(2)}, lower limit R-${combined.lower_r.toFixed(2)}, mean R-${combined.r.toFixed(2)}: the method is at most ${(combined.max_relative_error * 100).toFixed(1)} % off.`,
      ...(level > 0
        ? [
            `Air-gap level ${level} taken for "${gaps.label}"${input.air_gap_layer ? '' : ', the layer of highest resistance'}; it is in u_factor and not in clear_wall_u_factor.`,
          ]
        : []),
      ...isoFilmNotes(input, table),
    ],
  };
}

function airGapLayer(input: IsoInput): { label: string; r: number } {
  const layers = [
    ...input.inside_layers,
    { label: CAVITY_LABEL, r: input.cavity.insulation_r },
    ...input.outside_layers,
  ];
  const wanted = input.air_gap_layer;
  if (wanted === undefined) {
    return layers.reduce((best, layer) => (layer.r > best.r ? layer : best));
  }
  const found = layers.find((layer) => layer.label === wanted);
  if (found) return found;
  throw unknownLayer('air_gap_layer', wanted, layers);
}

function isoFilmNotes(input: IsoInput, table: ThermalTable): string[] {
  const { inside_horizontal, outside } = table.iso_6946.surface.rounded_m2kw;
  const inside_r = resistanceToUs(inside_horizontal);
  const outside_r = resistanceToUs(outside);
  const differs =
    Math.abs(input.film_inside_r - inside_r) > 0.01 || Math.abs(input.film_outside_r - outside_r) > 0.01;
  return differs
    ? [
        `ISO 6946 walls take films of R-${inside_r.toFixed(3)} inside and R-${outside_r.toFixed(3)} outside (0.13 and 0.04 m²·K/W); the films given were used.`,
      ]
    : [];
}

function steelWall(
  input: Extract<ThermalInput, { method: 'steel-correction-factor' }>,
  table: ThermalTable,
): ClearWall {
  const wall = { series_r: seriesR(input), ...input.cavity };
  const row = steelCavity(table.steel_cavities, wall);
  return {
    u_factor: steelFrameU(table.steel_cavities, wall),
    source: [`ASHRAE 90.1 Appendix A, cavity-insulation correction factors: ${row.source}`],
    notes: [
      `Steel studs and R-${row.insulation_r} between them count together as R-${row.effective_r}${row.provenance === 'memory' ? ' (from memory)' : ''}.`,
      'Clear wall with studs of 0.043 in. to 0.054 in. steel. Other published methods for steel framing differ by up to 1.7 times: always name the method.',
    ],
  };
}

/** Averaging the framed layer by area needs a resistance in each of its parts. */
function refuseEmptyCavity(input: ThermalInput, table: ThermalTable): void {
  const averages = input.method === 'isothermal-planes' || input.method === 'iso-6946';
  if (!averages || input.cavity.insulation_r > 0) return;
  throw new Refusal({
    field: 'cavity.insulation_r',
    value: showValue(input.cavity.insulation_r),
    accepted: `The method "${input.method}" needs a resistance above 0 here; an empty closed cavity has about R-${table.empty_cavity_r.value}.`,
  });
}

function emptyCavityNotes(input: ThermalInput, table: ThermalTable): string[] {
  return input.cavity.insulation_r === 0
    ? [
        `insulation_r 0 was taken as no resistance at all; an empty closed cavity has about R-${table.empty_cavity_r.value}: give that to count it.`,
      ]
    : [];
}

function fastenersOf(input: ThermalInput): number {
  const { fasteners } = input;
  if (!fasteners) return 0;
  const layers = [...input.inside_layers, ...input.outside_layers];
  if (!layers.some((layer) => layer.label === fasteners.through)) {
    throw unknownLayer('fasteners.through', fasteners.through, layers);
  }
  return fastenerDeltaU(fasteners.per_ft2, fasteners.chi_btu_h_f);
}

function unknownLayer(field: string, value: string, layers: readonly { label: string }[]): Refusal {
  return new Refusal({
    field,
    value: showValue(value),
    accepted: `Name a layer of this wall: ${layers.map((layer) => showValue(layer.label)).join(', ') || 'it has none'}.`,
  });
}

function fastenerNotes(input: ThermalInput): string[] {
  return input.fasteners
    ? [
        'u_factor and r_effective include the fasteners (delta_u_fasteners); clear_wall_u_factor is the wall without them.',
      ]
    : [];
}

function interfacesOf(input: ThermalInput): Interface[] | undefined {
  const { inside_temp_f, outside_temp_f } = input;
  if (inside_temp_f === undefined || outside_temp_f === undefined) return undefined;
  // The outdoor air itself is no plane of the wall.
  return cavityProfile(input, inside_temp_f, outside_temp_f).slice(0, -1);
}

function profileNotes(input: ThermalInput): string[] {
  const given = [input.inside_temp_f, input.outside_temp_f].filter((temp) => temp !== undefined).length;
  if (given === 0) return [];
  if (given === 1) return ['Only one air temperature was given; the profile needs both.'];
  return [
    'The temperatures are those of the path through the cavity insulation, in the steady state; at studs and fasteners they differ.',
  ];
}
