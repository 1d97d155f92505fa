import type { ScenarioWindow } from '../brief/scenario.ts';

/** Aspects of a kind of window in the order they are asked for. */
export const WINDOW_ASPECTS = [
  'count',
  'width_in',
  'height_in',
  'operation',
  'glazing',
  'mounting',
  'weight_lb',
] as const;
export type WindowAspect = (typeof WINDOW_ASPECTS)[number];

/** What of a kind of window was not said yet; "unknown" counts as said. */
export function missingAspects(window: ScenarioWindow): WindowAspect[] {
  return WINDOW_ASPECTS.filter((aspect) => window[aspect] === undefined);
}

export function isWindowComplete(window: ScenarioWindow): boolean {
  return missingAspects(window).length === 0;
}

/** What a line said about windows: kinds that begin with a number, size or sort, and loose aspects for a kind already named. */
export type WindowReading = {
  readonly window: ScenarioWindow;
  /** Said of every kind: "all flanged". */
  readonly isForAll: boolean;
};

export type WindowMerge = {
  readonly windows: readonly ScenarioWindow[];
  /** Aspects that were said already and now said otherwise; the earlier ones stay. */
  readonly clashes: readonly { readonly aspect: WindowAspect; readonly index: number }[];
};

/**
 * Adds what was said to the kinds of window known so far: a reading with a size or a number of its own starts a new
 * kind once the current one has that; anything else completes the first kind that misses it ("all …": every kind).
 */
export function mergeWindows(
  known: readonly ScenarioWindow[],
  readings: readonly WindowReading[],
): WindowMerge {
  const windows: ScenarioWindow[] = [...known];
  const clashes: { aspect: WindowAspect; index: number }[] = [];
  for (const { window, isForAll } of readings) {
    const said = WINDOW_ASPECTS.filter((aspect) => window[aspect] !== undefined);
    const last = windows.at(-1);
    if (said.length === 0 && last) {
      // The opening alone: of the kind named last.
      windows[windows.length - 1] = { ...last, ...window };
      continue;
    }
    if (isForAll && windows.length > 0) {
      windows.forEach((other, i) => {
        windows[i] = { ...window, ...defined(other) };
      });
      continue;
    }
    const index = windows.findIndex((other) => !isWindowComplete(other));
    const current = windows[index];
    if (!current || startsNewKind(current, window)) {
      windows.push(window);
      continue;
    }
    for (const aspect of said) {
      if (current[aspect] !== undefined && current[aspect] !== window[aspect])
        clashes.push({ aspect, index });
    }
    windows[index] = { ...window, ...defined(current) };
  }
  return { windows, clashes };
}

function startsNewKind(current: ScenarioWindow, next: ScenarioWindow): boolean {
  const hasSize = next.width_in !== undefined;
  return (
    (hasSize && current.width_in !== undefined) || (next.count !== undefined && current.count !== undefined)
  );
}

function defined(window: ScenarioWindow): ScenarioWindow {
  return Object.fromEntries(Object.entries(window).filter(([, value]) => value !== undefined));
}

/** The kind with every aspect that was not said marked as not known. */
export function withUnknownAspects(
  window: ScenarioWindow,
  aspects: readonly WindowAspect[] = missingAspects(window),
): ScenarioWindow {
  const unknowns = Object.fromEntries(aspects.map((aspect) => [aspect, 'unknown' as const]));
  return { ...window, ...unknowns };
}
