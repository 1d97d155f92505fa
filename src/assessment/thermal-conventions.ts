import type { Brief } from '../brief/brief.ts';
import type { ThermalTable } from '../calculators/thermal/thermal-table.ts';

type Figure = ThermalTable['films']['inside_vertical_r'];

const AS_GIVEN = 'as given in the scenario';

/** The thermal table with what the user counts by instead: everything that reads it then says so. */
export function withConventions(table: ThermalTable, given: Brief['thermal_assumptions']): ThermalTable {
  const { framing_fraction, film_inside_r, film_outside_r } = given;
  if (framing_fraction === null && film_inside_r === null && film_outside_r === null) return table;
  const replaced = (figure: Figure, value: number | null): Figure =>
    value === null ? figure : { value, source: AS_GIVEN, provenance: 'proposal' };
  return {
    ...table,
    films: {
      ...table.films,
      inside_vertical_r: replaced(table.films.inside_vertical_r, film_inside_r),
      outside_winter_r: replaced(table.films.outside_winter_r, film_outside_r),
    },
    framing_fractions:
      framing_fraction === null
        ? table.framing_fractions
        : table.framing_fractions.map((row) => ({
            ...row,
            framing_fraction,
            source: AS_GIVEN,
            provenance: 'proposal',
          })),
  };
}
