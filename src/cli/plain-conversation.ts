import { Refusal } from '../base/refusal.ts';
import { answerMark, type Block, blocksToText } from '../conversation/blocks.ts';
import type { DraftStore } from '../conversation/draft.ts';
import { promptOf } from '../conversation/prompt.ts';
import type { Reader } from '../conversation/reader.ts';
import { type Services, startSession } from '../conversation/session.ts';
import type { ConversationState } from '../conversation/state.ts';
import { promptBlocks, turnBlocks } from '../conversation/turn-blocks.ts';

export type PlainConversation = {
  /** Lines of the user's, in chunks of any size: text, or bytes of UTF-8. */
  readonly input: AsyncIterable<string | Uint8Array>;
  readonly output: (text: string) => void;
  readonly services: Services;
  /** Null on a pipe: a script's lines must not be taken for answers to "go on with the old talk?". */
  readonly draft: DraftStore | null;
  /** Repeats the user's line with a mark; for pipes, where nobody sees it typed. */
  readonly echo?: boolean;
  /** Save the record without being asked. */
  readonly save?: boolean;
  readonly ascii?: boolean;
  readonly width?: number;
  /** For ears: drawings in words, titles without rules. */
  readonly spoken?: boolean;
  readonly reader?: Reader;
};

const WIDTH = 80;

/**
 * The conversation as plain lines: one question, one answer a line. The end of input means "assume the rest".
 *
 * @returns exit code: 0 done, 1 no wall passes
 * @throws Refusal when the input ends without a place, or when what was said makes no scenario
 */
export async function runPlainConversation(options: PlainConversation): Promise<number> {
  const session = startSession(
    { services: options.services, draftStore: options.draft },
    {
      saveWhenTold: options.save ?? false,
      // Whoever reads what a pipe wrote can ask for nothing more.
      extent: options.echo ? 'whole' : 'brief',
      ...(options.reader ? { reader: options.reader } : {}),
    },
  );
  const writer = new PlainWriter(options);
  session.subscribe((state) => writer.show(state));
  await session.begin();
  writer.waitForLine(session.state());
  for await (const line of linesOf(options.input)) {
    await session.tell({ kind: 'said', text: line });
    if (session.state().stage === 'left') break;
    writer.waitForLine(session.state());
  }
  if (session.state().stage !== 'left') await session.tell({ kind: 'input-ended' });
  const { refused, exitCode } = session.state();
  if (refused.length > 0) throw new Refusal(refused);
  return exitCode ?? 0;
}

/** Writes what is new: turns as they come, the question when it changes. */
class PlainWriter {
  readonly #options: PlainConversation;
  #shownTurns = 0;
  #shownPrompt: string | null = null;
  #isAtWork = false;

  constructor(options: PlainConversation) {
    this.#options = options;
  }

  show(state: ConversationState): void {
    for (const turn of state.turns.slice(this.#shownTurns)) {
      // The question was written when it was asked, and a terminal has already shown what was typed.
      if (turn.kind === 'question') continue;
      if (turn.kind === 'answer' && !this.#options.echo) continue;
      this.#write(turnBlocks(turn), turn.kind === 'advice');
    }
    this.#shownTurns = state.turns.length;
    this.#ask(state);
  }

  /** On a terminal, a mark where the user types; where lines are repeated they bring their own. */
  waitForLine(state: ConversationState): void {
    if (!this.#options.echo && promptOf(state))
      this.#options.output(answerMark(this.#options.ascii ?? false));
  }

  #ask(state: ConversationState): void {
    const prompt = promptOf(state);
    const isAtWork = state.stage === 'advising' || state.stage === 'trying';
    // Once for each piece of work, however often it tells how far it is.
    if (isAtWork && !this.#isAtWork) this.#write([{ kind: 'paragraph', text: 'Working it out …' }]);
    this.#isAtWork = isAtWork;
    if (!prompt) {
      this.#shownPrompt = null;
      return;
    }
    if (this.#shownPrompt !== prompt.key) this.#write(promptBlocks(prompt), true);
    this.#shownPrompt = prompt.key;
  }

  #write(blocks: readonly Block[], isGapBefore = false): void {
    const { output, width, ascii, spoken } = this.#options;
    const text = blocksToText(blocks, width ?? WIDTH, { ascii: ascii ?? false, spoken: spoken ?? false });
    output(`${isGapBefore ? '\n' : ''}${text}\n`);
  }
}

const LONGEST_LINE = 10_000;

/** Lines of chunked input; the last one counts without its line end, bytes are UTF-8 and may be split anywhere. */
async function* linesOf(input: AsyncIterable<string | Uint8Array>): AsyncGenerator<string> {
  const decoder = new TextDecoder();
  let rest = '';
  for await (const chunk of input) {
    rest += typeof chunk === 'string' ? chunk : decoder.decode(chunk, { stream: true });
    const lines = rest.split(/\r\n|\n|\r(?!$)/);
    rest = (lines.pop() ?? '').slice(0, LONGEST_LINE);
    yield* lines;
  }
  rest += decoder.decode();
  if (rest.replace(/\r$/, '') !== '') yield rest.replace(/\r$/, '');
}
