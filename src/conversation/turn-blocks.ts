import type { Block } from './blocks.ts';
import type { Prompt, Turn } from './state.ts';

/** What a finished turn says. A question in the talk so far keeps its words but not its list of choices. */
export function turnBlocks(turn: Turn): readonly Block[] {
  switch (turn.kind) {
    case 'question':
      return questionBlocks(turn.prompt);
    case 'answer':
      return [{ kind: 'said', text: turn.text }];
    case 'remark':
    case 'advice':
      return turn.blocks;
  }
}

/** Title and question, without why, choices and example. */
export function questionBlocks(prompt: Prompt): readonly Block[] {
  return [
    { kind: 'title', text: prompt.label, ...(prompt.aside === null ? {} : { aside: prompt.aside }) },
    { kind: 'paragraph', text: prompt.title },
  ];
}

/** Everything about the question being asked. */
export function promptBlocks(prompt: Prompt): readonly Block[] {
  return [
    ...questionBlocks(prompt),
    ...(prompt.why === null
      ? []
      : [{ kind: 'paragraph' as const, text: `Why: ${prompt.why}`, role: 'quiet' as const }]),
    ...(prompt.choices.length === 0
      ? []
      : [{ kind: 'list' as const, items: prompt.choices, numbered: true }]),
    { kind: 'paragraph', text: hintOf(prompt), role: 'quiet' },
  ];
}

/** One line of help below the question: an example, or what would be accepted. */
export function hintOf(prompt: Prompt): string {
  return prompt.example === null ? `I take ${prompt.accepts}.` : `For example: ${prompt.example}`;
}
