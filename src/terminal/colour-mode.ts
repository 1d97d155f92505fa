/** How many colours the terminal is given: none at all, the sixteen basic ones, or all. Decided once, at the start. */
export type ColourMode = 'none' | 'basic' | 'full';
