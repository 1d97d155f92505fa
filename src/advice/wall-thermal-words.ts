import type { Candidate } from '../assembly/candidates.ts';
import type { AnswerContext } from '../assessment/answer-context.ts';
import type { CalculatedParts } from '../assessment/fact-sheet.ts';
import { layerMaterials } from '../assessment/layer-materials.ts';
import { type ThermalBreakdown, thermalBreakdown } from '../assessment/thermal-breakdown.ts';
import { densityToUs, rPerInch } from '../calculators/thermal/si-units.ts';
import { round } from './rounded.ts';
import type { WallThermal } from './wall-physics-schema.ts';

/** A wall's U-factor taken apart, with what was assumed and what the layers are made of. */
export function wallThermal(
  candidate: Candidate,
  parts: CalculatedParts,
  context: AnswerContext,
): WallThermal {
  const { framed, brief, tables } = context;
  const found = thermalBreakdown(candidate, parts.thermal, parts.buck, context);
  return {
    method: framed.method,
    clear_wall_u_factor: round(found.clear_wall_u_factor, 6),
    delta_u_fasteners: round(found.delta_u_fasteners, 6),
    delta_u_furring: found.delta_u_furring,
    delta_u_bucks: round(found.delta_u_bucks, 6),
    delta_u_steel_brackets: round(found.delta_u_steel_brackets, 6),
    whole_wall_u_factor: round(found.whole_wall_u_factor, 6),
    air_gap: {
      ...found.air_gap,
      delta_u: round(found.air_gap.delta_u, 6),
      delta_u_if_aligned: round(found.air_gap.delta_u_if_aligned, 6),
    },
    assumptions: {
      framing_fraction: framed.framing_fraction,
      film_inside_r: tables.thermal.films.inside_vertical_r.value,
      film_outside_r: tables.thermal.films.outside_winter_r.value,
      cavity_labelled_r: brief.cavity_insulation_r,
      cavity_installed_r: framed.cavity_r,
      fastener_chi_btu_h_f: round(found.fastener_chi_btu_h_f, 5),
      fasteners_per_100_ft2: round(parts.fasteners.through_per_100_ft2, 1),
      inner_fasteners_per_100_ft2: round(parts.fasteners.inner_per_100_ft2, 1),
      buck_psi_btu_h_ft_f: found.buck_psi_btu_h_ft_f,
      opening_perimeter_ft: round(found.opening_perimeter_ft, 1),
      wall_area_ft2: brief.wall_area_ft2,
    },
    materials: materials(candidate, context),
    notes: [...thermalNotes(candidate, found, context), ...fastenerNotes(parts)],
  };
}

function thermalNotes(
  candidate: Candidate,
  found: ThermalBreakdown,
  { framed, brief, tables }: AnswerContext,
): string[] {
  const { films, fastener_chi_w_k } = tables.thermal;
  const chi = fastener_chi_w_k[brief.framing.material];
  const { cladding, buck } = candidate;
  const hasWindows = brief.windows.length > 0;
  return [
    framed.framing_fraction === null
      ? 'Steel framing: studs and cavity insulation count together by tabulated effective resistances; there is no framing fraction.'
      : `Framing takes ${Math.round(framed.framing_fraction * 100)} % of the wall (studs, plates and headers at ${brief.framing.spacing_in} in.).`,
    `Air films R-${films.inside_vertical_r.value} inside and R-${films.outside_winter_r.value} outside; ${outsideWords(cladding)}`,
    ...framed.notes,
    ...(framed.cavity_r === brief.cavity_insulation_r
      ? [
          `The cavity insulation counts with its label, R-${framed.cavity_r}: it is taken to fit the cavity uncompressed.`,
        ]
      : []),
    cladding.attachment === 'furring'
      ? 'The furring lies outside the insulation and bridges nothing itself; its screws are counted as fasteners.'
      : cladding.attachment === 'adhered'
        ? `No furring and no fasteners: nothing${hasWindows ? ' but the bucks' : ''} bridges the insulation.`
        : `No furring: nothing but the fasteners${hasWindows ? ' and the bucks' : ''} bridges the insulation.`,
    ...(cladding.attachment === 'adhered'
      ? []
      : [`Each fastener is taken at ${chi.value} W/K: ${chi.source}.`]),
    ...(hasWindows
      ? [
          `${buck.label}: psi ${buck.psi_btu_h_ft_f.value} Btu/(h·ft·°F) round every opening (${buck.psi_btu_h_ft_f.source}); reported apart, not in the U-factor held against the code.`,
        ]
      : []),
    airGapNote(found),
  ];
}

function fastenerNotes({ fasteners }: CalculatedParts): string[] {
  const { groups, inner_per_100_ft2 } = fasteners;
  if (groups.length === 0) return ['The boards are glued: no fastener bridges them.'];
  const count = (does: (typeof groups)[number]['does']) =>
    round(
      groups.reduce((sum, g) => sum + (g.does === does && g.depth_share === 1 ? g.per_100_ft2 : 0), 0),
      1,
    );
  return [
    `Through all boards in 100 ft²: ${count('carries')} that carry and ${count('holds-boards')} that hold the boards until then; all are counted, field and corners each by its share of the wall.`,
    ...(inner_per_100_ft2 === 0
      ? []
      : [
          `${round(inner_per_100_ft2, 1)} more in 100 ft² hold inner boards and are covered by the next: each is counted by its share of the depth (ISO 6946 annex F, recessed fastener).`,
        ]),
  ];
}

function outsideWords({ drainage }: Candidate['cladding']): string {
  return drainage.kind === 'mat' || drainage.kind === 'furring-gap'
    ? 'nothing is counted in the drained or ventilated space or outside it.'
    : 'the finish counts, since it sits straight on the board.';
}

function airGapNote({ air_gap }: ThermalBreakdown): string {
  const aligned = round(air_gap.delta_u_if_aligned, 5);
  return air_gap.joints === 'offset'
    ? `Offset joints leave no gap from face to face (ISO 6946 air-gap level 0); one layer with joints that run through would add U ${aligned}. For information: not in the figures above.`
    : `One layer with butted joints counts as air-gap level 1 of ISO 6946 and would add U ${aligned}; two layers with offset joints, or taped joints, add nothing. For information: not in the figures above.`;
}

function materials(candidate: Candidate, context: AnswerContext): WallThermal['materials'] {
  return layerMaterials(candidate, context).map(({ layer, material }) => {
    const { conductivity_w_mk, r, density_kg_m3 } = material;
    const figure = conductivity_w_mk ?? r;
    return {
      layer,
      material: material.label,
      conductivity_w_mk: conductivity_w_mk?.value ?? null,
      r_per_in: conductivity_w_mk ? round(rPerInch(conductivity_w_mk.value), 3) : null,
      density_kg_m3: density_kg_m3?.value ?? null,
      density_pcf: density_kg_m3 ? round(densityToUs(density_kg_m3.value), 2) : null,
      source: figure?.source ?? '',
      provenance: figure?.provenance ?? 'memory',
    };
  });
}
