import { competing, firstChoice } from '../advice/choose-alternatives.ts';
import { type Judged, type JudgedWall, judgeWalls, type Knowledge } from '../advice/judge-walls.ts';
import { coveringSet } from './covering-set.ts';
import type { Assembly, Closest, WallFigures } from './firm-schema.ts';
import { assemblyOf, closestWall, figuresOfWall, openQuestions, packsOf } from './first-choice.ts';
import { framingText } from './framing-text.ts';
import { cellsOf, type MatrixPlan, type PlannedCell, placeText } from './matrix-plan.ts';
import type { Matrix, MatrixCell } from './matrix-schema.ts';
import { type ResolvedWall, resolveWalls } from './resolve-walls.ts';

export type MatrixOptions = {
  readonly toolVersion: string;
  /** Told after every cell. */
  readonly onProgress?: (done: number, total: number) => void;
};

/** A wall that counts as covering a cell. Written out at once: the walls of hundreds of cells can't all be kept. */
type Covering = { readonly exact_score: number } & WallFigures & { readonly open_questions: string[] };

type JudgedCell = {
  readonly planned: PlannedCell;
  readonly framing: string;
  readonly resolved: ResolvedWall;
  readonly considered: MatrixCell['considered'];
  readonly first: string | null;
  readonly covering: ReadonlyMap<string, Covering>;
  readonly closest: Closest | null;
};

/**
 * Judges every cell of a matrix as an answer of its own, without the readings of other assumptions, and finds the
 * fewest assemblies that cover it.
 *
 * An assembly is a cladding over a build of boards (material, number, thickness) with its water-resistive barrier,
 * interior retarder and window buck: what a candidate's id names. It covers a cell when no rule forbids it there and
 * it scores at most `within_score` less than the best; the synthetic finish only where nothing else passes.
 *
 * @throws Refusal naming each cell that can't be worked on
 */
export async function workOutMatrix(
  plan: MatrixPlan,
  knowledge: Knowledge,
  { toolVersion, onProgress }: MatrixOptions,
): Promise<Matrix> {
  const planned = cellsOf(plan);
  const resolved = await resolveWalls(planned, cellName, knowledge);
  const described = new Map<string, Assembly>();
  const cells: JudgedCell[] = [];
  let before: Judged | undefined;
  for (const [i, cell] of planned.entries()) {
    const own = resolved[i];
    if (!own) throw new Error(`cell ${i} was not resolved`);
    const judged: Judged = await judgeWalls(own.brief, own.site, own.knowledge, before);
    cells.push(judgedCell(cell, own, judged, plan.within_score, described));
    before = judged;
    onProgress?.(i + 1, planned.length);
  }
  return reportOf(plan, cells, described, knowledge, toolVersion);
}

function cellName({ place, framing, finish, budget_usd_per_ft2 }: PlannedCell): string {
  const budget = budget_usd_per_ft2 === null ? [] : [`$${budget_usd_per_ft2}`];
  return `cell ${[place, framing ?? [], finish ?? [], ...budget].flat().join(' / ')}`;
}

function judgedCell(
  planned: PlannedCell,
  resolved: ResolvedWall,
  judged: Judged,
  within_score: number,
  described: Map<string, Assembly>,
): JudgedCell {
  const covering = new Map<string, Covering>();
  const first = firstChoice(judged);
  for (const wall of new Set([...(first ? [first] : []), ...coveringWalls(judged, within_score)])) {
    const { id } = wall.candidate;
    covering.set(id, {
      ...figuresOfWall(wall, judged),
      exact_score: wall.score,
      open_questions: openQuestions(wall),
    });
    if (!described.has(id)) described.set(id, assemblyOf(wall.candidate, resolved.brief.windows.length > 0));
  }
  return {
    planned,
    framing: planned.framing ?? framingText(resolved.brief.framing),
    resolved,
    considered: { candidates: judged.walls.length, admitted: judged.admitted.length },
    first: first?.candidate.id ?? null,
    covering,
    closest: closestWall(judged),
  };
}

/** Best first: those that an answer could rank first, down to so much below the best. */
function coveringWalls({ admitted }: Judged, within_score: number): JudgedWall[] {
  const pool = competing(admitted);
  const best = pool[0]?.score ?? 0;
  return pool.filter(({ score }) => score >= best - within_score - 1e-9);
}

function reportOf(
  plan: MatrixPlan,
  cells: readonly JudgedCell[],
  described: ReadonlyMap<string, Assembly>,
  knowledge: Knowledge,
  tool_version: string,
): Matrix {
  const found = coveringSet(
    cells.map(({ covering }) => new Map([...covering].map(([id, { exact_score }]) => [id, exact_score]))),
  );
  const letters = lettered([
    ...found.assemblies,
    ...found.curve.flatMap(({ assemblies }) => assemblies),
    ...cells.flatMap(({ first }) => first ?? []),
  ]);
  const letterOf = (id: string) => letters.get(id) ?? '?';
  const lettersOf = (ids: readonly string[]) => ids.map(letterOf).sort(byLetter);
  const standard = new Set(found.assemblies);
  return {
    schema: 'cladwright-matrix/1',
    tool_version,
    name: plan.name,
    code_edition: cells[0]?.resolved.brief.code_edition ?? '',
    axes: {
      places: plan.places.map(placeText),
      framings: [...new Set(cells.map(({ framing }) => framing))],
      finishes: [...new Set(cells.map(({ resolved }) => resolved.brief.finish))],
      budgets_usd_per_ft2: [...new Set(cells.map(({ planned }) => planned.budget_usd_per_ft2))],
    },
    within_score: plan.within_score,
    cells: cells.map((cell, i) => ({
      place: cell.planned.place,
      climate_zone: cell.resolved.site.climate_zone,
      framing: cell.framing,
      finish: cell.resolved.brief.finish,
      budget_usd_per_ft2: cell.planned.budget_usd_per_ft2,
      considered: cell.considered,
      first_choice: placed(cell, cell.first, letterOf),
      standard: placed(cell, found.serves[i] ?? null, letterOf),
      covering: cell.covering.size,
      closest: cell.closest,
    })),
    assemblies: [...letters].flatMap(([id, letter]) => {
      const assembly = described.get(id);
      return assembly ? [{ letter, is_standard: standard.has(id), ...assembly }] : [];
    }),
    standard: {
      assemblies: lettersOf(found.assemblies),
      cells_covered: found.cells_covered,
      cells_where_nothing_passes: cells.length - found.cells_covered,
      lower_bound: found.lower_bound,
      is_proved: found.is_proved,
      curve: found.curve.map((point) => ({ ...point, assemblies: lettersOf(point.assemblies) })),
    },
    assumptions: assumptionsOf(plan, cells),
    notes: notesOf(cells),
    rules: { packs: packsOf(knowledge) },
  };
}

/** What is said of one place first, what is said of several behind it. */
function notesOf(cells: readonly JudgedCell[]): string[] {
  const places = new Map<string, Set<string>>();
  for (const { planned, resolved } of cells) {
    for (const note of resolved.site.notes) {
      places.set(note, (places.get(note) ?? new Set()).add(planned.place));
    }
  }
  return [...places].sort(([, a], [, b]) => Number(a.size > 1) - Number(b.size > 1)).map(([note]) => note);
}

function placed(cell: JudgedCell, id: string | null, letterOf: (id: string) => string) {
  const wall = id === null ? undefined : cell.covering.get(id);
  if (id === null || !wall) return null;
  const { exact_score: _, ...figures } = wall;
  return { assembly: letterOf(id), ...figures };
}

/** A, B, …, Z, AA, …: each id once, in the order given. */
function lettered(ids: readonly string[]): Map<string, string> {
  return new Map([...new Set(ids)].map((id, i) => [id, letter(i)]));
}

function letter(index: number): string {
  const last = String.fromCharCode(65 + (index % 26));
  return index < 26 ? last : `${letter(Math.floor(index / 26) - 1)}${last}`;
}

function byLetter(a: string, b: string): number {
  return a.length - b.length || (a < b ? -1 : 1);
}

/** Each assumption once, with the number of cells that it was made for. A budget of "none" was said, not assumed. */
function assumptionsOf({ budgets }: MatrixPlan, cells: readonly JudgedCell[]): Matrix['assumptions'] {
  const found = new Map<string, Matrix['assumptions'][number]>();
  for (const { resolved } of cells) {
    for (const { field, value, why } of resolved.assumptions) {
      if (budgets !== null && field === 'budget_usd_per_ft2') continue;
      const key = JSON.stringify([field, value, why]);
      const known = found.get(key);
      if (known) known.cells++;
      else found.set(key, { field, value, why, cells: 1 });
    }
  }
  return [...found.values()];
}
