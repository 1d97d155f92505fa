import { Box, Static, Text, useCursor } from 'ink';
import { useSyncExternalStore } from 'react';
import { type Line, layOutBlocks } from '../conversation/blocks.ts';
import { outlookLine } from '../conversation/outlook.ts';
import { promptOf } from '../conversation/prompt.ts';
import type { Session } from '../conversation/session.ts';
import type { Turn } from '../conversation/state.ts';
import { turnBlocks } from '../conversation/turn-blocks.ts';
import { type LiveRegion, liveRegion } from './live-region.ts';
import { styleOf } from './theme.ts';
import { useTyping } from './use-typing.ts';
import { type SizedStream, useWindowSize } from './use-window-size.ts';

export type ConversationViewProps = {
  readonly session: Session;
  /** The real terminal, for its size. */
  readonly stdout: SizedStream;
  readonly ascii: boolean;
  /** Draws nothing any more but the finished turns; set before leaving. */
  readonly isClosing: boolean;
  readonly onInterrupt: () => void;
  readonly onSuspend: () => void;
  /** Told what is about to be drawn below the finished turns. */
  readonly onRegion?: (region: LiveRegion) => void;
  /** A fault in the program, not in an answer. */
  readonly onFault: (error: unknown) => void;
};

/** The whole screen: finished turns written once and left alone, and below them the question being asked. */
export function ConversationView(props: ConversationViewProps) {
  const { session, ascii } = props;
  const state = useSyncExternalStore(session.subscribe, session.state);
  const progress = useSyncExternalStore(session.subscribe, session.progress);
  const size = useWindowSize(props.stdout);
  const typing = useTyping(props);
  const { setCursorPosition } = useCursor();

  const prompt = props.isClosing ? null : promptOf(state);
  const region = props.isClosing
    ? { lines: [], cursor: null }
    : liveRegion(
        {
          stage: state.stage,
          prompt,
          line: typing.line,
          picked: typing.picked,
          outlook: state.stage === 'asking' && state.asides.length === 0 ? outlookLine(state) : null,
          progress,
        },
        size,
        ascii,
      );
  setCursorPosition(region.cursor ?? undefined);
  props.onRegion?.(region);

  return (
    <>
      <Static items={[...state.turns]}>
        {(turn) => <Lines key={turn.id} lines={turnLines(turn, size.columns, ascii)} />}
      </Static>
      <Lines lines={region.lines} />
    </>
  );
}

function turnLines(turn: Turn, columns: number, ascii: boolean): Line[] {
  const lines = layOutBlocks(turnBlocks(turn), { width: columns, ascii });
  const hasGap = turn.kind === 'question' || turn.kind === 'advice';
  return hasGap ? [{ text: '', role: 'body' }, ...lines] : lines;
}

function Lines({ lines }: { readonly lines: readonly Line[] }) {
  const rows = lines.map((line, place) => ({ ...line, key: `row ${place}` }));
  return (
    <Box flexDirection="column">
      {rows.map(({ key, text, role }) => (
        <Text key={key} wrap="truncate" {...styleOf(role)}>
          {text === '' ? ' ' : text}
        </Text>
      ))}
    </Box>
  );
}
