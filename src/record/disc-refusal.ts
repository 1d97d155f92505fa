import { errorCode } from '../base/error-code.ts';
import { Refusal, showValue } from '../base/refusal.ts';

const A_FOLDER = 'Give a folder that exists or can be made.';

const WHAT_WOULD_DO: Readonly<Record<string, string>> = {
  ENOTDIR: `There is a file where a folder is needed. ${A_FOLDER}`,
  EEXIST: `There is a file where a folder is needed. ${A_FOLDER}`,
  ENOENT: `The folder can't be made there. ${A_FOLDER}`,
  ENAMETOOLONG: 'The path is too long. Give a shorter one.',
  ELOOP: `The path leads in a circle. ${A_FOLDER}`,
  EACCES: 'Writing there is not allowed. Give a folder that you may write to.',
  EPERM: 'Writing there is not allowed. Give a folder that you may write to.',
  EROFS: 'That disc can only be read. Give a folder that you may write to.',
  ENOSPC: 'The disc is full. Free some room, or give a folder on another disc.',
  EDQUOT: 'Your share of the disc is used up. Free some room, or give a folder on another disc.',
  EFBIG: 'The file system takes no file of this size. Give a folder on another disc.',
  EIO: 'The disc reports a fault. Give a folder on another disc.',
  EMFILE: 'Too many files are open. Close some programs and save again.',
  ENFILE: 'Too many files are open. Close some programs and save again.',
};

/** A system error as something the user can mend; the error itself for what isn't theirs to mend. */
export function discRefusal(error: unknown, field: string, dir: string): unknown {
  const code = errorCode(error);
  if (code === null || !/^E[A-Z0-9]+$/.test(code)) return error;
  const accepted = WHAT_WOULD_DO[code] ?? `It could not be written (${code}). ${A_FOLDER}`;
  return new Refusal({ field, value: showValue(dir), accepted });
}
