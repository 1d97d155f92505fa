/** Inches as a builder writes them: 3, 2-1/2, 1-9/16 only where sixteenths fit, else decimals. */
export function inches(value_in: number): string {
  if (Number.isNaN(value_in)) return 'not known';
  const sixteenths = Math.round(value_in * 16);
  if (Math.abs(sixteenths / 16 - value_in) > 1e-6) return `${Number(value_in.toFixed(2))}`;
  const whole = Math.floor(sixteenths / 16);
  let top = sixteenths % 16;
  if (top === 0) return `${whole}`;
  let bottom = 16;
  while (top % 2 === 0) {
    top /= 2;
    bottom /= 2;
  }
  return whole > 0 ? `${whole}-${top}/${bottom}` : `${top}/${bottom}`;
}
