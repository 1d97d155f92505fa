/** "a", "a and b", "a, b and c"; nothing for no items. */
export function listed(items: readonly string[], word: 'and' | 'or' = 'and'): string {
  const last = items.at(-1) ?? '';
  return items.length > 1 ? `${items.slice(0, -1).join(', ')} ${word} ${last}` : last;
}
