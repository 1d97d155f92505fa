import { useEffect, useState } from 'react';
import type { WindowSize } from './live-region.ts';

const FALLBACK: WindowSize = { columns: 80, rows: 24 };

export type SizedStream = {
  readonly columns?: number | undefined;
  readonly rows?: number | undefined;
  on(event: 'resize', listener: () => void): unknown;
  off(event: 'resize', listener: () => void): unknown;
};

/** The size of the real terminal, kept up to date. */
export function useWindowSize(stdout: SizedStream): WindowSize {
  const [size, setSize] = useState<WindowSize>(() => sizeOf(stdout));
  useEffect(() => {
    const resized = () => setSize(sizeOf(stdout));
    stdout.on('resize', resized);
    return () => {
      stdout.off('resize', resized);
    };
  }, [stdout]);
  return size;
}

function sizeOf(stdout: SizedStream): WindowSize {
  // Some terminals report 0 while they start.
  return { columns: stdout.columns || FALLBACK.columns, rows: stdout.rows || FALLBACK.rows };
}
