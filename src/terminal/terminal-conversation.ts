import type { DraftStore } from '../conversation/draft.ts';
import type { Reader } from '../conversation/reader.ts';
import type { Services } from '../conversation/session.ts';
import type { ColourMode } from './colour-mode.ts';

/** What the conversation in the terminal is given. */
export type TerminalConversation = {
  readonly services: Services;
  readonly draftStore: DraftStore | null;
  readonly colour: ColourMode;
  readonly ascii: boolean;
  readonly stdin: NodeJS.ReadStream;
  readonly stdout: NodeJS.WriteStream;
  /** Save the record without being asked. */
  readonly save?: boolean;
  /** Whom to speak to; left out, a kept talk decides, else the professional. */
  readonly reader?: Reader;
  /** Called once the first question is on the screen: what may wait until then begins here. */
  readonly onFirstPrompt?: () => void;
  /** Stops the program's whole job until the shell wakes it; the terminal is back in order by then. */
  readonly suspend?: () => void;
};
