import { Refusal } from '../../base/refusal.ts';
import type { FramingFraction, FramingStyle, ThermalTable } from './thermal-table.ts';

export type FramingAssumption = FramingFraction & {
  /** Empty where the very spacing is tabulated; else what was taken instead and why. */
  readonly notes: readonly string[];
};

/**
 * The share of wall area that is wood framing, by spacing and framing style.
 *
 * A spacing between two tabulated ones takes the closer-spaced row, which has more framing and so the higher
 * U-factor. Closer than the closest is refused: there is no row on the safe side.
 *
 * @param spacing_in  on center, in.
 * @param style       standard: doubled plates, studs and headers of a usual crew; advanced: stacked framing at
 *                    24 in.; intermediate: between them
 * @throws Refusal for metal framing (no area share exists for it) and spacings closer than tabulated
 *
 * Source: per row, see the table.
 */
export function framingFraction(
  table: ThermalTable,
  material: 'wood' | 'steel',
  spacing_in: number,
  style: FramingStyle = 'standard',
): FramingAssumption {
  if (material !== 'wood') {
    throw new Refusal({
      field: 'material',
      value: `"${material}"`,
      accepted:
        'A framing fraction is for wood; steel framing takes tabulated effective resistances instead.',
    });
  }
  const rows = table.framing_fractions
    .filter((row) => row.style === style && row.spacing_in <= spacing_in)
    .sort((a, b) => b.spacing_in - a.spacing_in);
  const row = rows[0];
  if (!row) {
    const known = table.framing_fractions.filter((r) => r.style === style).map((r) => r.spacing_in);
    throw new Refusal({
      field: 'spacing_in',
      value: String(spacing_in),
      accepted: `Framing fractions for ${style} framing are tabulated from ${Math.min(...known)} in. on center; give the fraction itself.`,
    });
  }
  const notes =
    row.spacing_in === spacing_in
      ? []
      : [
          `No framing fraction is tabulated for ${spacing_in} in. on center; that of ${row.spacing_in} in. was taken, which is on the safe side.`,
        ];
  return { ...row, notes };
}

/** Resistance of a wood stud of this actual depth, h·ft²·°F/Btu: the energy-code convention of per inch. */
export function woodFramingR(table: ThermalTable, depth_in: number): number {
  return table.wood_r_per_in.value * depth_in;
}
