/**
 * Places for numbered keys in a row, in order, at least `gap` apart and each as near as may be to what it points at.
 *
 * @param wanted  where each key would like to stand, ascending
 * @param gap     least distance between neighbours
 * @param from    first place allowed
 * @param to      last place allowed; when the keys don't fit, they run over it rather than collide
 *
 * Method: neighbours that would collide are joined into one block that stands around the mean of its wishes.
 */
export function spreadKeys(wanted: readonly number[], gap: number, from: number, to: number): number[] {
  type Block = { sum: number; count: number };
  // With i·gap taken off, "at least a gap apart" becomes "not before the one on the left".
  const start = ({ sum, count }: Block) => sum / count;
  const blocks: Block[] = [];
  wanted.forEach((place, i) => {
    let block: Block = { sum: place - i * gap, count: 1 };
    for (let left = blocks.at(-1); left && start(left) > start(block); left = blocks.at(-1)) {
      blocks.pop();
      block = { sum: left.sum + block.sum, count: left.count + block.count };
    }
    blocks.push(block);
  });
  const last = Math.max(from, to - (wanted.length - 1) * gap);
  return blocks
    .flatMap((block) => Array.from({ length: block.count }, () => start(block)))
    .map((place, i) => Math.min(last, Math.max(from, place)) + i * gap);
}
