/**
 * Answers items side by side and hands the answers on in the order of the items. No more than `most` items are under
 * way or waiting to be handed on; as long as nobody takes answers, no item is read. An answer is handed on as soon as
 * those before it are, even while the next item is still awaited.
 *
 * @param answer  may reject: the rejection is thrown in its item's turn
 * @param most    1 or more
 */
export async function* inOrder<I, O>(
  items: AsyncIterable<I>,
  answer: (item: I) => Promise<O>,
  most: number,
): AsyncGenerator<readonly [item: I, answer: O], void, void> {
  const source = items[Symbol.asyncIterator]();
  const waiting: Promise<readonly [I, O]>[] = [];
  let reading: Promise<IteratorResult<I>> | null = source.next();
  try {
    for (;;) {
      const [head] = waiting;
      if (head && (reading === null || waiting.length >= most || (await comesFirst(head, reading)))) {
        waiting.shift();
        yield await head;
        continue;
      }
      if (reading === null) return;
      const next: IteratorResult<I> = await reading;
      if (next.done) {
        reading = null;
        continue;
      }
      const item = next.value;
      const answered = answer(item).then((one) => [item, one] as const);
      // Its turn may never come; a rejection is thrown in its turn or not at all.
      answered.catch(() => {});
      waiting.push(answered);
      reading = source.next();
    }
  } finally {
    // Not awaited: a source that waits for input would keep the caller waiting too.
    reading?.catch(() => {});
    source.return?.().catch(() => {});
  }
}

/** Whether the answer at the head is there before the next item; both at once count as the item. */
function comesFirst(head: Promise<unknown>, reading: Promise<unknown>): Promise<boolean> {
  return Promise.race([
    reading.then(
      () => false,
      () => false,
    ),
    head.then(
      () => true,
      () => true,
    ),
  ]);
}
