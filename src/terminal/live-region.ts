import { answerMark, cutTo, type Line, layOutBlocks } from '../conversation/blocks.ts';
import type { Progress } from '../conversation/session.ts';
import type { ConversationState, Prompt } from '../conversation/state.ts';
import { hintOf } from '../conversation/turn-blocks.ts';
import { asciiText, visibleText } from '../conversation/visible-text.ts';
import { type EditedLine, lineWindow } from './line-editor.ts';

export type WindowSize = { readonly columns: number; readonly rows: number };

export type LiveView = {
  readonly stage: ConversationState['stage'];
  readonly prompt: Prompt | null;
  readonly line: EditedLine;
  /** Index of the choice picked with the arrow keys. */
  readonly picked: number | null;
  /** The running first impression, in a sentence. */
  readonly outlook: string | null;
  /** How far the work under way has come. */
  readonly progress: Progress | null;
};

export type LiveRegion = {
  readonly lines: readonly Line[];
  /** Where the terminal's cursor belongs, counted from the region's upper left corner. */
  readonly cursor: { readonly x: number; readonly y: number } | null;
};

const BUSY: Partial<Record<ConversationState['stage'], string>> = {
  opening: 'One moment …',
  'looking-up': 'Looking up the place …',
  advising: 'Working it out …',
  trying: 'Trying that out …',
  weighing: 'Weighing what to ask next …',
  fetching: 'Looking among the kept talks …',
  saving: 'Saving the record …',
};

const KEYS = 'Enter: answer   arrows: pick   Esc: back   "help": what else you can say';
const KEYS_NARROW = 'Enter: answer  arrows: pick  Esc: back  "help"';

/**
 * The part of the screen that changes: the question being asked and the line being typed. Never taller than the window
 * less one row; what matters least goes first when there is little room.
 */
export function liveRegion(view: LiveView, size: WindowSize, ascii: boolean): LiveRegion {
  const columns = Math.max(1, size.columns);
  const most = Math.max(1, size.rows - 1);
  if (!view.prompt) {
    const busy = busyWords(view);
    const line = {
      text: cutTo(ascii ? asciiText(busy ?? '') : (busy ?? ''), columns, ascii),
      role: 'quiet' as const,
    };
    return { lines: busy ? [line] : [], cursor: null };
  }
  const mark = answerMark(ascii);
  const typed = lineWindow(view.line, columns - mark.length);
  const above = questionLines(view.prompt, view.picked, view.outlook, columns, most - 1, ascii);
  return {
    lines: [...above, { text: `${mark}${typed.text}`, role: 'said' }],
    cursor: { x: mark.length + typed.column, y: above.length },
  };
}

/** What is under way, how far it has come, and how to stop it. */
function busyWords({ stage, progress }: LiveView): string | undefined {
  const words = BUSY[stage];
  if (!words || (stage !== 'advising' && stage !== 'trying')) return words;
  const walls = progress?.walls.toLocaleString('en-US');
  const over = progress && progress.times > 1 ? `, ${progress.times} times over` : '';
  const done = progress ? ` ${walls} walls judged${over}.` : '';
  return `${words}${done} Esc stops.`;
}

function questionLines(
  prompt: Prompt,
  picked: number | null,
  outlook: string | null,
  columns: number,
  room: number,
  ascii: boolean,
): Line[] {
  const lay = (blocks: Parameters<typeof layOutBlocks>[0]) =>
    layOutBlocks(blocks, { width: columns, ascii }).map((line) => ({
      ...line,
      text: cutTo(line.text, columns, ascii),
    }));
  const rule = lay([
    { kind: 'title', text: prompt.label, ...(prompt.aside === null ? {} : { aside: prompt.aside }) },
  ]);
  const title = lay([{ kind: 'paragraph', text: prompt.title }]);
  const why =
    prompt.why === null ? [] : lay([{ kind: 'paragraph', text: `Why: ${prompt.why}`, role: 'quiet' }]);
  const hint = lay([{ kind: 'paragraph', text: hintOf(prompt), role: 'quiet' }]);
  const soFar = outlook === null ? [] : lay([{ kind: 'paragraph', text: outlook, role: 'note' }]);
  const keysText = KEYS.length <= columns ? KEYS : KEYS_NARROW;
  const keys = lay([{ kind: 'paragraph', text: keysText, role: 'quiet' }]);
  const gap = [{ text: '', role: 'body' as const }];

  const fewestChoices = Math.min(prompt.choices.length, 3);
  const parts = { gap, rule, why, hint, soFar, keys };
  const height = () =>
    Object.values(parts).reduce((sum, lines) => sum + lines.length, 0) + title.length + fewestChoices;
  // A choice that is cut off may be taken for another: the keys and the gap give way to it.
  const wrapped = wrappedChoices(prompt.choices, picked, columns, ascii).length;
  const asWrapped = height() - fewestChoices + wrapped;
  const isCut = wrapped > prompt.choices.length && asWrapped > room;
  if (isCut && asWrapped - parts.keys.length - parts.gap.length <= room) {
    parts.keys = [];
    parts.gap = [];
  }
  for (const spare of ['keys', 'gap', 'why', 'soFar', 'hint', 'rule'] as const) {
    if (height() <= room) break;
    parts[spare] = [];
  }
  const others = height() - fewestChoices;
  const choices = choiceLines(prompt.choices, picked, columns, Math.max(0, room - others), ascii);
  const lines = [
    ...parts.gap,
    ...parts.rule,
    ...title,
    ...parts.why,
    ...choices,
    ...parts.hint,
    ...parts.soFar,
    ...parts.keys,
  ];
  return lines.slice(0, Math.max(0, room));
}

/** The choices, wrapped where all of them fit so; else those around the picked one, one line each. */
function choiceLines(
  choices: readonly string[],
  picked: number | null,
  columns: number,
  room: number,
  ascii: boolean,
): Line[] {
  if (choices.length === 0 || room <= 0) return [];
  const wrapped = wrappedChoices(choices, picked, columns, ascii);
  if (wrapped.length <= room) return wrapped;
  const isWhole = choices.length <= room;
  const shown = isWhole ? choices.length : Math.max(1, room - 1);
  const first = Math.max(0, Math.min((picked ?? 0) - Math.floor(shown / 2), choices.length - shown));
  const lines = choices.slice(first, first + shown).map((label, i): Line => {
    const { mark, text, role } = choiceParts(choices, first + i, label, picked, ascii);
    return { text: cutTo(`${mark}${text}`, columns, ascii), role };
  });
  if (isWhole || room < 2) return lines;
  const more = `  ${choices.length - shown} more: use the arrow keys`;
  return [...lines, { text: cutTo(more, columns, ascii), role: 'quiet' }];
}

function wrappedChoices(
  choices: readonly string[],
  picked: number | null,
  columns: number,
  ascii: boolean,
): Line[] {
  return choices.flatMap((label, index) => {
    const { mark, text, role } = choiceParts(choices, index, label, picked, ascii);
    const lines = layOutBlocks([{ kind: 'paragraph', text }], { width: columns - mark.length, ascii });
    return lines.map(
      (line, i): Line => ({
        text: cutTo(`${i === 0 ? mark : ' '.repeat(mark.length)}${line.text}`, columns, ascii),
        role,
      }),
    );
  });
}

function choiceParts(
  choices: readonly string[],
  index: number,
  label: string,
  picked: number | null,
  ascii: boolean,
): { readonly mark: string; readonly text: string; readonly role: Line['role'] } {
  const number = String(index + 1).padStart(String(choices.length).length);
  return {
    mark: `${index === picked ? '> ' : '  '}${number}  `,
    text: visibleText(ascii ? asciiText(label) : label),
    role: index === picked ? 'heading' : 'body',
  };
}
