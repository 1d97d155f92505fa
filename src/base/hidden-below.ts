import { relative, sep } from 'node:path';

/** Whether a path below a folder is hidden, or lies in a hidden folder there: what other programs keep for themselves. */
export function isHiddenBelow(folder: string, path: string): boolean {
  return relative(folder, path)
    .split(sep)
    .some((part) => part.startsWith('.'));
}
