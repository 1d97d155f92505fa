import type { LoadToGrain, YieldMode } from './dowel.ts';

export type LateralFastener = 'nail' | 'wood-screw' | 'lag-screw';
/** Which diameter of a threaded fastener the reduction term looks at. */
export type ReductionDiameter = 'nominal' | 'root';

/**
 * The basis taken when none is asked for. Lag screws: the root, which reproduces the printed Table 12K. Wood
 * screws: the nominal diameter, as in the design association's worked example; it gives 8 to 17 % less than the
 * root for Nos. 10 to 14 and so errs to the safe side.
 */
export const DEFAULT_REDUCTION_DIAMETER: Readonly<Record<LateralFastener, ReductionDiameter>> = {
  nail: 'nominal',
  'wood-screw': 'nominal',
  'lag-screw': 'root',
};

/** K_D for slender fasteners: 2.2 to 0.17 in., then 10 D + 0.5. Source: NDS-2018 Table 12.3.1B, footnote. */
export function slenderReduction(diameter_in: number): number {
  return diameter_in <= 0.17 ? 2.2 : 10 * diameter_in + 0.5;
}

/** K_θ = 1 + 0.25 θ/90, θ the largest angle of load to grain in any member. Source: NDS-2018 Table 12.3.1B. */
export function grainReduction(load_to_grain: LoadToGrain): number {
  return load_to_grain === 'perpendicular' ? 1.25 : 1;
}

const STOUT: Readonly<Record<YieldMode, number>> = { Im: 4, Is: 4, II: 3.6, IIIm: 3.2, IIIs: 3.2, IV: 3.2 };

/**
 * Reduction term R_d for each yield mode: the yield load divided by it is the reference value.
 *
 * @param fastener          threads (root below nominal) only matter for screws
 * @param diameter_in       nominal diameter, in.
 * @param root_diameter_in  root diameter, in.; for nails the same as the diameter
 * @param load_to_grain     of the member where the angle is largest
 * @param basis             nominal or root diameter for threaded fasteners
 *
 * Source: NDS-2018 Table 12.3.1B: under 0.25 in. K_D; from 0.25 in. 4, 3.6 and 3.2 times K_θ; threaded fasteners
 * of 0.25 in. and more with a root under 0.25 in. K_D K_θ (as in a public restatement, the threaded row from
 * memory; together they reproduce Table 12K).
 */
export function reductionTerms(
  fastener: LateralFastener,
  diameter_in: number,
  root_diameter_in: number,
  load_to_grain: LoadToGrain,
  basis: ReductionDiameter = DEFAULT_REDUCTION_DIAMETER[fastener],
): Readonly<Record<YieldMode, number>> {
  const root = fastener === 'nail' ? diameter_in : root_diameter_in;
  const counted = basis === 'root' ? root : diameter_in;
  if (diameter_in < 0.25) return everyMode(slenderReduction(counted));
  const grain = grainReduction(load_to_grain);
  if (root < 0.25) return everyMode(slenderReduction(counted) * grain);
  return {
    Im: STOUT.Im * grain,
    Is: STOUT.Is * grain,
    II: STOUT.II * grain,
    IIIm: STOUT.IIIm * grain,
    IIIs: STOUT.IIIs * grain,
    IV: STOUT.IV * grain,
  };
}

function everyMode(term: number): Record<YieldMode, number> {
  return { Im: term, Is: term, II: term, IIIm: term, IIIs: term, IV: term };
}
