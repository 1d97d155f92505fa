import type { ColourMode } from '../terminal/colour-mode.ts';

export type { ColourMode } from '../terminal/colour-mode.ts';

/** The colour flag of the command line; null when none was given. */
export type ColourFlag = 'always' | 'never' | null;

/**
 * Decides colour once, before any library that writes colour is loaded; the libraries do not heed `NO_COLOR`
 * themselves. In this order: flag, `NO_COLOR` (present and not empty), `FORCE_COLOR`, `TERM=dumb`, terminal or not.
 */
export function decideColour(
  env: Readonly<Record<string, string | undefined>>,
  flags: { readonly colour: ColourFlag },
  isTTY: boolean,
): ColourMode {
  if (flags.colour === 'never') return 'none';
  if (flags.colour === 'always') return depthOf(env);
  if (env.NO_COLOR) return 'none';
  const forced = env.FORCE_COLOR;
  if (forced !== undefined) {
    if (forced === '0' || forced === 'false') return 'none';
    return forced === '2' || forced === '3' ? 'full' : depthOf(env);
  }
  if (env.TERM === 'dumb' || !isTTY) return 'none';
  return depthOf(env);
}

function depthOf(env: Readonly<Record<string, string | undefined>>): ColourMode {
  const isRich = /^(?:truecolor|24bit)$/.test(env.COLORTERM ?? '') || /256color/.test(env.TERM ?? '');
  return isRich ? 'full' : 'basic';
}
