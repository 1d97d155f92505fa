import type { TerminalConversation } from './terminal-conversation.ts';

/**
 * The conversation in the terminal. Both streams must be terminals: Ink, which is loaded here, can do with nothing else.
 *
 * @returns exit code: 0 done, 1 no wall passes, 130 interrupted (143, 129 by other signals); the terminal is as before
 */
export async function runTerminalConversation(options: TerminalConversation): Promise<number> {
  // With one of these set, Ink takes the terminal for a build log and draws nothing before the end.
  delete process.env.CI;
  delete process.env.CONTINUOUS_INTEGRATION;
  const { drawConversation } = await import('./draw-conversation.tsx');
  return drawConversation(options);
}
