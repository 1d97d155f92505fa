import type { ProjectChange, Reason } from './changes-schema.ts';
import { sharedWords } from './shared-words.ts';

/** What stays at its project however many have it: it takes no more room than pointing to it. */
const SHORT = 60;

/** What decides stands first. */
const KIND_ORDER: readonly Reason['kind'][] = [
  'rules-it-out',
  'no-longer-ruled-out',
  'score',
  'limit',
  'price',
  'verdict',
];

/** A reason that several projects have, told once for all of them. */
export type SharedReason = {
  readonly number: number;
  /** As the first of the projects has it. */
  readonly reason: Reason;
  /** With "[a]" where it differs from project to project. */
  readonly text: string;
  /** Which it is where: by mark, each value with its projects. */
  readonly slots: readonly { readonly mark: string; readonly values: readonly SlotValue[] }[];
  /** Numbers of the projects. */
  readonly projects: readonly number[];
};

type SlotValue = { readonly value: string; readonly projects: readonly number[] };

/** A project with its number in the report. */
export type NumberedProject = { readonly number: number; readonly project: ProjectChange };

/** A reason as a project has it. */
type Held = { readonly number: number; readonly reason: Reason; readonly text: string };

/**
 * The reasons that several projects have and that are too long to be told with each.
 *
 * @param textOf  a reason in one line
 */
export function sharedReasons(
  projects: readonly NumberedProject[],
  textOf: (reason: Reason) => string,
): { readonly shared: readonly SharedReason[]; readonly numberOf: ReadonlyMap<Reason, number> } {
  const held = projects.flatMap(({ number, project }) =>
    project.why.map((reason) => ({ number, reason, text: textOf(reason) })),
  );
  const shared: SharedReason[] = [];
  const numberOf = new Map<Reason, number>();
  const inOrder = KIND_ORDER.flatMap((kind) => held.filter(({ reason }) => reason.kind === kind));
  for (const group of grouped(inOrder, sameReason).flatMap(toldAsOne)) {
    const number = shared.length + 1;
    shared.push({ number, ...group.told });
    for (const { reason } of group.held) numberOf.set(reason, number);
  }
  return { shared, numberOf };
}

/** A rule's reason is the same whatever its figures; one without a rule is known by what it is about. */
function sameReason({ reason: { kind, rule, citation, text } }: Held): string {
  return JSON.stringify([kind, rule ?? text, citation]);
}

function toldAsOne(held: readonly Held[]): { held: readonly Held[]; told: Omit<SharedReason, 'number'> }[] {
  const [first] = held;
  if (!first || held.length < 2 || held.every(({ text }) => text.length <= SHORT)) return [];
  const variants = grouped(held, ({ text }) => text);
  const projects = held.map(({ number }) => number);
  if (variants.length === 1) {
    return [{ held, told: { reason: first.reason, text: first.text, slots: [], projects } }];
  }
  const words = sharedWords(variants.map(([one]) => one?.text ?? ''));
  // Different sentences of one rule: each by itself.
  if (words === null) return variants.flatMap(toldAsOne);
  const slots = words.slots.map(({ mark, values }) => ({ mark, values: slotValues(values, variants) }));
  return [{ held, told: { reason: first.reason, text: words.text, slots, projects } }];
}

function slotValues(values: readonly string[], variants: readonly (readonly Held[])[]): SlotValue[] {
  const pairs = variants.flatMap((variant, i) =>
    variant.map(({ number }) => ({ value: values[i] ?? '', number })),
  );
  return grouped(pairs, ({ value }) => value).map((same) => ({
    value: same[0]?.value ?? '',
    projects: same.map(({ number }) => number).sort((a, b) => a - b),
  }));
}

function grouped<T>(items: readonly T[], keyOf: (item: T) => string): T[][] {
  const groups = new Map<string, T[]>();
  for (const item of items) {
    const group = groups.get(keyOf(item));
    if (group) group.push(item);
    else groups.set(keyOf(item), [item]);
  }
  return [...groups.values()];
}
