import type {
  ListedSheathing,
  VapourCell,
  VapourEdition,
  VapourOccupancy,
  VapourTable,
  VapourZone,
} from './vapour-table.ts';

/** A wall in the terms of the vapour tables. */
export type WallQuestion = {
  readonly edition: VapourEdition;
  readonly occupancy: VapourOccupancy;
  readonly zone: VapourZone;
  readonly framing_depth_in: number;
  readonly ci_r: number;
  /** Null where not said: then taken as a wood structural panel, the sheathing with the fewest allowances. */
  readonly sheathing: ListedSheathing | 'unlisted' | null;
  readonly foam_plastic_ci: boolean | null;
  readonly is_vented: boolean;
};

/** Takes up rounding in sums of layers, far below the precision of any R-value. */
const R_ROUNDING = 1e-9;

/** The row that says which classes are permitted; its lack is a fault of the data file. */
export function permissionRow(table: VapourTable, wall: WallQuestion): VapourTable['permission'][number] {
  const row = table.permission.find((r) => r.edition === wall.edition && r.zone === wall.zone);
  if (!row) throw new Error(`vapour table has no permission row for ${wall.edition} zone ${wall.zone}`);
  return row;
}

/** How the edition calls its tables for this kind of building. */
export function sectionOf(table: VapourTable, wall: WallQuestion): VapourTable['sections'][number] {
  const section = table.sections.find((s) => s.edition === wall.edition && s.occupancy === wall.occupancy);
  if (!section) throw new Error(`vapour table names no sections for ${wall.edition} ${wall.occupancy}`);
  return section;
}

/** Citation of the permission table for this zone, with its provenance. */
export function permissionSource(table: VapourTable, wall: WallQuestion): string {
  const { provenance } = permissionRow(table, wall);
  return `${sectionOf(table, wall).permission}, ${zoneName(wall)} (${provenanceWords(provenance)})`;
}

/** Citation of one figure, with its provenance and where it was seen. */
export function cellSource(section: string | null, needed: VapourCell | null): string[] {
  if (section === null || needed === null) return [];
  return [`${section}, R-${needed.r} (${provenanceWords(needed.provenance)}: ${needed.seen_in})`];
}

function provenanceWords(provenance: string): string {
  return provenance === 'memory' ? 'from memory' : provenance.replace('-', ' ');
}

type Columns = { readonly over_2x4: VapourCell; readonly over_2x6: VapourCell };

/** Up to 3.5 in. the 2x4 column, up to 5.5 in. the 2x6 column, deeper framing is off the table. */
export function columnCell(row: Columns, wall: WallQuestion): VapourCell | null {
  if (wall.framing_depth_in > 5.5) return null;
  return wall.framing_depth_in <= 3.5 ? row.over_2x4 : row.over_2x6;
}

export function columnName(wall: WallQuestion): '2x4' | '2x6' {
  return wall.framing_depth_in <= 3.5 ? '2x4' : '2x6';
}

export function reaches(ci_r: number, needed_r: number): boolean {
  return ci_r >= needed_r - R_ROUNDING;
}

export function isWarm(wall: WallQuestion): boolean {
  return ['0', '1', '2', '3', '4'].includes(wall.zone);
}

export function zoneName(wall: WallQuestion): string {
  return wall.zone === '4C' ? 'zone 4 Marine' : `zone ${wall.zone}`;
}

export function sheathingName(sheathing: string): string {
  if (sheathing === 'wood-structural-panel') return 'wood structural panel';
  return sheathing === 'gypsum' ? 'gypsum sheathing' : sheathing;
}

/** An R-value as printed: at most two decimals. */
export function showR(r: number): string {
  return String(Math.round(r * 100) / 100);
}
