import './no-build-machine.ts';
import { EventEmitter } from 'node:events';
import { cleanup, render } from 'ink-testing-library';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { type Session, startSession } from '../../src/conversation/session.ts';
import { ConversationView } from '../../src/terminal/conversation-view.tsx';
import { fakeServices } from '../conversation/fake-services.ts';
import { until } from './screen.ts';

afterEach(cleanup);

/** The view on a window of 100 columns; input in the same tick as the first drawing would be lost, so one is waited. */
async function show(session: Session, rows = 30) {
  const onInterrupt = vi.fn();
  const stdout = Object.assign(new EventEmitter(), { columns: 100, rows });
  await session.begin();
  const shown = render(
    <ConversationView
      session={session}
      stdout={stdout}
      ascii={false}
      isClosing={false}
      onInterrupt={onInterrupt}
      onSuspend={() => {}}
      onFault={(error) => {
        throw error;
      }}
    />,
  );
  await new Promise((resolve) => setTimeout(resolve, 20));
  const frame = () => shown.lastFrame() ?? '';
  const sees = (words: string) => until(`it shows ${words}`, () => frame().includes(words));
  return { ...shown, frame, sees, stdout, onInterrupt };
}

describe('the conversation on the screen', () => {
  it('shows the question being asked with its reason and example', async () => {
    const { frame } = await show(startSession({ services: fakeServices(), draftStore: null }));
    expect(frame()).toContain('Where does the wall stand?');
    expect(frame()).toContain('Why: the county decides');
    expect(frame()).toContain('For example: Boulder County, Colorado');
  });

  it('writes what was said above the next question', async () => {
    const session = startSession({ services: fakeServices(), draftStore: null });
    const { stdin, frame, sees } = await show(session);
    stdin.write('zone 5B');
    stdin.write('\r');
    await sees('Is this a new wall');
    expect(frame()).toContain('» zone 5B');
    expect(frame().indexOf('Noted [Place: climate zone 5B]')).toBeLessThan(
      frame().indexOf('Is this a new wall'),
    );
  });

  it('rubs out with either key that terminals send for it', async () => {
    const { stdin, frame, sees } = await show(startSession({ services: fakeServices(), draftStore: null }));
    stdin.write('zoné');
    await sees('» zoné');
    stdin.write('\u007f');
    stdin.write('\b');
    await until('two characters are gone', () => /» zo\s*$/.test(frame()));
  });

  it('keeps a line that is sent while something is being worked out', async () => {
    let answer: () => void = () => {};
    const waiting = new Promise<void>((resolve) => {
      answer = resolve;
    });
    const services = fakeServices();
    const session = startSession({
      services: {
        ...services,
        async advise(scenario) {
          await waiting;
          return services.advise(scenario);
        },
      },
      draftStore: null,
    });
    const { stdin, frame, sees } = await show(session);
    stdin.write('zone 5B');
    stdin.write('\r');
    await sees('Is this a new wall');
    stdin.write('done');
    stdin.write('\r');
    await sees('Working it out');
    stdin.write('finish');
    stdin.write('\r');
    answer();
    await sees('Save the decision record?');
    expect(session.state().stage).toBe('told');
    expect(frame()).toMatch(/» finish\s*$/);
  });

  it('hands Ctrl-C on instead of ending by itself', async () => {
    const { stdin, onInterrupt } = await show(startSession({ services: fakeServices(), draftStore: null }));
    stdin.write('\u0003');
    await until('the interrupt is handed on', () => onInterrupt.mock.calls.length === 1);
  });

  it('draws anew for the new size of the window', async () => {
    const { stdout, frame } = await show(startSession({ services: fakeServices(), draftStore: null }));
    expect(frame()).toContain('Enter: answer');
    stdout.rows = 5;
    stdout.emit('resize');
    await until(
      'only what matters is left',
      () => !frame().split('1 of 14').at(-1)?.includes('Enter: answer'),
    );
    expect(frame()).toContain('Where does the wall stand?');
  });
});
