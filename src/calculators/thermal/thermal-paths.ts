import { Refusal } from '../../base/refusal.ts';
import { type Interface, type ResistanceLayer, temperatureProfile } from './temperature-profile.ts';
import { CAVITY_LABEL, type ThermalInput } from './thermal-input.ts';

export const INSIDE_FILM = 'inside film';
export const OUTSIDE_FILM = 'outside film';
export const STUD_LABEL = 'stud';

/** Everything in series with the framed layer, h·ft²·°F/Btu: both films and all continuous layers. */
export function seriesR(input: ThermalInput): number {
  return [...input.inside_layers, ...input.outside_layers].reduce(
    (sum, layer) => sum + layer.r,
    input.film_inside_r + input.film_outside_r,
  );
}

/** The layers along the path through the cavity insulation, both films included, inside to outside. */
export function cavityPath(input: ThermalInput): ResistanceLayer[] {
  return path(input, { label: CAVITY_LABEL, r: input.cavity.insulation_r });
}

/**
 * The layers along the path through a wood stud, both films included, inside to outside.
 *
 * @throws Refusal for steel framing: heat spreads sideways in its flanges, there is no such path
 */
export function studPath(input: ThermalInput): ResistanceLayer[] {
  if (input.method === 'steel-correction-factor') {
    throw new Refusal({
      field: 'cavity.framing',
      value: '"steel"',
      accepted:
        'A stud path is for wood framing; the temperature at a steel stud needs a two-dimensional calculation.',
    });
  }
  return path(input, { label: STUD_LABEL, r: input.cavity.framing_r });
}

/** Temperatures at the outer face of each layer through the cavity insulation; the last is the outdoor air. */
export function cavityProfile(
  input: ThermalInput,
  inside_temp_f: number,
  outside_temp_f: number,
): Interface[] {
  return temperatureProfile(cavityPath(input), inside_temp_f, outside_temp_f);
}

/** Temperatures at the outer face of each layer through a wood stud; the last is the outdoor air. */
export function studProfile(input: ThermalInput, inside_temp_f: number, outside_temp_f: number): Interface[] {
  return temperatureProfile(studPath(input), inside_temp_f, outside_temp_f);
}

function path(input: ThermalInput, framed: ResistanceLayer): ResistanceLayer[] {
  return [
    { label: INSIDE_FILM, r: input.film_inside_r },
    ...input.inside_layers,
    framed,
    ...input.outside_layers,
    { label: OUTSIDE_FILM, r: input.film_outside_r },
  ];
}
