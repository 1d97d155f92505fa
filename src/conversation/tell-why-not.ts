import { criterionWords } from '../advice/criterion-words.ts';
import type { WhyNot } from '../advice/why-not-schema.ts';
import { capital, lower } from '../base/first-letter.ts';
import type { Block } from './blocks.ts';
import type { Reader } from './reader.ts';
import { shortCitation } from './tell-advice.ts';

type Reason = WhyNot['because'][number];

/**
 * Why a wall that somebody named is not the first choice, as plain structured text. A homeowner hears the same without
 * scores, rules and citations.
 */
export function whyNotBlocks(told: WhyNot, reader: Reader = 'professional'): Block[] {
  return [
    { kind: 'title', text: 'Why not that wall', aside: told.name },
    { kind: 'paragraph', text: `Understood: ${told.understood}.` },
    ...told.notes.map((text): Block => ({ kind: 'paragraph', text, role: 'note' })),
    ...verdictBlocks(told, reader),
  ];
}

function verdictBlocks(told: WhyNot, reader: Reader): Block[] {
  switch (told.verdict) {
    case 'first-choice':
      return [{ kind: 'paragraph', text: `It is the first choice: ${told.wall?.title ?? told.understood}.` }];
    case 'admitted':
      return reader === 'homeowner' ? admittedInPlainWords(told) : admitted(told);
    case 'excluded':
    case 'not-made':
      return [...excluded(told, reader), ...changes(told, reader)];
  }
}

function reasonLine({ text, rule, citation }: Reason): string {
  if (rule === undefined || citation === undefined) return text;
  return `${text} [${shortCitation(citation)}; rule ${rule}]`;
}

const reasonLines = (because: readonly Reason[], reader: Reader) =>
  because.map((reason) => (reader === 'homeowner' ? reason.text : reasonLine(reason)));

function admittedInPlainWords({ wall, beaten_by: first, would_win, others_excluded }: WhyNot): Block[] {
  if (!wall || !first) return [];
  const better = first.parts.filter(({ adds }) => adds < 0);
  const worse = first.parts.filter(({ adds }) => adds > 0);
  const named = (parts: typeof first.parts) => parts.map(({ criterion }) => criterionWords(criterion));
  return [
    {
      kind: 'paragraph',
      text: `Nothing forbids it: ${lower(wall.title)} would do. I put ${lower(first.title)} before it, all in all.`,
    },
    ...aspects(
      first.in_everything ? 'It is behind in everything that counts' : 'Where it is behind',
      named(worse),
    ),
    ...aspects('Where it is better', named(better)),
    ...aspects('What would make it the first choice', would_win),
    ...doNotPass(others_excluded, 'homeowner'),
  ];
}

/** The others that the name fits, those with the same reasons together. */
function doNotPass(others: WhyNot['others_excluded'], reader: Reader): Block[] {
  const byReasons = new Map<string, string[]>();
  for (const { title, because } of others) {
    const reasons = reasonLines(because, reader).join(' ');
    byReasons.set(reasons, [...(byReasons.get(reasons) ?? []), lower(title)]);
  }
  return aspects(
    'What does not pass',
    [...byReasons].map(([reasons, titles]) => `${capital(titles.join('; '))}: ${reasons}`),
  );
}

function aspects(title: string, items: readonly string[]): Block[] {
  if (items.length === 0) return [];
  return [
    { kind: 'heading', text: title },
    { kind: 'list', items },
  ];
}

function admitted({ wall, beaten_by: first, would_win, considered, others_excluded }: WhyNot): Block[] {
  if (!wall || !first) return [];
  const lead = first.in_everything
    ? 'The first choice is at least as good in everything.'
    : 'Where that comes from, weights counted:';
  return [
    {
      kind: 'paragraph',
      text: `It passes: ${considered.admitted} of ${considered.candidates} ways to build it break no rule. The best of them, ${lower(wall.title)}, scores ${wall.score.toFixed(3)}; the first choice, ${lower(first.title)}, scores ${first.score.toFixed(3)}.`,
    },
    { kind: 'heading', text: lead },
    {
      kind: 'list',
      items: first.parts.map(({ criterion, here, there, adds }) => {
        const side = adds > 0 ? `costs it ${adds.toFixed(3)}` : `wins it ${(-adds).toFixed(3)}`;
        return `${criterionWords(criterion)}: ${here.toFixed(2)} against ${there.toFixed(2)}, which ${side}`;
      }),
    },
    { kind: 'heading', text: 'What would make it the first choice' },
    {
      kind: 'list',
      items:
        would_win.length > 0
          ? would_win
          : ['No single weight, from nothing to ten times what it is now, makes it the first choice.'],
    },
    ...doNotPass(others_excluded, 'professional'),
  ];
}

function excluded({ verdict, wall, because, considered }: WhyNot, reader: Reader): Block[] {
  const lead =
    verdict === 'not-made'
      ? 'Nothing like it is put together here:'
      : considered.candidates === 1
        ? `It breaks these rules: ${wall?.title ?? ''}`
        : `None of the ${considered.candidates} ways to build it passes. The closest, ${lower(wall?.title ?? '')}, breaks these rules:`;
  return [
    { kind: 'paragraph', text: lead },
    { kind: 'list', items: reasonLines(because, reader) },
  ];
}

function changes({ smallest_changes: found, tried }: WhyNot, reader: Reader): Block[] {
  const heading: Block = { kind: 'heading', text: 'The smallest change that would admit it' };
  if (found.length === 0)
    return [
      heading,
      { kind: 'paragraph', text: 'None of the changes that were judged admits it.' },
      { kind: 'paragraph', text: tried, role: 'note' },
    ];
  const [first, ...others] = found.map(
    ({ sentence, then }) =>
      `${sentence} Then: ${lower(then.title)}${reader === 'homeowner' ? '' : `, score ${then.score.toFixed(3)}`}.`,
  );
  return [
    heading,
    { kind: 'paragraph', text: first ?? '' },
    ...(others.length > 0
      ? [
          { kind: 'heading' as const, text: 'Or' },
          { kind: 'list' as const, items: others },
        ]
      : []),
    { kind: 'paragraph', text: tried, role: 'note' },
  ];
}
