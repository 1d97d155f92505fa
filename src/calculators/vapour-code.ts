import { z } from 'zod';
import { CLIMATE_ZONES, type ClimateZone } from '../base/climate-zones.ts';
import { CODE_EDITIONS } from '../base/code-editions.ts';
import { Refusal, showValue } from '../base/refusal.ts';
import {
  type ClassJudgement,
  judgeClassI,
  judgeClassII,
  judgeClassIII,
  judgeNoRetarder,
  judgeResponsive,
  type VapourVerdict,
} from './vapour-judgements.ts';
import type { WallQuestion } from './vapour-lookups.ts';
import type { VapourEdition, VapourOccupancy, VapourTable, VapourZone } from './vapour-table.ts';

const DEPTH_MESSAGE = 'Give the actual stud depth in inches from 1.5 to 12, for example 5.5.';
const CI_MESSAGE = 'Give the R-value outside the framing from 0 to 100, for example 11.25.';

/** Zone of the vapour tables: the number, but Marine 4 by itself. */
const TABLE_ZONES: Readonly<Record<ClimateZone, VapourZone>> = {
  '0A': '0',
  '0B': '0',
  '1A': '1',
  '1B': '1',
  '2A': '2',
  '2B': '2',
  '3A': '3',
  '3B': '3',
  '3C': '3',
  '4A': '4',
  '4B': '4',
  '4C': '4C',
  '5A': '5',
  '5B': '5',
  '5C': '5',
  '6A': '6',
  '6B': '6',
  '7': '7',
  '8': '8',
};

/** Input of `calc vapour-code`. The last three may be left out; what is then assumed stands in the notes. */
export const vapourInputSchema = z.strictObject({
  edition: z.enum(CODE_EDITIONS, {
    error: `Give the edition: ${CODE_EDITIONS.map((year) => `"${year}"`).join(', ')}.`,
  }),
  climate_zone: z.enum(CLIMATE_ZONES, {
    error: `Give a climate zone: ${CLIMATE_ZONES.join(', ')}.`,
  }),
  framing_depth_in: z.number(DEPTH_MESSAGE).min(1.5, DEPTH_MESSAGE).max(12, DEPTH_MESSAGE),
  ci_r: z.number(CI_MESSAGE).min(0, CI_MESSAGE).max(100, CI_MESSAGE),
  cladding_vented: z.boolean('Say whether the cladding counts as vented: true or false.'),
  sheathing: z
    .enum(['osb', 'plywood', 'gypsum', 'fibreboard', 'boards', 'none', 'unknown'], {
      error: 'Give "osb", "plywood", "gypsum", "fibreboard", "boards", "none" or "unknown".',
    })
    .optional(),
  foam_plastic_ci: z.boolean('Say whether the exterior insulation is foam plastic.').optional(),
  occupancy: z
    .enum(['residential', 'building-code'], {
      error: 'Give "residential" (IRC) or "building-code" (IBC).',
    })
    .optional(),
});
export type VapourInput = z.output<typeof vapourInputSchema>;

export type RetarderKind = 'none' | 'class-iii' | 'class-ii' | 'class-i' | 'responsive';

/** One wall and one interior retarder, for {@link judgeRetarder}. */
export type RetarderQuestion = {
  readonly edition: VapourEdition;
  readonly climate_zone: string;
  readonly framing_depth_in: number;
  /** R-value outside the framing, h·ft²·°F/Btu. */
  readonly ci_r: number;
  readonly retarder_class: RetarderKind;
  /** Left out: taken as a wood structural panel, the sheathing with the fewest allowances. */
  readonly sheathing?: VapourInput['sheathing'];
  readonly foam_plastic_ci?: boolean | undefined;
  readonly cladding_listed_as_vented: boolean;
  /** Left out: residential. */
  readonly occupancy?: VapourOccupancy | undefined;
};

export type RetarderJudgement = {
  readonly verdict: VapourVerdict;
  readonly why: string;
  /** 0 where none is asked for, null where the wall is off the table. */
  readonly min_ci_r_class_iii: number | null;
  readonly min_ci_r_class_ii: number | null;
  /** Null where the wall is off the table. */
  readonly class_iii_ci_met: boolean | null;
  readonly class_ii_ci_met: boolean | null;
  /** Whether a figure or cell behind the verdict is held from memory. */
  readonly from_memory: boolean;
  readonly source: readonly string[];
};

/**
 * What the vapour retarder table says of one interior retarder in one wall: the fast form for the advisor.
 *
 * @param table     `retarders.table.json`
 * @param question  edition, zone ("5B"), stud depth (in.), exterior R, retarder, sheathing, foam, vented or not
 * @returns         `permitted` when free of condition or its condition is met by this wall; `conditional` when a
 *                  condition is not met or not stated; `prohibited` when the table forbids it
 * @throws Refusal for a zone that the table lacks
 *
 * Source: IRC R702.7 and IBC 1404.3, editions 2018, 2021, 2024, cell by cell in the table with provenance.
 */
export function judgeRetarder(table: VapourTable, question: RetarderQuestion): RetarderJudgement {
  const wall = wallQuestion(question);
  const iii = judgeClassIII(table, wall);
  const ii = judgeClassII(table, wall);
  const own = judgeKind(table, question.retarder_class, wall, iii, ii);
  return {
    verdict: own.verdict,
    why: own.why,
    min_ci_r_class_iii: iii.min_ci_r,
    min_ci_r_class_ii: ii.min_ci_r,
    class_iii_ci_met: iii.ci_met,
    class_ii_ci_met: ii.ci_met,
    from_memory: own.from_memory,
    source: own.source,
  };
}

function judgeKind(
  table: VapourTable,
  kind: RetarderKind,
  wall: WallQuestion,
  iii: ClassJudgement,
  ii: ClassJudgement,
): ClassJudgement {
  switch (kind) {
    case 'class-i':
      return judgeClassI(table, wall);
    case 'class-ii':
      return ii;
    case 'class-iii':
      return iii;
    case 'responsive':
      return judgeResponsive(table, wall);
    case 'none':
      return judgeNoRetarder(table, wall);
  }
}

export type VapourResult = {
  readonly class_i: { readonly verdict: VapourVerdict; readonly why: string };
  readonly class_ii: { readonly verdict: VapourVerdict; readonly why: string };
  readonly class_iii: { readonly verdict: VapourVerdict; readonly why: string };
  readonly min_ci_r_for_class_iii: number | null;
  readonly min_ci_r_for_class_ii: number | null;
  readonly source: readonly string[];
  readonly notes: readonly string[];
};

/**
 * The answer of `calc vapour-code`: each class of interior retarder for one wall, and the exterior minima.
 *
 * @param table  `retarders.table.json`
 * @param input  edition, zone, stud depth (in.), exterior R, vented or not; optional sheathing, foam, occupancy
 * @returns      verdicts with reasons, minima (null where none applies or the wall is off the table), notes
 * @throws Refusal for a zone that the table lacks
 */
export function vapourRequirement(table: VapourTable, input: VapourInput): VapourResult {
  const wall = wallQuestion({ ...input, cladding_listed_as_vented: input.cladding_vented });
  const i = judgeClassI(table, wall);
  const ii = judgeClassII(table, wall);
  const iii = judgeClassIII(table, wall);
  const short = ({ verdict, why }: ClassJudgement) => ({ verdict, why });
  return {
    class_i: short(i),
    class_ii: short(ii),
    class_iii: short(iii),
    min_ci_r_for_class_iii: iii.min_ci_r === 0 ? null : iii.min_ci_r,
    min_ci_r_for_class_ii: ii.min_ci_r === 0 ? null : ii.min_ci_r,
    source: [...new Set([...i.source, ...ii.source, ...iii.source])],
    notes: notes(table, wall, input),
  };
}

function wallQuestion(question: Omit<RetarderQuestion, 'retarder_class'>): WallQuestion {
  return {
    edition: question.edition,
    occupancy: question.occupancy ?? 'residential',
    zone: tableZone(question.climate_zone),
    framing_depth_in: question.framing_depth_in,
    ci_r: question.ci_r,
    sheathing: listedSheathing(question.sheathing),
    foam_plastic_ci: question.foam_plastic_ci ?? null,
    is_vented: question.cladding_listed_as_vented,
  };
}

function tableZone(climate_zone: string): VapourZone {
  const known = CLIMATE_ZONES.find((zone) => zone === climate_zone);
  if (known === undefined) {
    throw new Refusal({
      field: 'climate_zone',
      value: showValue(climate_zone),
      accepted: `Give a climate zone: ${CLIMATE_ZONES.join(', ')}.`,
    });
  }
  return TABLE_ZONES[known];
}

function listedSheathing(sheathing: VapourInput['sheathing']): WallQuestion['sheathing'] {
  switch (sheathing) {
    case undefined:
    case 'unknown':
      return null;
    case 'osb':
    case 'plywood':
      return 'wood-structural-panel';
    case 'gypsum':
    case 'fibreboard':
      return sheathing;
    case 'boards':
    case 'none':
      return 'unlisted';
  }
}

function notes(table: VapourTable, wall: WallQuestion, input: VapourInput): string[] {
  const rules = (...ids: string[]) =>
    table.rules.flatMap((rule) =>
      ids.includes(rule.id) && rule.editions.includes(wall.edition)
        ? [rule.provenance === 'memory' ? `${rule.text} (From memory.)` : rule.text]
        : [],
    );
  const found: string[] = [];
  if (wall.framing_depth_in > 5.5) {
    found.push(
      `The tables stop at 2x6 framing; a depth of ${wall.framing_depth_in} in. needs an approved design.`,
    );
  } else if (wall.framing_depth_in !== 3.5 && wall.framing_depth_in !== 5.5) {
    found.push(
      `A depth of ${wall.framing_depth_in} in. is read from the ${wall.framing_depth_in < 3.5 ? '2x4' : '2x6'} column.`,
    );
  }
  if (wall.zone === '4' && wall.edition !== '2018') {
    found.push(
      'The residential code leaves Class III free in zone 4 outside Marine; the building code sends all of zone 4 to its Class III table. Judged here by the ' +
        (wall.occupancy === 'residential' ? 'residential code.' : 'building code.'),
    );
  }
  if (wall.is_vented) {
    found.push(table.vented_cladding.remark);
    if (wall.sheathing === null) found.push('The sheathing is not said: taken as a wood structural panel.');
  }
  if (input.foam_plastic_ci === undefined && wall.edition !== '2018' && wall.ci_r > 0) {
    found.push(
      'Whether the exterior insulation is foam plastic is not said: the Class II minimum is shown as if it were.',
    );
  }
  if (wall.zone === '0' && wall.edition === '2018')
    found.push('The 2018 edition has no zone 0: treated as zone 1.');
  found.push(
    ...rules('responsive', 'double-class-i', 'spray-foam', 'spray-foam-2018', 'energy', 'design'),
    'States and cities amend these tables: ask which edition is adopted, and let the building official decide.',
  );
  return found;
}
