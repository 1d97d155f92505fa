/** Middle of the measured values; of two middles the upper. */
export function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[sorted.length >> 1] ?? Number.NaN;
}

/** Runs something some times and gives each time in ms. */
export async function timed(times: number, run: (i: number) => unknown): Promise<number[]> {
  const all: number[] = [];
  for (let i = 0; i < times; i++) {
    const start = performance.now();
    await run(i);
    all.push(performance.now() - start);
  }
  return all;
}

export const ms = (value: number) => `${value < 10 ? value.toFixed(1) : value.toFixed(0)} ms`;
export const times = (value: number) => `${value < 10 ? value.toFixed(1) : value.toFixed(0)}x`;
export const count = (value: number) => Math.round(value).toLocaleString('en-US');

/** One line of the report, with the aim where there is one. */
export function line(
  what: string,
  value: string,
  aim?: { readonly words: string; readonly isMet: boolean },
): void {
  const verdict = aim ? `   aim: ${aim.words}, ${aim.isMet ? 'met' : 'NOT met'}` : '';
  console.log(`  ${what.padEnd(58)} ${value.padStart(14)}${verdict}`);
}

export function heading(title: string, how: string): void {
  console.log(`\n${title}\n  (${how})`);
}
