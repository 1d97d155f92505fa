import type { RankedAssembly } from '../advice/advice-schema.ts';

/** A wall's figure that people ask about first. */
export type Headline = {
  /** Where it stands in the wall, as a path. */
  readonly path: string;
  readonly what: string;
  readonly unit: string;
  readonly of: (wall: RankedAssembly) => number | null;
};

function headline(path: string, what: string, unit: string, of: Headline['of']): Headline {
  return { path, what, unit, of };
}

const cost = (end: 'low' | 'likely' | 'high', what: string) =>
  headline(
    `installed_cost_usd_per_ft2.${end}`,
    what,
    '$ per ft²',
    (wall) => wall.installed_cost_usd_per_ft2[end],
  );

/** In the order in which they are read. */
export const HEADLINES: readonly Headline[] = [
  cost('likely', 'Likely cost'),
  cost('low', 'Lowest cost'),
  cost('high', 'Highest cost'),
  headline('u_factor', 'U-factor', 'Btu/(h·ft²·°F)', (wall) => wall.u_factor),
  headline('r_effective', 'Effective R-value', '', (wall) => wall.r_effective),
  headline('insulation.thickness_in', 'Insulation', 'in.', (wall) => wall.insulation.thickness_in),
  headline('added_thickness_in', 'Added thickness', 'in.', (wall) => wall.added_thickness_in),
  headline('weight_psf', 'Weight', 'psf', (wall) => wall.weight_psf),
  headline('fastening.length_in', 'Fastener length', 'in.', (wall) => wall.fastening.length_in),
  headline(
    'fastening.spacing_along_stud_in',
    'Fastener spacing',
    'in.',
    (wall) => wall.fastening.spacing_along_stud_in,
  ),
  headline('buck.projection_in', 'Buck projection', 'in.', (wall) => wall.buck.projection_in),
  headline('score', 'Score', '', (wall) => wall.score),
];
