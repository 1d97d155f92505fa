/** Columns that drawings are made for: a window of 80, and one of 60. Narrower ones get the figures in words. */
export const DRAWN_WIDTH = 76;
export const NARROW_WIDTH = 58;
