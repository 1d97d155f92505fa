import chalk from 'chalk';
import { render } from 'ink';
import { layOutBlocks } from '../conversation/blocks.ts';
import { farewellWords, note } from '../conversation/notes.ts';
import { startSession } from '../conversation/session.ts';

import { ConversationView } from './conversation-view.tsx';
import { eraseWrapped, type Frame, frameOf, wrapsAnew } from './frame-trace.ts';
import { knownKeysOf } from './known-keys.ts';
import { steadyStdout } from './steady-stdout.ts';
import { Suspension } from './suspension.ts';
import type { TerminalConversation } from './terminal-conversation.ts';

const PASTE_MARKS_ON = '\u001b[?2004h';
const PASTE_MARKS_OFF = '\u001b[?2004l';
const SHOW_CURSOR = '\u001b[?25h';

const INTERRUPTED = 130;
const SIGNALS = { SIGINT: INTERRUPTED, SIGTERM: 143, SIGHUP: 129 } as const;
type Signal = keyof typeof SIGNALS;

/** Longest wait for a draft that is being written when the user leaves. */
const PATIENCE_MS = 500;

/** Draws the conversation until it ends; returns the exit code. See `runTerminalConversation`. */
export async function drawConversation(options: TerminalConversation): Promise<number> {
  const { stdout, ascii } = options;
  // The drawing libraries judge colour by themselves and overlook NO_COLOR; here it has been decided already.
  chalk.level = COLOUR_LEVELS[options.colour];
  const session = startSession(
    {
      services: options.services,
      draftStore: options.draftStore,
      watchOutlook: { onFault: (error) => ending.fail(error) },
    },
    { saveWhenTold: options.save ?? false, ...(options.reader ? { reader: options.reader } : {}) },
  );
  const ending = new Ending();
  const trace = new FrameTrace(stdout);
  const view = (isClosing: boolean) => (
    <ConversationView
      session={session}
      stdout={stdout}
      ascii={ascii}
      isClosing={isClosing}
      onInterrupt={() => ending.leave(INTERRUPTED)}
      onSuspend={() => void suspension.begin()}
      onRegion={(region) => trace.drawing(frameOf(region))}
      onFault={(error) => ending.fail(error)}
    />
  );
  // Before anything is drawn, so that the first thing drawn is the first question.
  await session.begin();
  const stopSignals = onSignals((signal) => ending.leave(SIGNALS[signal]));
  stdout.write(PASTE_MARKS_ON);
  trace.start();
  const ink = render(view(false), {
    stdin: knownKeysOf(options.stdin),
    stdout: steadyStdout(stdout, () => trace.drawn()),
    exitOnCtrlC: false,
    patchConsole: false,
  });
  const suspension = new Suspension({
    stop: options.suspend ?? stopJob,
    async takeDown() {
      ink.rerender(view(true));
      await wait(FRAME_MS);
      options.stdin.setRawMode(false);
      stdout.write(`${PASTE_MARKS_OFF}${SHOW_CURSOR}`);
    },
    putUp() {
      options.stdin.setRawMode(true);
      // Ink takes its empty frame, a line long, off again: a line of our own for it, not one of the shell's.
      stdout.write(`${PASTE_MARKS_ON}\n`);
      ink.rerender(view(false));
    },
  });
  const stopWatching = suspension.watch();
  // Once the first question is out: nothing more may stand between the user and it.
  const later = setTimeout(() => {
    session.getReady().catch((error: unknown) => ending.fail(error));
    options.onFirstPrompt?.();
  }, FRAME_MS);
  const unmounted = ink.waitUntilExit();
  try {
    const unsubscribe = session.subscribe((state) => {
      if (state.stage === 'left') ending.leave(state.exitCode ?? 0);
    });
    const code = await ending.reached;
    unsubscribe();
    if (code !== 0 && code !== 1) await Promise.race([session.idle(), wait(PATIENCE_MS)]);
    ink.rerender(view(true));
    await wait(FRAME_MS);
    return code;
  } finally {
    ink.unmount();
    await unmounted;
    stdout.write(PASTE_MARKS_OFF);
    stopSignals();
    stopWatching();
    clearTimeout(later);
    trace.end();
    if (ending.isInterrupted) {
      const isKept = options.draftStore !== null && Object.keys(session.state().answers).length > 0;
      stdout.write(farewell(isKept, stdout.columns || 80, ascii));
    }
  }
}

const COLOUR_LEVELS = { none: 0, basic: 1, full: 2 } as const;

/** Ink draws at most this often; the last frame must be out before it is taken down. */
const FRAME_MS = 50;

/** How the talk ends: with an exit code, or with a fault. */
class Ending {
  readonly reached: Promise<number>;
  isInterrupted = false;
  #resolve: (code: number) => void = () => {};
  #reject: (error: unknown) => void = () => {};

  constructor() {
    this.reached = new Promise((resolve, reject) => {
      this.#resolve = resolve;
      this.#reject = reject;
    });
  }

  leave(code: number): void {
    this.isInterrupted ||= code === INTERRUPTED;
    this.#resolve(code);
  }

  fail(error: unknown): void {
    this.#reject(error);
  }
}

/** Stops the whole job, as the terminal does on Ctrl-Z when a program leaves that key to it. */
function stopJob(): void {
  process.kill(0, 'SIGTSTP');
}

/** Remembers what stands on the screen below the finished turns, and takes it off when the window becomes too narrow. */
class FrameTrace {
  readonly #stdout: NodeJS.WriteStream;
  #next: Frame = { widths: [], cursor: null };
  #shown: Frame = { widths: [], cursor: null };

  constructor(stdout: NodeJS.WriteStream) {
    this.#stdout = stdout;
  }

  start(): void {
    if (wrapsAnew(process.env)) this.#stdout.on('resize', this.#resized);
  }

  end(): void {
    this.#stdout.off('resize', this.#resized);
  }

  /** A frame is about to be drawn. */
  drawing(frame: Frame): void {
    this.#next = frame;
  }

  /** It has been written. */
  drawn(): void {
    this.#shown = this.#next;
  }

  readonly #resized = (): void => {
    const { columns, rows } = this.#stdout;
    const codes = eraseWrapped(this.#shown, columns || 80, rows || 24);
    if (codes === '') return;
    this.#stdout.write(codes);
    // Until the next frame is drawn there is nothing but empty rows.
    this.#shown = { ...this.#shown, widths: this.#shown.widths.map(() => 1) };
  };
}

function onSignals(handle: (signal: Signal) => void): () => void {
  const handlers = (['SIGINT', 'SIGTERM', 'SIGHUP'] as const).map((signal) => {
    const handler = () => handle(signal);
    // Not "once": a listener that takes itself away first leaves Ink's own to end the process on the spot.
    process.on(signal, handler);
    return () => process.off(signal, handler);
  });
  return () => {
    for (const off of handlers) off();
  };
}

function farewell(isKept: boolean, columns: number, ascii: boolean): string {
  const lines = layOutBlocks([note(farewellWords(isKept))], { width: columns, ascii });
  return `${lines.map((line) => line.text).join('\n')}\n`;
}

function wait(ms: number): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, ms));
}
