/**
 * A function of one or two shared objects whose results are kept: many walls share a part, and a part is worked out
 * once. Keyed by identity, so the objects must not be made anew for each wall.
 */
export function remember<A extends object, R>(work: (a: A) => R): (a: A) => R {
  const known = new Map<A, R>();
  return (a) => {
    const found = known.get(a);
    if (found !== undefined || known.has(a)) return found as R;
    const made = work(a);
    known.set(a, made);
    return made;
  };
}

export function rememberPair<A extends object, B extends object, R>(
  work: (a: A, b: B) => R,
): (a: A, b: B) => R {
  const byFirst = remember((a: A) => remember((b: B) => work(a, b)));
  return (a, b) => byFirst(a)(b);
}

/** {@link remember} for objects that are large: a result doesn't keep what it was made of. */
export function rememberWhileThere<A extends object, R>(work: (a: A) => R): (a: A) => R {
  const known = new WeakMap<A, { readonly made: R }>();
  return (a) => {
    const found = known.get(a) ?? { made: work(a) };
    known.set(a, found);
    return found.made;
  };
}

/** {@link rememberWhileThere} for two objects, both kept alive by others. */
export function rememberPairWhileThere<A extends object, B extends object, R>(
  work: (a: A, b: B) => R,
): (a: A, b: B) => R {
  const byFirst = rememberWhileThere((a: A) => rememberWhileThere((b: B) => work(a, b)));
  return (a, b) => byFirst(a)(b);
}
