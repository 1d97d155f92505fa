import { parseInput } from '../base/parse-input.ts';
import { Refusal, showValue } from '../base/refusal.ts';
import { type FirmFraming, firmFramingSchema } from './firm-file.ts';

/** "wood 5.5 at 16", with the filling when it is given: "wood 5.5 at 16, R-21"; the firm's own name goes before. */
export function framingText({
  name,
  material,
  depth_in,
  spacing_in,
  cavity_insulation_r,
}: FirmFraming): string {
  if (name !== undefined) return name;
  const filling = cavity_insulation_r === undefined ? '' : `, R-${cavity_insulation_r}`;
  return `${material} ${depth_in} at ${spacing_in}${filling}`;
}

const WORD = /^(wood|steel)-(\d+(?:\.\d+)?)-(\d+(?:\.\d+)?)(?:-r(\d+(?:\.\d+)?))?$/i;

/**
 * Reads `wood-5.5-16`, or `wood-5.5-16-r21` with the R-value between the studs.
 *
 * @throws Refusal for anything else, and for studs out of range
 */
export function readFraming(text: string, field: string): FirmFraming {
  const match = WORD.exec(text);
  if (!match) {
    throw new Refusal({
      field,
      value: showValue(text),
      accepted:
        'Give material, actual depth and spacing in inches, for example wood-5.5-16 or steel-6-16, and -r21 after it for the insulation between the studs.',
    });
  }
  const [, material = '', depth, spacing, cavity] = match;
  return parseInput(
    firmFramingSchema,
    {
      material: material.toLowerCase(),
      depth_in: Number(depth),
      spacing_in: Number(spacing),
      ...(cavity === undefined ? {} : { cavity_insulation_r: Number(cavity) }),
    },
    `${field} ${text}`,
  );
}
