import { limitText } from './limits.ts';
import type { Rulebook } from './rulebook.ts';

/** All there is to say about one named limit, as plain lines; undefined for a name that is no limit. */
export function explainLimit(rulebook: Rulebook, id: string): string | undefined {
  const limit = rulebook.limits.find(id);
  if (!limit) return undefined;
  const moved = rulebook.house.limits.find((one) => one.limit === id);
  const readers = rulebook.rules.filter(({ limits }) => limits.some((use) => use.limit === id));
  return [
    `${id}: ${limit.meaning}`,
    `${limitText(limit, limit.value)} as shipped; a house pack may make it ${limit.stricter}, never ${limit.stricter === 'lower' ? 'higher' : 'lower'}`,
    ...(moved ? [`${moved.to_text} by house pack ${moved.pack.name}: ${moved.reason}`] : []),
    '',
    'Read by',
    ...readers.map(({ rule }) => `  - ${rule.id} (${rule.verdict}): ${rule.title}`),
  ].join('\n');
}

/** The named limits that a rule reads, as lines. */
export function limitLines(rulebook: Rulebook, ids: readonly string[]): string[] {
  return [...new Set(ids)].flatMap((id) => {
    const limit = rulebook.limits.find(id);
    if (!limit) return [];
    const moved = rulebook.house.limits.find((one) => one.limit === id);
    const now = moved ? `, ${moved.to_text} by house pack ${moved.pack.name}` : '';
    return [
      `  - ${id}: ${limit.meaning}, ${limitText(limit, limit.value)} as shipped${now} (stricter is ${limit.stricter})`,
    ];
  });
}
