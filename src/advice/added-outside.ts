/**
 * What the added thickness lies outside of: the sheathing, or the studs where nothing covers them. Layers without the
 * framing don't tell.
 */
export function addedOutside(layers: readonly { readonly role: string }[]): string {
  const has = (wanted: string) => layers.some(({ role }) => role === wanted);
  return has('framing') && !has('sheathing') ? 'outside the studs' : 'outside the sheathing';
}
