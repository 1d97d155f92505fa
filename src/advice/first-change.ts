/** Where along a scale somebody else wins. */
export type Change<Winner> = { readonly at: number; readonly winner: Winner };

/**
 * The first value on the way at which the winner is no longer the same, to within `step`: looks at each stop, then halves
 * the stretch in which it changes. A change that is undone before the next stop is not seen.
 *
 * @param stops   values in the order of going, the first one where all is as it is now
 * @returns the first value found at which another wins; null when none does at any stop
 */
export async function firstChange<Winner>(
  stops: readonly number[],
  winnerAt: (value: number) => Promise<Winner>,
  isSame: (winner: Winner) => boolean,
  step: number,
): Promise<Change<Winner> | null> {
  let [before = 0] = stops;
  for (const stop of stops.slice(1)) {
    const winner = await winnerAt(stop);
    if (isSame(winner)) {
      before = stop;
      continue;
    }
    let change: Change<Winner> = { at: stop, winner };
    while (Math.abs(change.at - before) > step) {
      const middle = (before + change.at) / 2;
      const found = await winnerAt(middle);
      if (isSame(found)) before = middle;
      else change = { at: middle, winner: found };
    }
    return change;
  }
  return null;
}
