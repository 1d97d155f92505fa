import { Refusal } from '../base/refusal.ts';
import { isEmpty } from '../conversation/answers.ts';
import { answerMark, type Block, blocksToText } from '../conversation/blocks.ts';
import type { DraftStore } from '../conversation/draft.ts';
import { farewellWords, note } from '../conversation/notes.ts';
import { promptOf } from '../conversation/prompt.ts';
import type { Reader } from '../conversation/reader.ts';
import { type Progress, type Services, startSession } from '../conversation/session.ts';
import type { ConversationState } from '../conversation/state.ts';
import { promptBlocks, turnBlocks } from '../conversation/turn-blocks.ts';
import type { OnInterrupt } from './interrupts.ts';

export type PlainConversation = {
  /** Lines of the user's, in chunks of any size: text, or bytes of UTF-8. */
  readonly input: AsyncIterable<string | Uint8Array>;
  /** Resolves once the text is out; rejects where there is no room for it. */
  readonly output: (text: string) => Promise<unknown>;
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
  /** Called once the first question is written. */
  readonly onFirstPrompt?: () => void;
  /** Where somebody sits at the keys: given what an interrupt does; returns what takes it back. */
  readonly interrupts?: (handled: OnInterrupt) => () => void;
};

const WIDTH = 80;
const BETWEEN_PROGRESS_MS = 3000;

/**
 * The conversation as plain lines: one question, one answer a line. The end of input means "assume the rest".
 *
 * @returns exit code: 0 done, 1 no wall passes
 * @throws Refusal when the input ends without a place, or when what was said makes no scenario
 * @throws Error of the output where it takes no more; what was answered until then is kept
 */
export async function runPlainConversation(options: PlainConversation): Promise<number> {
  const session = startSession(
    { services: options.services, draftStore: options.draft },
    {
      saveWhenTold: options.save ?? false,
      // Whoever reads what a pipe wrote can ask for nothing more.
      extent: options.echo ? 'whole' : 'brief',
      // A script's lines were written for the questions in the order of the list.
      looksAhead: !options.echo,
      asksOnce: options.echo ?? false,
      ...(options.reader ? { reader: options.reader } : {}),
    },
  );
  const writer = new PlainWriter(options);
  session.subscribe((state) => writer.show(state, session.progress()));
  const release = options.interrupts?.({
    stop: session.stop,
    lastWords: () => writer.farewell(session.state()),
  });
  await session.begin();
  await writer.waitForLine(session.state());
  options.onFirstPrompt?.();
  for await (const line of linesOf(options.input)) {
    await session.tell({ kind: 'said', text: line });
    if (session.state().stage === 'left') break;
    await writer.waitForLine(session.state());
  }
  if (session.state().stage !== 'left') await session.tell({ kind: 'input-ended' });
  await writer.allWritten();
  release?.();
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
  #lastTold = 0;
  /** Said once, and not between any two questions. */
  #hasWeighed = false;
  #written: Promise<unknown> = Promise.resolve();

  constructor(options: PlainConversation) {
    this.#options = options;
  }

  show(state: ConversationState, progress: Progress | null): void {
    for (const turn of state.turns.slice(this.#shownTurns)) {
      // The question was written when it was asked, and a terminal has already shown what was typed.
      if (turn.kind === 'question') continue;
      if (turn.kind === 'answer' && !this.#options.echo) continue;
      this.#write(turnBlocks(turn), turn.kind === 'advice');
    }
    this.#shownTurns = state.turns.length;
    this.#ask(state);
    this.#tellProgress(state, progress);
  }

  /** Now and then while an answer is worked out, for whoever waits for it. */
  #tellProgress({ stage }: ConversationState, progress: Progress | null): void {
    if (this.#options.echo || stage === 'weighing' || progress === null) return;
    if (Date.now() - this.#lastTold < BETWEEN_PROGRESS_MS) return;
    this.#lastTold = Date.now();
    const walls = progress.walls.toLocaleString('en-US');
    this.#write([{ kind: 'paragraph', text: `${walls} walls judged, ${progress.times} times over …` }]);
  }

  /** On a terminal, a mark where the user types; where lines are repeated they bring their own. */
  async waitForLine(state: ConversationState): Promise<void> {
    if (!this.#options.echo && promptOf(state)) this.#put(answerMark(this.#options.ascii ?? false));
    await this.allWritten();
  }

  /** @throws Error of the output where it took not all of it */
  async allWritten(): Promise<void> {
    await this.#written;
  }

  /** What stands below the line that was broken off. */
  farewell({ answers }: ConversationState): string {
    const isKept = this.#options.draft !== null && !isEmpty(answers);
    return `\n${this.#textOf([note(farewellWords(isKept))])}\n`;
  }

  #ask(state: ConversationState): void {
    const prompt = promptOf(state);
    const isAtWork = state.stage === 'advising' || state.stage === 'trying';
    // Once for each piece of work, however often it tells how far it is.
    if (isAtWork && !this.#isAtWork) {
      const how = this.#options.interrupts ? ' Ctrl-C stops it.' : '';
      this.#write([{ kind: 'paragraph', text: `Working it out …${how}` }]);
      this.#lastTold = Date.now();
    }
    this.#isAtWork = isAtWork;
    if (state.stage === 'weighing' && !this.#hasWeighed) {
      this.#write([{ kind: 'paragraph', text: 'One moment: I weigh what to ask next …' }]);
      this.#hasWeighed = true;
    }
    if (!prompt) {
      this.#shownPrompt = null;
      return;
    }
    if (this.#shownPrompt !== prompt.key) this.#write(promptBlocks(prompt), true);
    this.#shownPrompt = prompt.key;
  }

  #write(blocks: readonly Block[], isGapBefore = false): void {
    this.#put(`${isGapBefore ? '\n' : ''}${this.#textOf(blocks)}\n`);
  }

  #textOf(blocks: readonly Block[]): string {
    const { width, ascii, spoken } = this.#options;
    return blocksToText(blocks, width ?? WIDTH, { ascii: ascii ?? false, spoken: spoken ?? false });
  }

  /** One after the other. What fails is told when all is waited for: by then the answers are kept. */
  #put(text: string): void {
    this.#written = this.#written.then(() => this.#options.output(text));
    this.#written.catch(() => undefined);
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
