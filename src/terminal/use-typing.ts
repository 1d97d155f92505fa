import { useInput } from 'ink';
import { useRef, useState } from 'react';
import { promptOf } from '../conversation/prompt.ts';
import type { Session } from '../conversation/session.ts';
import type { ConversationEvent } from '../conversation/state.ts';
import { type KeyAction, readChunk } from './key-input.ts';
import {
  type EditedLine,
  EMPTY_LINE,
  eraseBack,
  eraseToEnd,
  eraseToStart,
  eraseWord,
  insertText,
  lineText,
  moveCursor,
} from './line-editor.ts';

type Typing = {
  readonly line: EditedLine;
  /** Choice picked with the arrow keys, of the prompt with this key. */
  readonly picked: { readonly prompt: string; readonly index: number } | null;
};

export type TypingPorts = {
  readonly session: Session;
  readonly onInterrupt: () => void;
  readonly onSuspend: () => void;
  readonly onFault: (error: unknown) => void;
};

/** The line being typed and the choice picked, fed by the keyboard. */
export function useTyping(ports: TypingPorts): { readonly line: EditedLine; readonly picked: number | null } {
  const [typing, setTyping] = useState<Typing>({ line: EMPTY_LINE, picked: null });
  // Several chunks may come between two drawings: what the next one starts from must not wait for React.
  const now = useRef(typing);
  const isPasting = useRef(false);

  useInput((input, key) => {
    const reading = readChunk(input, key, isPasting.current);
    isPasting.current = reading.isPasting;
    for (const action of reading.actions) now.current = act(ports, now.current, action);
    setTyping(now.current);
  });

  const prompt = promptOf(ports.session.state());
  const isCurrent = typing.picked !== null && typing.picked.prompt === prompt?.key;
  return { line: typing.line, picked: isCurrent ? (typing.picked?.index ?? null) : null };
}

function act(ports: TypingPorts, typing: Typing, action: KeyAction): Typing {
  const { line } = typing;
  const edited = (next: EditedLine): Typing => ({ ...typing, line: next });
  switch (action.kind) {
    case 'text':
      return edited(insertText(line, action.text));
    case 'erase-back':
      return edited(eraseBack(line));
    case 'erase-word':
      return edited(eraseWord(line));
    case 'erase-to-start':
      return edited(eraseToStart(line));
    case 'erase-to-end':
      return edited(eraseToEnd(line));
    case 'left':
      return edited(moveCursor(line, line.cursor - 1));
    case 'right':
      return edited(moveCursor(line, line.cursor + 1));
    case 'start':
      return edited(moveCursor(line, 0));
    case 'end':
      return edited(moveCursor(line, line.characters.length));
    case 'up':
      return pick(ports, typing, -1);
    case 'down':
      return pick(ports, typing, 1);
    case 'back':
      // While something is worked out, escape stops that and nothing else.
      if (ports.session.stop()) return typing;
      if (line.characters.length > 0) return edited(EMPTY_LINE);
      tell(ports, { kind: 'back' });
      return { ...typing, picked: null };
    case 'submit':
      return submit(ports, typing);
    case 'interrupt':
      if (!ports.session.stop()) ports.onInterrupt();
      return typing;
    case 'suspend':
      ports.onSuspend();
      return typing;
  }
}

function pick(ports: TypingPorts, typing: Typing, by: 1 | -1): Typing {
  const prompt = promptOf(ports.session.state());
  if (!prompt || prompt.choices.length === 0) return typing;
  const last = prompt.choices.length - 1;
  const from = typing.picked?.prompt === prompt.key ? typing.picked.index : null;
  // Who presses Up on an empty line looks for what was typed before; it must not put an answer under Enter.
  if (from === null && by === -1) return typing;
  if (from === 0 && by === -1) return { ...typing, picked: null };
  const index = from === null ? 0 : Math.max(0, Math.min(last, from + by));
  return { ...typing, picked: { prompt: prompt.key, index } };
}

/** Sends the line, or the picked choice in its own words when nothing was typed. */
function submit(ports: TypingPorts, typing: Typing): Typing {
  const prompt = promptOf(ports.session.state());
  if (!prompt) return typing; // something is being worked out: the line stays until it is done
  const text = lineText(typing.line);
  const picked = typing.picked?.prompt === prompt.key ? prompt.choices[typing.picked.index] : undefined;
  tell(ports, { kind: 'said', text: text.trim() === '' && picked !== undefined ? picked : text });
  return { line: EMPTY_LINE, picked: null };
}

function tell(ports: TypingPorts, event: ConversationEvent): void {
  ports.session.tell(event).catch(ports.onFault);
}
