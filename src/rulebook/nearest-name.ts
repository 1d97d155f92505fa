import { distance } from 'fastest-levenshtein';

/**
 * Names that somebody who typed `given` may have meant, best first: those that contain it, then those
 * at most a third of its letters away.
 */
export function nearestNames(given: string, names: Iterable<string>, most = 3): string[] {
  const wanted = given.toLowerCase();
  const limit = Math.max(2, Math.floor(wanted.length / 3));
  const scored: { name: string; away: number }[] = [];
  for (const name of names) {
    const contains = wanted.length >= 3 && name.toLowerCase().includes(wanted);
    const away = contains ? 0 : distance(wanted, name.toLowerCase());
    if (away <= limit) scored.push({ name, away });
  }
  scored.sort((a, b) => a.away - b.away || (a.name < b.name ? -1 : 1));
  return scored.slice(0, most).map((s) => s.name);
}

/** `Did you mean "site.exposure"?` with a leading space, or nothing when no name is near. */
export function didYouMean(given: string, names: Iterable<string>): string {
  const near = nearestNames(given, names);
  return near.length > 0 ? ` Did you mean ${near.map((n) => `"${n}"`).join(' or ')}?` : '';
}
