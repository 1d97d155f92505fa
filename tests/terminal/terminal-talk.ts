import './no-build-machine.ts';
import type { DraftStore } from '../../src/conversation/draft.ts';
import type { Services } from '../../src/conversation/session.ts';
import { runTerminalConversation } from '../../src/terminal/run.tsx';
import type { TerminalConversation } from '../../src/terminal/terminal-conversation.ts';
import { type FakeServices, fakeServices } from '../conversation/fake-services.ts';
import { FakeKeyboard, FakeScreen, until } from './screen.ts';

type Options = {
  readonly columns?: number;
  readonly rows?: number;
  readonly services?: Services;
  readonly suspend?: () => void;
  readonly draftStore?: DraftStore | null;
  readonly ascii?: boolean;
  readonly colour?: TerminalConversation['colour'];
};

/** The terminal conversation on a made-up screen and keyboard. */
export class TerminalTalk {
  readonly screen: FakeScreen;
  readonly keyboard = new FakeKeyboard();
  readonly services: Services & Partial<FakeServices>;
  readonly ended: Promise<number>;

  constructor(options: Options = {}) {
    this.screen = new FakeScreen(options.columns ?? 80, options.rows ?? 24);
    this.services = options.services ?? fakeServices();
    this.ended = runTerminalConversation({
      services: this.services,
      draftStore: options.draftStore ?? null,
      colour: options.colour ?? 'none',
      ascii: options.ascii ?? false,
      ...(options.suspend ? { suspend: options.suspend } : {}),
      stdin: this.keyboard as unknown as NodeJS.ReadStream,
      stdout: this.screen as unknown as NodeJS.WriteStream,
    });
  }

  /** Waits until the screen shows some words. */
  async sees(words: string | RegExp): Promise<string> {
    const holds = (text: string) => (typeof words === 'string' ? text.includes(words) : words.test(text));
    try {
      await until(`the screen shows ${words}`, async () => holds((await this.screen.view()).join('\n')));
    } catch (error) {
      throw new Error(`${error}; it shows:\n${(await this.screen.view()).join('\n')}`);
    }
    return (await this.screen.view()).join('\n');
  }

  /** Types a line and sends it once the question is on the screen. */
  async answer(question: string | RegExp, line: string): Promise<void> {
    await this.sees(question);
    this.keyboard.press(line);
    this.keyboard.press('\r');
  }
}
