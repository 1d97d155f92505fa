import {
  cellSource,
  columnCell,
  columnName,
  isWarm,
  permissionRow,
  permissionSource,
  reaches,
  sectionOf,
  sheathingName,
  showR,
  type WallQuestion,
  zoneName,
} from './vapour-lookups.ts';
import type { VapourCell, VapourTable } from './vapour-table.ts';

export type VapourVerdict = 'permitted' | 'prohibited' | 'conditional';

/** What the table says of one class in one wall. */
export type ClassJudgement = {
  readonly verdict: VapourVerdict;
  readonly why: string;
  /** Least exterior R asked for: 0 where none is, null where the wall is off the table. */
  readonly min_ci_r: number | null;
  /** Whether this wall reaches it; null where the wall is off the table. */
  readonly ci_met: boolean | null;
  /** Whether the cells behind the verdict are held from memory. */
  readonly from_memory: boolean;
  readonly source: readonly string[];
};

/** A judgement in which no exterior R plays a part. */
function withoutR(
  table: VapourTable,
  wall: WallQuestion,
  verdict: VapourVerdict,
  why: string,
): ClassJudgement {
  return {
    verdict,
    why,
    min_ci_r: 0,
    ci_met: true,
    from_memory: permissionRow(table, wall).provenance === 'memory',
    source: [permissionSource(table, wall)],
  };
}

/** Class I inside: sheet polyethylene, foil; up to 0.1 perm. */
export function judgeClassI(table: VapourTable, wall: WallQuestion): ClassJudgement {
  const zone = zoneName(wall);
  if (permissionRow(table, wall).class_i === 'prohibited') {
    const why = `A Class I retarder inside is not permitted in ${zone}: it stops drying to the inside. A responsive retarder is the exception.`;
    return withoutR(table, wall, 'prohibited', why);
  }
  const why =
    wall.edition === '2018' && isWarm(wall)
      ? `This edition forbids no class in ${zone}, and asks for none. Later editions prohibit Class I here: it traps moisture in a cooled wall.`
      : `Permitted inside in ${zone}. Together with a Class I layer outside the wall dries neither way and needs an approved design.`;
  return withoutR(table, wall, 'permitted', why);
}

/** Class II inside: kraft facing, retarder paint; above 0.1 up to 1 perm. */
export function judgeClassII(table: VapourTable, wall: WallQuestion): ClassJudgement {
  const zone = zoneName(wall);
  if (permissionRow(table, wall).class_ii === 'prohibited') {
    const why = `A Class II retarder inside is not permitted in ${zone}. A responsive retarder is the exception.`;
    return withoutR(table, wall, 'prohibited', why);
  }
  const row = table.class_ii_ci.find((r) => r.edition === wall.edition && r.zone === wall.zone);
  if (!row) {
    return withoutR(table, wall, 'permitted', `Permitted inside in ${zone}, whatever the exterior R.`);
  }
  if (wall.foam_plastic_ci === false) {
    const why = `Permitted inside in ${zone}: no foam plastic stands outside the framing.`;
    return withoutR(table, wall, 'permitted', why);
  }
  return underFoam(table, wall, columnCell(row, wall));
}

/** Class II where the exterior insulation is foam plastic, or may be. */
function underFoam(table: VapourTable, wall: WallQuestion, needed: VapourCell | null): ClassJudgement {
  const zone = zoneName(wall);
  const ifFoam = wall.foam_plastic_ci === null ? ' where the exterior insulation is foam plastic' : '';
  const wetCup = 'Under foam plastic the layer must also exceed 1 perm by the wet cup.';
  const base = {
    min_ci_r: needed?.r ?? null,
    from_memory: needed?.provenance === 'memory',
    source: [permissionSource(table, wall), ...cellSource(sectionOf(table, wall).class_ii, needed)],
  };
  if (wall.ci_r === 0) {
    const later = needed === null ? 'an approved design' : `R-${needed.r}`;
    const why = `Permitted inside in ${zone} without exterior foam plastic; with it the wall needs ${later}.`;
    return { verdict: 'permitted', why, ci_met: true, ...base };
  }
  if (needed === null) {
    const why = `The Class II table stops at 2x6 framing: a ${wall.framing_depth_in} in. wall needs an approved design${ifFoam}.`;
    return { verdict: 'conditional', why, ci_met: null, ...base };
  }
  const asked = `asked for outside a ${columnName(wall)} wall in ${zone}${ifFoam}`;
  if (reaches(wall.ci_r, needed.r)) {
    const why = `Permitted inside: R-${showR(wall.ci_r)} reaches the R-${needed.r} ${asked}. ${wetCup}`;
    return { verdict: 'permitted', why, ci_met: true, ...base };
  }
  const why = `R-${showR(wall.ci_r)} is R-${showR(needed.r - wall.ci_r)} short of the R-${needed.r} ${asked}. ${wetCup}`;
  return { verdict: 'conditional', why, ci_met: false, ...base };
}

/** Class III inside: latex or enamel paint; above 1 up to 10 perm. */
export function judgeClassIII(table: VapourTable, wall: WallQuestion): ClassJudgement {
  const zone = zoneName(wall);
  const row = table.class_iii_ci.find(
    (r) => r.edition === wall.edition && r.zone === wall.zone && r.occupancies.includes(wall.occupancy),
  );
  if (!row) {
    const asksNone = wall.edition === '2018' ? ' This edition asks for no retarder here.' : '';
    const why = `Permitted inside in ${zone}, whatever the exterior R.${asksNone}`;
    return withoutR(table, wall, 'permitted', why);
  }
  const needed = columnCell(row, wall);
  const ci_met = needed === null ? null : reaches(wall.ci_r, needed.r);
  const base = {
    min_ci_r: needed?.r ?? null,
    ci_met,
    from_memory: needed?.provenance === 'memory',
    source: [permissionSource(table, wall), ...cellSource(sectionOf(table, wall).class_iii, needed)],
  };
  if (needed !== null && ci_met) {
    const why = `R-${showR(wall.ci_r)} reaches the R-${needed.r} asked for outside a ${columnName(wall)} wall in ${zone}.`;
    return { verdict: 'permitted', why, ...base };
  }
  const sheathing = wall.sheathing ?? 'wood-structural-panel';
  if (wall.is_vented && row.vented_over.some((listed) => listed === sheathing)) {
    const why = `Listed vented cladding over ${sheathingName(sheathing)} stands in for the exterior R in ${zone}.`;
    return { verdict: 'permitted', why, ...base, from_memory: row.vented_provenance === 'memory' };
  }
  return { verdict: 'conditional', why: lackingClassIII(wall, needed, row.vented_over), ...base };
}

function lackingClassIII(
  wall: WallQuestion,
  needed: VapourCell | null,
  ventedOver: readonly string[],
): string {
  const other =
    ventedOver.length > 0
      ? ` The other way is listed vented cladding over ${ventedOver.map(sheathingName).join(', ')}.`
      : ' Vented cladding does not stand in for it here.';
  const first =
    needed === null
      ? `The Class III table stops at 2x6 framing: a ${wall.framing_depth_in} in. wall needs an approved design.`
      : `R-${showR(wall.ci_r)} is R-${showR(needed.r - wall.ci_r)} short of the R-${needed.r} asked for outside a ${columnName(wall)} wall in ${zoneName(wall)} with a Class III retarder.`;
  return first + other;
}

/** A retarder of Class I or II when dry that opens above 1 perm when wet. */
export function judgeResponsive(table: VapourTable, wall: WallQuestion): ClassJudgement {
  const rule = table.rules.find((r) => r.id === 'responsive' && r.editions.includes(wall.edition));
  if (!rule) {
    const asClassII = judgeClassII(table, wall);
    const why = `${asClassII.why} This edition does not know responsive retarders: judged as Class II by its dry cup.`;
    return { ...asClassII, why };
  }
  return {
    verdict: 'permitted',
    why: 'A responsive retarder, above 1 perm by the wet cup, may go inside in every zone.',
    min_ci_r: 0,
    ci_met: true,
    from_memory: rule.provenance === 'memory',
    source: [`${rule.source} (${rule.provenance})`],
  };
}

/** No retarder at all inside. */
export function judgeNoRetarder(table: VapourTable, wall: WallQuestion): ClassJudgement {
  const permission = permissionRow(table, wall).none;
  const zone = zoneName(wall);
  if (permission === 'permitted') {
    return withoutR(table, wall, 'permitted', `No retarder is asked for in ${zone}.`);
  }
  if (permission === 'prohibited') {
    const why = `A Class I or II retarder is asked for inside in ${zone}, or Class III where its table is met.`;
    return withoutR(table, wall, 'prohibited', why);
  }
  const row = table.no_retarder_ci.find((r) => r.edition === wall.edition && r.zone === wall.zone);
  const needed = row?.ci ?? null;
  const amount = needed === null ? 'an exterior R by the table' : `R-${needed.r} outside`;
  return {
    verdict: 'conditional',
    why: `Without any retarder ${zone} asks for ${amount} (this wall has R-${showR(wall.ci_r)}), and everything inboard of it may total no more than R-${table.no_retarder_max_inboard_r.r}: not with filled cavities.`,
    min_ci_r: needed?.r ?? null,
    ci_met: null,
    from_memory: true,
    source: [permissionSource(table, wall), ...cellSource(sectionOf(table, wall).none, needed)],
  };
}
