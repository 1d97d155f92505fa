import { addedOutside } from '../../advice/added-outside.ts';
import type { RankedAssembly } from '../../advice/advice-schema.ts';
import { isWindowless } from '../../advice/windowless.ts';
import { capital } from '../../base/first-letter.ts';
import { inches } from '../../base/inches.ts';
import { provenanceText } from '../../base/provenance.ts';
import { figureText, fixed, numberText, sentence } from '../figure-text.ts';
import { factsOf, listOf, present, type RecordBlock, type TableBlock } from '../record-document.ts';
import { under } from './decision.ts';

/** The layers, numbered inside to outside; the drawing carries the same numbers. */
export function layers(first: RankedAssembly): RecordBlock[] {
  if (first.layers.length === 0) return [];
  const thickness_in = first.layers.reduce((sum, layer) => sum + layer.thickness_in, 0);
  const table: TableBlock = {
    kind: 'table',
    caption: 'Layers, inside to outside',
    columns: [
      { title: 'No.', isNumber: true },
      { title: 'Layer' },
      { title: 'Role' },
      { title: 'Thickness, in.', isNumber: true },
      { title: 'R counted', isNumber: true },
      { title: 'R comes from' },
    ],
    rows: first.layers.map((layer, i) => [
      `${i + 1}`,
      layer.label,
      layer.role,
      layer.thickness_in === 0 ? 'thin' : inches(layer.thickness_in),
      fixed(layer.r, 2),
      provenanceText(layer.provenance),
    ]),
  };
  return [
    {
      kind: 'drawn-wall',
      wall: { layers: first.layers, added_thickness_in: first.added_thickness_in },
      table,
    },
    {
      kind: 'paragraph',
      text: `The wall is ${fixed(thickness_in, 2)} in. thick, ${fixed(first.added_thickness_in, 2)} in. of it ${addedOutside(first.layers)}. Air films count too and outside a drained or ventilated space nothing does, so the layers don't simply add up to the effective R-value.`,
    },
  ];
}

const TABLE_VERDICTS: Readonly<Record<RankedAssembly['fastening']['table_verdict'], string>> = {
  permitted: 'permitted by the code table',
  'design-required': 'the code table asks for an engineered design',
  'outside-table': 'outside the code table: a design professional decides',
};

export function fastening({ fastening: f }: RankedAssembly): RecordBlock[] {
  return present([
    factsOf(
      f.support === 'adhered'
        ? [{ label: 'Fastener', value: f.fastener }]
        : [
            { label: 'Fastener', value: f.fastener },
            {
              label: 'Length',
              value:
                f.length_in === null
                  ? 'no standard length is known to be enough'
                  : `${inches(f.length_in)} in.`,
            },
            {
              label: 'Spacing',
              value: `${numberText(f.spacing_along_stud_in)} in. along each stud, studs ${numberText(f.stud_spacing_in)} in. on center`,
            },
            { label: 'Washer', value: f.washer },
            { label: 'Lath or furring', value: f.lath_or_furring },
            { label: 'Count', value: `${numberText(f.count_per_100_ft2)} per 100 ft² of wall` },
            { label: 'Code table', value: tableText(f) },
            { label: 'Load on each fastener, weight', value: figureText(f.gravity_load_lb, 'lb') },
            {
              label: 'Load on each fastener, wind',
              value: `${figureText(f.wind_load_lb, 'lb')}; it holds ${f.wind_capacity_lb === null ? 'an unknown load' : figureText(f.wind_capacity_lb, 'lb')}`,
            },
          ],
    ),
    f.why === '' ? null : { kind: 'paragraph', text: sentence(f.why) },
  ]);
}

function tableText({ table_verdict, max_insulation_in }: RankedAssembly['fastening']): string {
  const most = max_insulation_in === null ? '' : `, insulation up to ${inches(max_insulation_in)} in.`;
  return `${TABLE_VERDICTS[table_verdict]}${most}`;
}

const BUCK_VERDICTS = {
  fits: 'it fits',
  'does-not-fit': 'it does not fit',
  engineer: 'an engineer decides',
} as const;

export function openings(wall: RankedAssembly): RecordBlock[] {
  if (isWindowless(wall)) return [{ kind: 'paragraph', text: 'No windows in this wall.' }];
  const { buck } = wall;
  return present([
    factsOf([
      { label: 'Buck', value: capital(buck.label) },
      { label: 'Projection', value: `${inches(buck.projection_in)} in.` },
      {
        label: 'Verdict',
        value: buck.verdict === null ? 'not known' : BUCK_VERDICTS[buck.verdict],
      },
      buck.utilisation === null
        ? null
        : { label: 'Use of its strength', value: `${Math.round(buck.utilisation * 100)} %` },
      buck.screws_per_side === null
        ? null
        : { label: 'Screws on each side', value: numberText(buck.screws_per_side) },
      buck.min_screw_length_in === null
        ? null
        : { label: 'Shortest screw', value: `${inches(buck.min_screw_length_in)} in.` },
    ]),
    buck.why === '' ? null : { kind: 'paragraph', text: sentence(buck.why) },
    ...under(
      'Flashing, in this order',
      listOf(
        buck.flashing_sequence.map((text) => ({ text })),
        true,
      ),
    ),
  ]);
}
