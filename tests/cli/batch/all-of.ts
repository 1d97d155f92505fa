/** Everything that a source yields. */
export async function allOf<T>(source: AsyncIterable<T>): Promise<T[]> {
  const all: T[] = [];
  for await (const one of source) all.push(one);
  return all;
}
