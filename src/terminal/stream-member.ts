/** What a stream has under a name, for a stand-in to hand on: methods look for a stream's private parts in the stream itself. */
export function memberOf(stream: object, name: PropertyKey): unknown {
  const value: unknown = Reflect.get(stream, name, stream);
  return typeof value === 'function' ? value.bind(stream) : value;
}
