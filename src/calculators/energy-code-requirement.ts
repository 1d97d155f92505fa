import { Refusal, showValue } from '../base/refusal.ts';
import type { EnergyQuery } from './energy-code-input.ts';
import type {
  CommercialEdition,
  EnergyTable,
  ResidentialEdition,
  ResidentialRow,
  TableOption,
} from './energy-code-table.ts';
import { type Provenance, weakestProvenance } from './thermal/sourced.ts';

export type ROption = { readonly cavity_r: number; readonly ci_r: number };

export type EnergyRequirement = {
  readonly edition: string;
  readonly code: string;
  readonly climate_zone: string;
  readonly wall: EnergyQuery['wall'];
  /** Btu/(h·ft²·°F); null where the edition gives none. */
  readonly max_u_factor: number | null;
  /** Mass walls of residential editions: where more than half the insulation is inside. */
  readonly max_u_factor_interior_insulation: number | null;
  /** Each is complete in itself: cavity and continuous insulation both at least these. Empty: no R-value route. */
  readonly options: readonly ROption[];
  /** How sure the maximum U-factor and each option is, in the order of the options. */
  readonly provenance: {
    readonly max_u_factor: Provenance | null;
    readonly options: readonly Provenance[];
  };
  readonly source: readonly string[];
  readonly notes: readonly string[];
};

/**
 * What an energy code asks of a wall above grade.
 *
 * @param table  `rules/energy/walls.table.json`, checked by `energyTableSchema`
 * @param query  edition, climate zone of the code ("5B"), kind of wall
 * @returns      the highest U-factor and every R-value option, with sources, how sure each figure is, and conflicts
 * @throws Refusal for an edition that is not carried and for a zone that the edition doesn't have (2018: zone 0)
 *
 * Source: per figure, see the table. Zone 4C takes the marine row in residential editions, zone 4 in ASHRAE 90.1.
 */
export function energyRequirement(table: EnergyTable, query: EnergyQuery): EnergyRequirement {
  const residential = table.residential_editions.find((entry) => entry.edition === query.edition);
  if (residential) return residentialRequirement(table, residential, query);
  const commercial = table.commercial_editions.find((entry) => entry.edition === query.edition);
  if (commercial) return commercialRequirement(table, commercial, query);
  const known = [...table.residential_editions, ...table.commercial_editions].map((entry) => entry.edition);
  throw new Refusal({
    field: 'edition',
    value: showValue(query.edition),
    accepted: `Give one of ${known.map((edition) => `"${edition}"`).join(', ')}.`,
  });
}

/** Id of the source that is none: what was recalled and not seen. */
const RECALL = 'recall';

const LOCAL_NOTE =
  'Adopted state and local codes amend the model code: ask the building department which edition and amendments apply.';

type Wanted = {
  readonly max_u: { value: number; provenance: Provenance; sources: readonly string[] };
  readonly interior_u: { value: number; provenance: Provenance; sources: readonly string[] } | null;
  readonly options: readonly TableOption[];
  readonly tables: readonly string[];
  readonly notes: readonly string[];
};

function residentialRequirement(
  table: EnergyTable,
  edition: ResidentialEdition,
  query: EnergyQuery,
): EnergyRequirement {
  const row = edition.rows.find((entry) => entry.zone === residentialZone(query.climate_zone));
  if (!row) throw unknownZone(edition.code, edition.rows, query);
  const wanted = wantedOf(table, edition, row, query);
  return requirement(table, edition, query, {
    ...wanted,
    notes: [...wanted.notes, ...row.notes, ...edition.notes],
  });
}

function wantedOf(
  table: EnergyTable,
  edition: ResidentialEdition,
  row: ResidentialRow,
  query: EnergyQuery,
): Wanted {
  const { wood_frame, mass } = row;
  switch (query.wall) {
    case 'wood-frame':
      return {
        max_u: wood_frame.max_u_factor,
        interior_u: null,
        options: wood_frame.options,
        tables: [edition.u_table, edition.r_table],
        notes: [],
      };
    case 'steel-frame':
      return steelWanted(table, edition, row, query);
    case 'mass':
      return {
        max_u: mass.max_u_factor,
        interior_u: mass.max_u_factor_interior_insulation,
        options: [
          { cavity_r: 0, ci_r: mass.exterior_r.value, ...figureOf(mass.exterior_r) },
          { cavity_r: mass.interior_r.value, ci_r: 0, ...figureOf(mass.interior_r) },
        ],
        tables: [edition.u_table, edition.r_table],
        notes: [
          `The first option is for insulation at least half of which lies outside the mass or in it, the second (and U ${mass.max_u_factor_interior_insulation.value}) for insulation more than half of which lies inside.`,
        ],
      };
  }
}

function figureOf(figure: { sources: string[]; provenance: Provenance }) {
  return { sources: figure.sources, provenance: figure.provenance };
}

/** The U-factor of the wood-frame row, and the steel equivalents of those of its options that have one. */
function steelWanted(
  table: EnergyTable,
  edition: ResidentialEdition,
  row: ResidentialRow,
  query: EnergyQuery,
): Wanted {
  const spacing_in = query.stud_spacing_in ?? 16;
  const { seen_for_editions, u_factor_rule, notes, rows } = table.steel_frame;
  const wasSeen = seen_for_editions.includes(edition.edition);
  const matched = rows.flatMap((steel) => {
    if (steel.stud_spacing_in !== spacing_in) return [];
    const wood = row.wood_frame.options.find(
      (option) => option.cavity_r === steel.wood.cavity_r && option.ci_r === steel.wood.ci_r,
    );
    return wood ? [{ steel, wood }] : [];
  });
  const max_u = row.wood_frame.max_u_factor;
  return {
    max_u: {
      value: max_u.value,
      sources: [...max_u.sources, ...u_factor_rule.sources],
      provenance: weakest([max_u.provenance, u_factor_rule.provenance]),
    },
    interior_u: null,
    options: matched.flatMap(({ steel, wood }) =>
      steel.options.map((option) => ({
        ...option,
        // An equivalent is no surer than the wood-frame option that it stands for.
        provenance: weakest([option.provenance, wood.provenance, ...(wasSeen ? [] : (['memory'] as const))]),
      })),
    ),
    tables: [edition.u_table, edition.steel_table],
    notes: [
      query.stud_spacing_in === undefined
        ? 'The R-value options are those for steel studs at 16 in. on center; at 24 in. the code asks for less.'
        : `The R-value options are those for steel studs at ${spacing_in} in. on center.`,
      ...(wasSeen
        ? []
        : [
            `The equivalents were seen for ${seen_for_editions.join(', ')} and are taken to be the same here.`,
          ]),
      ...matched.flatMap(({ steel }) => steel.notes),
      ...notes,
    ],
  };
}

function weakest(provenances: readonly [Provenance, ...Provenance[]]): Provenance {
  return weakestProvenance(provenances) ?? provenances[0];
}

function commercialRequirement(
  table: EnergyTable,
  edition: CommercialEdition,
  query: EnergyQuery,
): EnergyRequirement {
  const rows = edition.rows.filter((entry) => entry.wall === query.wall);
  const row = rows.find((entry) => entry.zone === query.climate_zone[0]);
  if (!row) throw unknownZone(edition.code, rows, query);
  const space = query.space ?? 'nonresidential';
  return requirement(table, edition, query, {
    max_u: row[space],
    interior_u: null,
    options: [],
    tables: [edition.u_table],
    notes: [
      space === 'residential'
        ? 'The maximum is that of residential spaces, which takes in Group R.'
        : 'The maximum is that of nonresidential spaces; for Group R give "space": "residential".',
      ...edition.notes,
    ],
  });
}

function requirement(
  table: EnergyTable,
  edition: { edition: string; code: string },
  query: EnergyQuery,
  wanted: Wanted,
): EnergyRequirement {
  const { max_u, interior_u, options, tables } = wanted;
  const named = new Set([
    ...max_u.sources,
    ...(interior_u?.sources ?? []),
    ...options.flatMap((option) => option.sources),
  ]);
  return {
    edition: edition.edition,
    code: edition.code,
    climate_zone: query.climate_zone,
    wall: query.wall,
    max_u_factor: max_u.value,
    max_u_factor_interior_insulation: interior_u?.value ?? null,
    options: options.map(({ cavity_r, ci_r }) => ({ cavity_r, ci_r })),
    provenance: { max_u_factor: max_u.provenance, options: options.map((option) => option.provenance) },
    source: [...tables.map((name) => `${edition.code}, ${name}`), ...seenIn(table, named)],
    notes: [...memoryNotes(wanted), ...wanted.notes, LOCAL_NOTE],
  };
}

/** Where the figures were seen; those of no document last. */
function seenIn(table: EnergyTable, named: ReadonlySet<string>): string[] {
  const seen = table.sources.filter((source) => named.has(source.id) && source.id !== RECALL);
  const recalled = named.has(RECALL)
    ? [seen.length > 0 ? 'The rest from memory, no document seen' : 'All from memory, no document seen']
    : [];
  return [...seen.map((source) => `Seen in: ${source.what}`), ...recalled];
}

function memoryNotes({ max_u, interior_u, options }: Wanted): string[] {
  const recalled = options.filter((option) => option.provenance === 'memory');
  const all = recalled.length === options.length;
  const u = weakestProvenance([max_u.provenance, ...(interior_u ? [interior_u.provenance] : [])]);
  return [
    ...(u === 'memory'
      ? [
          `From memory: the maximum U-factor of ${max_u.value}${interior_u ? ` (and ${interior_u.value})` : ''}. Check it against the printed table.`,
        ]
      : []),
    ...(recalled.length > 0
      ? [
          `From memory: ${all ? 'all R-value options' : `the option ${optionsInWords(recalled)}`}. Check against the printed table.`,
        ]
      : []),
  ];
}

function residentialZone(climate_zone: string): string {
  return climate_zone === '4C' ? '4M' : climate_zone.slice(0, 1);
}

function unknownZone(code: string, rows: readonly { zone: string }[], query: EnergyQuery): Refusal {
  const zones = rows.map((row) => row.zone).filter((zone) => zone !== '4M');
  return new Refusal({
    field: 'climate_zone',
    value: showValue(query.climate_zone),
    accepted: `${code} has zones ${zones[0]} to ${zones[zones.length - 1]}; give one of those or another edition.`,
  });
}

/** "R-20, R-13 + R-5 continuous or R-15 continuous" */
export function optionsInWords(options: readonly ROption[]): string {
  const words = options.map(({ cavity_r, ci_r }) => {
    if (ci_r === 0) return `R-${cavity_r}`;
    return cavity_r === 0 ? `R-${ci_r} continuous` : `R-${cavity_r} + R-${ci_r} continuous`;
  });
  const last = words.pop();
  if (last === undefined) return '';
  return words.length > 0 ? `${words.join(', ')} or ${last}` : last;
}
