import { describe, expect, it } from 'vitest';
import { runPlainConversation } from '../../src/cli/plain-conversation.ts';
import { fakeServices } from '../conversation/fake-services.ts';
import { TerminalTalk } from './terminal-talk.ts';

const TALKS: readonly (readonly [string, readonly string[]])[] = [
  ['everything left open', ['zone 6A', ...Array.from({ length: 14 }, () => "don't know")]],
  [
    'several answers in a line, a contradiction, a step back and a change',
    [
      'retrofit in Gallatin county MT, 2x6 at 24, kraft, six 3x5 triple casements about 130 lb, $30 a foot',
      'osb, 2x4',
      'take the new one',
      'back',
      'keep',
      'R-13',
      'flanged',
      'no more',
      'change budget',
      '$28 a foot',
      'the look of stucco',
      'done',
    ],
  ],
  ['numbers for choices', ['lincoln', '2', '2', '3', '1', '4', '2', '1', '2', '3', '30', '2', 'done']],
];

describe('the same answers', () => {
  it.each(TALKS)('make the same scenario in the terminal and in plain lines: %s', async (_name, lines) => {
    const plain = fakeServices();
    await runPlainConversation({
      input: (async function* () {
        yield lines.map((line) => `${line}\n`).join('');
      })(),
      output: async () => {},
      services: plain,
      draft: null,
    });

    const talk = new TerminalTalk();
    for (const line of lines) {
      await talk.sees(/» ?$/m);
      talk.keyboard.press(line);
      talk.keyboard.press('\r');
      await talk.sees(/» ?$/m);
    }
    await talk.answer('Save the decision record?', 'finish');
    expect(await talk.ended).toBe(0);

    expect(plain.asked).toHaveLength(1);
    expect(talk.services.asked).toEqual(plain.asked);
  });
});
