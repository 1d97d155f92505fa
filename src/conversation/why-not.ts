import type { Advice } from '../advice/advice-schema.ts';
import type { Block } from './blocks.ts';
import { note, titledList, warning } from './notes.ts';

/** What is against a wall, an insulation or a cladding that somebody asks about. */
export type WhyNotTold = {
  /** In the user's words. */
  readonly asked: string;
  /** What was found under these words; null when nothing was. */
  readonly title: string | null;
  /** In sentences, the weightiest first. */
  readonly because: readonly string[];
  /** What would have to change for it to come first, or to be allowed. */
  readonly remedies: readonly string[];
  /** Where nothing was found: names that are near. */
  readonly near: readonly string[];
};

export function whyNotBlocks({ asked, title, because, remedies, near }: WhyNotTold): Block[] {
  if (title === null) {
    const meant = near.length > 0 ? ` Did you mean ${near.map((name) => `"${name}"`).join(' or ')}?` : '';
    return [
      warning(`I find nothing called "${asked}" among the walls.${meant}`),
      note('Name a cladding, an insulation or a thickness, such as "why not mineral wool".'),
    ];
  }
  return [
    { kind: 'heading', text: `Why not ${title}` },
    ...(because.length > 0
      ? [{ kind: 'list' as const, items: because }]
      : [note('Nothing is against it: it is in the running, below the ones that are shown.')]),
    ...titledList('What would admit it or put it first', remedies),
  ];
}

/** What the answer itself says against something: ranked, left out, or neither. */
export function whyNotFromAdvice(asked: string, advice: Advice): WhyNotTold {
  const words = asked
    .toLowerCase()
    .split(/[^a-z0-9]+/)
    .filter((word) => word.length > 2);
  const isMeant = (title: string) =>
    words.length > 0 && words.every((word) => title.toLowerCase().includes(word));
  const out = advice.excluded.find(({ title }) => isMeant(title));
  if (out) {
    return {
      asked,
      title: out.title,
      because: out.because.map(({ text, citation, rule }) => `${text} [${citation}; rule ${rule}]`),
      remedies: out.because.map(({ remedy }) => remedy).filter((remedy) => remedy !== ''),
      near: [],
    };
  }
  const ranked = advice.ranked.find(({ title, cladding, insulation }) =>
    [title, cladding, insulation.material].some(isMeant),
  );
  if (ranked) {
    return {
      asked,
      title: ranked.title,
      because: ranked.rank === 1 ? [] : [`It is wall ${ranked.rank} of the answer.`, ...ranked.gives_up],
      remedies: [],
      near: [],
    };
  }
  const titles = [...advice.excluded, ...advice.ranked].map(({ title }) => title);
  return {
    asked,
    title: null,
    because: [],
    remedies: [],
    near: titles.filter((title) => words.some((word) => title.toLowerCase().includes(word))).slice(0, 3),
  };
}
