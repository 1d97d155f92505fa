import { Refusal, showValue } from '../base/refusal.ts';
import { READERS, type Reader } from '../conversation/reader.ts';
import { type ColourFlag, decideColour } from './colour.ts';
import { dataFolder, draftStoreIn } from './draft-store.ts';
import { stoppingOnInterrupt, takingInterrupts } from './interrupts.ts';
import { textWidth, writeOut } from './output.ts';
import { runPlainConversation } from './plain-conversation.ts';
import { saveFolder } from './save-folder.ts';
import { conversationServices, type RunningServices } from './services.ts';

/** Where a conversation saves when it is asked to and no folder was named: below the folder it was started in. */
const RECORDS = 'cladwright-records';

export type ConversationFlags = {
  readonly plain?: true;
  readonly screenReader?: true;
  readonly reader?: string;
  readonly save?: string;
  readonly houseRules?: readonly string[];
  readonly ascii?: true;
  readonly colour: boolean;
  readonly color: boolean;
};

/**
 * The guided conversation: terminal UI where both ends are terminals, else the same in plain lines.
 *
 * @returns 1 when no assembly passes, 130 (143, 129) when a signal ended the terminal UI
 * @throws Refusal for a house pack with an error, and when the input ends without a place
 */
export async function runConversation(flags: ConversationFlags): Promise<number> {
  const dir = saveFolder(flags.save);
  const services = await conversationServices({
    housePacks: flags.houseRules ?? [],
    recordDir: dir ?? RECORDS,
    inThread: process.stdin.isTTY,
  });
  try {
    return await converse(flags, services, dir !== undefined);
  } finally {
    await services.close();
  }
}

async function converse(flags: ConversationFlags, services: RunningServices, save: boolean): Promise<number> {
  const { stdin, stdout } = process;
  const reader = readerOf(flags.reader);
  const ascii = flags.ascii ?? false;
  const draftStore = stdin.isTTY ? draftStoreIn(dataFolder()) : null;
  if (isForTerminalUi(flags)) {
    const isColourless = !flags.colour || !flags.color;
    const flag: ColourFlag = isColourless ? 'never' : null;
    const colour = decideColour(process.env, { colour: flag }, true);
    return takingInterrupts(async () => {
      // Loaded here and nowhere else: Ink must not be loaded where an end is no terminal.
      const { runTerminalConversation } = await import('../terminal/run.tsx');
      return runTerminalConversation({
        services,
        draftStore,
        colour,
        ascii,
        stdin,
        stdout,
        save,
        onFirstPrompt: () => warmUp(services),
        ...(reader ? { reader } : {}),
      });
    });
  }
  return runPlainConversation({
    input: stdin,
    output: (text) => writeOut(text),
    services,
    draft: draftStore,
    echo: !stdin.isTTY,
    save,
    ascii,
    spoken: flags.screenReader ?? false,
    ...(stdin.isTTY ? { onFirstPrompt: () => warmUp(services), interrupts: stoppingOnInterrupt } : {}),
    width: textWidth(),
    ...(reader ? { reader } : {}),
  });
}

/** Rules and engine are loaded while the first question is read; what goes wrong is reported by the first answer. */
function warmUp(services: RunningServices): void {
  services.warmUp().catch(() => undefined);
}

/** A "dumb" terminal can't redraw, which is all that the terminal UI does. */
function isForTerminalUi({ plain, screenReader }: ConversationFlags): boolean {
  return (
    !plain && !screenReader && process.stdin.isTTY && process.stdout.isTTY && process.env.TERM !== 'dumb'
  );
}

/** @throws Refusal for a reader that is not known */
function readerOf(text: string | undefined): Reader | undefined {
  if (text === undefined) return undefined;
  const known = READERS.find((reader) => reader === text);
  if (known) return known;
  throw new Refusal({
    field: '--reader',
    value: showValue(text),
    accepted: `Give one of ${READERS.join(', ')}.`,
  });
}
