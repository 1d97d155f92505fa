import { describe, expect, it } from 'vitest';
import type { Advice } from '../../src/advice/advice-schema.ts';
import type { Scenario } from '../../src/brief/scenario.ts';
import { SAMPLE_OPENINGS } from '../advice/sample-openings.ts';
import { fakeServices } from '../conversation/fake-services.ts';
import { memoryStore } from '../conversation/memory-store.ts';
import { sampleAdvice } from '../conversation/sample-advice.ts';
import { until } from './screen.ts';
import { TerminalTalk } from './terminal-talk.ts';

const LAYERS = [
  { label: 'gypsum board', thickness_in: 0.5, r: 0.45, role: 'lining', provenance: 'verified' },
  { label: 'R-21 between studs', thickness_in: 5.5, r: 21, role: 'framing', provenance: 'given' },
  { label: 'OSB', thickness_in: 0.5, r: 0.62, role: 'sheathing', provenance: 'verified' },
  { label: 'mineral wool', thickness_in: 3, r: 12.6, role: 'insulation', provenance: 'memory' },
  { label: 'stucco', thickness_in: 0.75, r: 0, role: 'finish', provenance: 'computed' },
];

function advice(scenario: Scenario): Advice {
  const sample = sampleAdvice(scenario);
  const ranked = sample.ranked.map((wall) => ({
    ...wall,
    layers: LAYERS,
    openings: SAMPLE_OPENINGS,
    scores: { energy: 0.9, cost: 0.4 },
  }));
  return { ...sample, ranked };
}

/** A line, and what the screen must show of it, whatever its size. */
type View = {
  readonly view: string;
  readonly say: string;
  readonly shows: readonly RegExp[];
};

const VIEWS: readonly View[] = [
  { view: 'help', say: 'help', shows: [/While I ask/, /compare 1 and 2/, /Keeping and leaving/] },
  {
    view: 'a question with chips',
    say: 'zone 5B',
    shows: [/Noted \[Place: climate zone 5B\]/, /Is this a new wall/],
  },
  {
    view: 'several answers',
    say: 'retrofit, 2x6 at 16, kraft',
    shows: [/\[Stud depth: 5\.5 in\. \(2x6\)\]/, /"not right"/, /What covers the outside/],
  },
  {
    view: 'a contradiction',
    say: '2x4',
    shows: [/before you said 5\.5 in\. \(2x6\)/, /now 3\.5 in\./, /Which holds\?/],
  },
  { view: 'the choice made', say: 'keep', shows: [/Kept as you said before\./] },
  {
    view: 'what is not understood',
    say: 'plywod',
    shows: [/Not understood: "plywod"\./, /Did you mean "plywood"\?/],
  },
  {
    view: 'a trial',
    say: 'what if the budget were 24 a foot',
    shows: [/Tried \[Budget: not said -> \$24/, /Nothing is changed yet/, /Keep this change/],
  },
  { view: 'a trial left', say: 'leave it', shows: [/Left as it was\./] },
  { view: 'a word explained', say: 'what is a buck', shows: [/Buck: A frame of lumber/] },
  {
    view: 'the glossary',
    say: 'glossary',
    shows: [/Words I can explain/, /weep screed|water-resistive barrier/],
  },
  { view: 'answers so far', say: 'show', shows: [/Your answers so far/, /Stud spacing\s+16 in\./] },
  { view: 'the impression', say: 'impression', shows: [/So far: Three-coat stucco/, /walls\s+still in/] },
  { view: 'kept talks', say: 'projects', shows: [/No other talk is kept|Kept talks/] },
  { view: 'the answer', say: 'done', shows: [/First choice/, /In short/, /Save the decision record\?/] },
  {
    view: 'the section',
    say: 'drawing',
    shows: [/\|\.+\|[/\\]+\|#+\|[x ]+\|[x ]+\|%+\|/, /added 4-5\/8 in\./, /a\s+gypsum board/],
  },
  {
    view: 'temperatures',
    say: 'temperatures',
    shows: [/Through the wall in/, /outer face of\s+temp\s+dew/, /T temperature/],
  },
  { view: 'condensate', say: 'condensate', shows: [/g\/m2\s+gained\s+held/] },
  { view: 'scores', say: 'scores', shows: [/holding heat\s+0\.90\s+#+/, /low cost\s+0\.40\s+#+\.+/] },
  { view: 'the buck', say: 'show the buck', shows: [/\[W+\]/, /<-+=+/, /outer edge/] },
  { view: 'the numbers', say: 'numbers', shows: [/Figures: Three-coat/, /Rules that spoke/] },
  {
    view: 'two beside each other',
    say: 'compare',
    shows: [/Wall 1 beside wall 2/, /\$29 +\| {2}\$29/],
  },
  { view: 'why not', say: 'why not adhered veneer', shows: [/Twice the load its screws can carry\./] },
  { view: 'the other reader', say: 'plain words', shows: [/Plain words and cautions come first/] },
  {
    view: 'plain words',
    say: 'show the answer',
    shows: [/Before anything else/, /What I would build/, /Words of the trade in it/],
  },
  {
    view: 'the whole answer',
    say: 'whole answer',
    shows: [/Words used above/, /For whoever builds it/, /Windows, in this order/],
  },
  {
    view: 'every caution',
    say: 'cautions',
    shows: [/Cautions .*of the first choice/, /Caution \(what holds it up\): Have the fastening checked\./],
  },
  {
    view: 'how firm it is',
    say: 'how firm is that?',
    shows: [/What would change the answer/, /If the budget falls below \$20: panels come first/],
  },
  { view: 'what to find out', say: 'find out first', shows: [/Nothing that I assumed would change/] },
];

const SIZES = [
  [80, 24],
  [120, 40],
  [60, 24],
] as const;

/** Wrapped lines are one text to a reader. */
const flowing = (text: string) => text.replace(/\s*\n\s*/g, ' ');

async function talkThrough(columns: number, rows: number, colour: 'none' | 'basic', ascii: boolean) {
  const services = fakeServices({ advise: async (scenario) => advice(scenario) });
  const talk = new TerminalTalk({ columns, rows, colour, ascii, services, draftStore: memoryStore() });
  await talk.sees(/Where does the wall stand\?/);
  for (const { view, say, shows } of VIEWS) {
    const before = (await talk.screen.everything()).length;
    talk.keyboard.press(say);
    await talk.sees(new RegExp(`${ascii ? '>>' : '»'} ${say.slice(0, 20)}`));
    talk.keyboard.press('\r');
    // Whatever has come of it stands above the next prompt.
    await until(`${view} is shown`, async () => {
      const news = (await talk.screen.everything()).slice(Math.max(0, before - rows)).join('\n');
      return shows.every((words) => words.test(news) || words.test(flowing(news)));
    });
    await talk.sees(ascii ? />> ?$/m : /» ?$/m);
  }
  talk.keyboard.press('\u0003');
  expect(await talk.ended).toBe(130);
  return { talk, all: (await talk.screen.everything()).join('\n') };
}

describe.each(SIZES)('every view at %d by %d', { timeout: 120_000 }, (columns, rows) => {
  it('is whole, the same in colour and without, and clears nothing', async () => {
    const bare = await talkThrough(columns, rows, 'none', false);
    // Codes for colour, bold and dim are all there is none of.
    expect(bare.talk.screen.written).not.toMatch(/\u001b\[[0-9;]*m/);
    expect(bare.talk.screen.written).not.toMatch(/\u001b\[[23]J|\u001bc|\u001b\[\?1049h/);

    const coloured = await talkThrough(columns, rows, 'basic', false);
    expect(coloured.all).toBe(bare.all);
    expect(coloured.talk.screen.written).toMatch(/\u001b\[3[0-9]m/);
  });

  it('is whole in plain ASCII', async () => {
    const { all } = await talkThrough(columns, rows, 'none', true);
    expect(all).toMatch(/^[\n -~]*$/);
  });
});
