import type { Barrier, SheathingEntry } from './catalogue-schema.ts';

/** What a barrier is called in a wall with that sheathing: without any it lies on the open studs. */
export function barrierLabel(
  { label, label_on_open_studs = label }: Barrier,
  sheathing: SheathingEntry,
): string {
  return isOpen(sheathing) ? label_on_open_studs : label;
}

/** Whether nothing covers the studs. */
export function isOpen({ id }: SheathingEntry): boolean {
  return id === 'none';
}
