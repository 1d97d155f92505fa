/** The system's code of an error (`ENOENT`); null for an error without one. */
export function errorCode(error: unknown): string | null {
  return error instanceof Error && 'code' in error && typeof error.code === 'string' ? error.code : null;
}
