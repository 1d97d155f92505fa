import { execFile } from 'node:child_process';
import { readFile, readlink } from 'node:fs/promises';
import { promisify } from 'node:util';
import { errorCode } from '../../base/error-code.ts';

/** Where in `/proc/PID/stat` the start stands, counted behind the name in brackets (proc(5): field 22). */
const START_FIELD = 19;

/**
 * When a process was started, in whatever words the system has for it: with its number it tells a process from a later
 * one that was given the same number.
 *
 * @returns null where there is no such process, or the system doesn't say
 */
export async function processStart(pid: number): Promise<string | null> {
  try {
    const [stat, boot] = await Promise.all([
      readFile(`/proc/${pid}/stat`, 'utf8'),
      readFile('/proc/sys/kernel/random/boot_id', 'utf8'),
    ]);
    // The name may hold spaces and brackets itself.
    const ticks = stat.slice(stat.lastIndexOf(')') + 2).split(' ')[START_FIELD];
    return `${boot.trim()}/${ticks}`;
  } catch {
    // No Linux, or no such process.
  }
  try {
    const { stdout } = await promisify(execFile)('ps', ['-o', 'lstart=', '-p', `${pid}`], {
      env: { ...process.env, LC_ALL: 'C', TZ: 'UTC' },
    });
    return stdout.trim() || null;
  } catch {
    // No such process, or no such program.
    return null;
  }
}

/** Whether a process of that number runs, no matter whose. */
export function isRunning(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return errorCode(error) === 'EPERM';
  }
}

/** Which numbering of processes this is: containers have one each. Null where the system doesn't say. */
export async function processNumbering(): Promise<string | null> {
  return readlink('/proc/self/ns/pid').catch(() => null);
}
