/** Layer roles that have a line pattern of their own, as sections are usually hatched; others stay blank. */
const PATTERNS: Readonly<Record<string, string>> = {
  finish: '<circle cx="2" cy="2" r="1"/><circle cx="7" cy="6" r="1"/>',
  insulation: '<path d="M0 0 L10 10 M10 0 L0 10"/>',
  framing: '<path d="M0 5 C3 1 7 9 10 5"/>',
  sheathing: '<path d="M0 10 L10 0"/>',
  drainage: '<path d="M3 0 V6 M8 4 V10"/>',
  furring: '<path d="M0 2 H10 M0 7 H10"/>',
  lath: '<path d="M0 5 H10 M5 0 V10"/>',
};

/** Definitions of the patterns that a drawing uses; `id` keeps those of two drawings apart. */
export function patternDefs(id: string, roles: readonly string[]): string {
  return [...new Set(roles)]
    .filter((role) => Object.hasOwn(PATTERNS, role))
    .map(
      (role) =>
        `<pattern id="${id}-${role}" class="pattern" width="10" height="10" patternUnits="userSpaceOnUse">${PATTERNS[role]}</pattern>`,
    )
    .join('');
}

/** What to fill a layer of this role with. */
export function patternFill(id: string, role: string): string {
  return Object.hasOwn(PATTERNS, role) ? `url(#${id}-${role})` : 'none';
}
