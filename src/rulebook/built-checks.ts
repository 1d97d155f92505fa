import type { CheckedFile } from './checked-files.ts';

/** The shipped files as the build found them. The bundler fills them in; run from source, every file is checked. */
export const BUILT_CHECKS: Readonly<Record<string, CheckedFile>> = {};
