import { firstChoice } from '../advice/choose-alternatives.ts';
import { type JudgedWall, judgeWalls, type Knowledge } from '../advice/judge-walls.ts';
import type { CODE_EDITIONS, Scenario } from '../brief/scenario.ts';
import type { Changes, Decision, Outcome, ProjectChange } from './changes-schema.ts';
import { DECIDES_OTHERWISE } from './changes-schema.ts';
import { assemblyOf, closestWall, figuresOfWall, packsOf, type Ruled } from './first-choice.ts';
import { type ResolvedWall, resolveWalls } from './resolve-walls.ts';
import { whyItChanged } from './why-changed.ts';

export type RuleSet = {
  /** Null: each project's own. */
  readonly edition: (typeof CODE_EDITIONS)[number] | null;
  readonly knowledge: Knowledge;
};

export type Project = { readonly file: string; readonly scenario: Scenario };

export type ChangesOptions = {
  readonly toolVersion: string;
  readonly onProgress?: (done: number, total: number) => void;
};

/**
 * Judges every project by two rule sets and says which first choices and figures differ, and why.
 *
 * @throws Refusal naming each file that can't be worked on under one of the rule sets
 */
export async function workOutChanges(
  projects: readonly Project[],
  from: RuleSet,
  to: RuleSet,
  { toolVersion, onProgress }: ChangesOptions,
): Promise<Changes> {
  const [befores, afters] = [await resolved(projects, from), await resolved(projects, to)];
  const changed: ProjectChange[] = [];
  for (const [i, project] of projects.entries()) {
    const before = await ruled(befores[i]);
    onProgress?.(2 * i + 1, 2 * projects.length);
    const after = await ruled(afters[i]);
    onProgress?.(2 * i + 2, 2 * projects.length);
    changed.push(changeOf(project, before, after));
  }
  return {
    schema: 'cladwright-changes/1',
    tool_version: toolVersion,
    from: ruleSetOf(from),
    to: ruleSetOf(to),
    decisions_changed: changed.filter(({ outcome }) => DECIDES_OTHERWISE.has(outcome)).length,
    projects: changed,
  };
}

function resolved(projects: readonly Project[], { edition, knowledge }: RuleSet): Promise<ResolvedWall[]> {
  const items = projects.map(({ file, scenario }) => ({
    file,
    scenario: edition === null ? scenario : { ...scenario, code_edition: edition },
  }));
  return resolveWalls(items, ({ file }) => file, knowledge);
}

async function ruled(wall: ResolvedWall | undefined): Promise<Ruled> {
  if (!wall) throw new Error('a project was not resolved');
  const judged = await judgeWalls(wall.brief, wall.site, wall.knowledge);
  return { judged, choice: firstChoice(judged) };
}

function ruleSetOf({ edition, knowledge }: RuleSet): Changes['from'] {
  const packs = packsOf(knowledge);
  const own = packs.filter(({ house }) => house).map(({ name, version }) => `${name} ${version}`);
  return {
    edition,
    label: `${edition === null ? 'each project’s own edition' : `${edition} edition`}, ${own.length > 0 ? `house rules ${own.join(' and ')}` : 'no house rules'}`,
    packs,
  };
}

function changeOf({ file, scenario }: Project, before: Ruled, after: Ruled): ProjectChange {
  const decisions = { before: decisionOf(before), after: decisionOf(after) };
  const figures = changedFigures(decisions.before.choice, decisions.after.choice);
  return {
    file,
    name: scenario.name?.trim() || before.judged.context.brief.name,
    outcome: outcomeOf(before.choice, after.choice, figures.length > 0),
    ...decisions,
    parts_changed: changedParts(before.choice, after.choice, hasWindows(before.judged)),
    figures,
    why: whyItChanged(before, after),
  };
}

function decisionOf({ judged, choice }: Ruled): Decision {
  return {
    climate_zone: judged.context.site.climate_zone,
    admitted: judged.admitted.length,
    choice: choice
      ? { ...assemblyOf(choice.candidate, hasWindows(judged)), ...figuresOfWall(choice, judged) }
      : null,
    closest: closestWall(judged),
  };
}

function outcomeOf(before: JudgedWall | null, after: JudgedWall | null, hasFigures: boolean): Outcome {
  if (!before) return after ? 'passes-now' : 'nothing-passes';
  if (!after) return 'nothing-passes-now';
  if (before.candidate.id !== after.candidate.id) return 'other-wall';
  return hasFigures ? 'figures' : 'same';
}

function hasWindows({ context }: Ruled['judged']): boolean {
  return context.brief.windows.length > 0;
}

function changedParts(before: JudgedWall | null, after: JudgedWall | null, countsBuck: boolean): string[] {
  if (!before || !after) return [];
  const [a, b] = [before.candidate, after.candidate];
  const boards = ({ boards_in }: typeof a.build) => boards_in.join('+');
  const parts: [string, boolean][] = [
    ['cladding', a.cladding.id !== b.cladding.id],
    ['insulation', a.build.insulation.id !== b.build.insulation.id],
    ['thickness', boards(a.build) !== boards(b.build)],
    ['interior retarder', a.inside.retarder?.id !== b.inside.retarder?.id],
    ['water-resistive barrier', a.barrier.id !== b.barrier.id],
    ['window buck', countsBuck && a.buck.id !== b.buck.id],
  ];
  return parts.flatMap(([name, isOther]) => (isOther ? [name] : []));
}

function changedFigures(before: Decision['choice'], after: Decision['choice']): ProjectChange['figures'] {
  if (!before || !after) return [];
  const pairs: [string, number | null, number | null][] = [
    ['u_factor', before.u_factor, after.u_factor],
    ['max_u_factor', before.max_u_factor, after.max_u_factor],
    ['u_margin_percent', before.u_margin_percent, after.u_margin_percent],
    ['cost_usd_per_ft2', before.cost_usd_per_ft2.likely, after.cost_usd_per_ft2.likely],
    ['added_thickness_in', before.added_thickness_in, after.added_thickness_in],
    ['weight_psf', before.weight_psf, after.weight_psf],
    ['score', before.score, after.score],
  ];
  return pairs.flatMap(([figure, a, b]) => (a === b ? [] : [{ figure, before: a, after: b }]));
}
