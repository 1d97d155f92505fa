/** A number that differs; null on the side where there is none. */
export type FigureChange = {
  /** Where it stands: `fastening_schedule.steps[3].length_in`. */
  readonly path: string;
  readonly then: number | null;
  readonly now: number | null;
};

/** Keys whose value tells one entry of a list from another, the most telling first. */
const NAMING_KEYS = [
  'id',
  'rule',
  'step',
  'zone',
  'month',
  'window',
  'what',
  'label',
  'item',
  'after',
  'layer',
];

/** Binary noise: another processor may round the last digit otherwise. */
const SAME = 1e-9;

/**
 * Every number that differs between two parts of an answer. Entries of lists are matched by their name, where they
 * have one, so that an entry more doesn't make all that follow it look changed. A part that one side hasn't got is
 * passed over: an older record may lack what a later program tells.
 */
export function figureChanges(then: unknown, now: unknown): FigureChange[] {
  const changes: FigureChange[] = [];
  compare(then, now, '', changes);
  return changes;
}

function compare(then: unknown, now: unknown, path: string, changes: FigureChange[]): void {
  if (typeof then === 'number' || typeof now === 'number') {
    const [was, is] = [numberOrNull(then), numberOrNull(now)];
    // An older record has not got a figure that is NaN: nothing to compare.
    if (Number.isNaN(then) || Number.isNaN(now)) return;
    const isKnown = (typeof then === 'number' || then === null) && (typeof now === 'number' || now === null);
    if (isKnown && !isSame(was, is)) changes.push({ path, then: was, now: is });
    return;
  }
  if (Array.isArray(then) && Array.isArray(now)) {
    const [before, after] = [named(then), named(now)];
    for (const [name, value] of before) compare(value, after.get(name), `${path}[${name}]`, changes);
    return;
  }
  if (!isObject(then) || !isObject(now)) return;
  for (const key of Object.keys(then)) {
    if (Object.hasOwn(now, key)) compare(then[key], now[key], path === '' ? key : `${path}.${key}`, changes);
  }
}

function numberOrNull(value: unknown): number | null {
  return typeof value === 'number' ? value : null;
}

function isSame(a: number | null, b: number | null): boolean {
  if (a === null || b === null) return a === b;
  return a === b || Math.abs(a - b) <= SAME * Math.max(Math.abs(a), Math.abs(b));
}

function named(list: readonly unknown[]): Map<string, unknown> {
  const seen = new Map<string, number>();
  return new Map(
    list.map((item, i) => {
      const name = nameOf(item) ?? `${i}`;
      const times = (seen.get(name) ?? 0) + 1;
      seen.set(name, times);
      return [times === 1 ? name : `${name} #${times}`, item];
    }),
  );
}

function nameOf(item: unknown): string | null {
  if (!isObject(item)) return null;
  const key = NAMING_KEYS.find((one) => ['string', 'number'].includes(typeof item[one]));
  return key === undefined ? null : String(item[key]);
}

function isObject(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
