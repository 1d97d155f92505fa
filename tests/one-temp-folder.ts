import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** Gives every file of a run, and every program it starts, one place for what it writes, and clears it at the end. */
export default function setup(): () => void {
  const folder = mkdtempSync(join(tmpdir(), 'cw-'));
  process.env.TMPDIR = folder;
  return () => rmSync(folder, { recursive: true, force: true });
}
