import type { DraftStore } from '../conversation/draft.ts';
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
};
