import { parseInput } from '../base/parse-input.ts';
import { Refusal, showValue } from '../base/refusal.ts';
import { type FirmFraming, firmFramingSchema } from './firm-file.ts';

/** "wood 5.5 at 16", with what else is given: "steel 6 at 16, 54 mil, R-21"; the firm's own name goes before. */
export function framingText({
  name,
  material,
  depth_in,
  spacing_in,
  steel_thickness_mil,
  cavity_insulation_r,
}: FirmFraming): string {
  if (name !== undefined) return name;
  const filling = cavity_insulation_r === undefined ? '' : `, R-${cavity_insulation_r}`;
  const steel = steel_thickness_mil === undefined ? '' : `, ${steel_thickness_mil} mil`;
  return `${material} ${depth_in} at ${spacing_in}${steel}${filling}`;
}

const WORD = /^(wood|steel)-(\d+(?:\.\d+)?)-(\d+(?:\.\d+)?)(?:-(\d+)mil)?(?:-r(\d+(?:\.\d+)?))?$/i;

/**
 * Reads `wood-5.5-16`, `steel-6-16-54mil` with the thickness of the steel, and `wood-5.5-16-r21` with the R-value between
 * the studs.
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
        'Give material, actual depth and spacing in inches, for example wood-5.5-16 or steel-6-16; after it -54mil for the thickness of steel studs and -r21 for the insulation between the studs.',
    });
  }
  const [, material = '', depth, spacing, mil, cavity] = match;
  return parseInput(
    firmFramingSchema,
    {
      material: material.toLowerCase(),
      depth_in: Number(depth),
      spacing_in: Number(spacing),
      ...(mil === undefined ? {} : { steel_thickness_mil: Number(mil) }),
      ...(cavity === undefined ? {} : { cavity_insulation_r: Number(cavity) }),
    },
    `${field} ${text}`,
  );
}
