import type { LineRole } from '../conversation/blocks.ts';

export type LineStyle = { readonly color?: string; readonly bold?: boolean; readonly dimColor?: boolean };

/** How each kind of line is drawn. The words carry the meaning; without colour all of this falls away. */
const STYLES: Readonly<Record<LineRole, LineStyle>> = {
  title: { color: 'yellow' },
  heading: { bold: true },
  body: {},
  said: { color: 'cyan' },
  note: { color: 'green' },
  warning: { color: 'magenta' },
  quiet: { dimColor: true },
};

export function styleOf(role: LineRole): LineStyle {
  return STYLES[role];
}
