import { addedOutside } from '../../advice/added-outside.ts';
import type { Advice, RankedAssembly } from '../../advice/advice-schema.ts';
import { speaksFor } from '../../advice/speaks-for.ts';
import { isWindowless, NO_WINDOWS } from '../../advice/windowless.ts';
import { capital } from '../../base/first-letter.ts';
import { inches } from '../../base/inches.ts';
import { fixed, keyWords, numberText, priceText, sentence, wholeWallUsd } from '../figure-text.ts';
import { factsOf, listOf, present, type RecordBlock, tableOf } from '../record-document.ts';

/** The first choice and why; or that nothing passes, and what comes closest. */
export function decision(advice: Advice): RecordBlock[] {
  const first = advice.ranked[0];
  return first ? chosen(first, advice) : nothingPasses(advice);
}

function chosen(first: RankedAssembly, advice: Advice): RecordBlock[] {
  return [
    { kind: 'paragraph', isStrong: true, text: `First choice: ${sentence(first.title)}` },
    { kind: 'paragraph', text: sentence(consideredText(advice)) },
    ...wallBlocks(first),
  ];
}

/** The scores of a wall, one by one, with the weight of each. */
export function scores(wall: RankedAssembly, { weights }: Advice): RecordBlock[] {
  return present([scoreTable(wall, weights)]);
}

function scoreTable(first: RankedAssembly, weights: Advice['weights']): RecordBlock | null {
  const parts = Object.entries(first.scores).map(([key, score]) => {
    const weight = weights?.[key];
    return [capital(keyWords(key)), fixed(score, 2), weight === undefined ? '' : numberText(weight)];
  });
  if (parts.length === 0) return null;
  return tableOf(
    'Scores from 0 (worst) to 1 (best)',
    [{ title: 'Criterion' }, { title: 'Score', isNumber: true }, { title: 'Weight', isNumber: true }],
    [...parts, ['All, weighted', fixed(first.score, 2), '']],
  );
}

function nothingPasses(advice: Advice): RecordBlock[] {
  const closest = advice.excluded[0];
  return present([
    {
      kind: 'paragraph',
      isStrong: true,
      text: 'None of the walls passes every rule. Nothing is recommended as things stand.',
    },
    { kind: 'paragraph', text: sentence(consideredText(advice)) },
    ...under(
      'What comes closest',
      closest
        ? listOf(
            closest.because.length > 0
              ? closest.because.map((why) => ({ lead: closest.title, text: why.text, aside: why.rule }))
              : [{ text: closest.title }],
          )
        : null,
    ),
    ...under(
      'What would admit it',
      closest ? listOf(closest.because.map((why) => ({ text: why.remedy, aside: why.rule }))) : null,
    ),
    ...(advice.fallback ? fallback(advice.fallback) : []),
  ]);
}

/** The wall to build when the wish gives way; what it gives up is said with it. */
function fallback({ why, assembly }: NonNullable<Advice['fallback']>): RecordBlock[] {
  return present([
    { kind: 'subheading', text: 'The fallback' },
    { kind: 'paragraph', text: why },
    { kind: 'paragraph', isStrong: true, text: `Fallback: ${sentence(assembly.title)}` },
    ...wallBlocks(assembly),
  ]);
}

/** What a wall is made of, why it, and what it gives up. */
function wallBlocks(wall: RankedAssembly): RecordBlock[] {
  return present([
    factsOf([
      { label: 'Cladding', value: wall.cladding },
      { label: 'Hung by', value: wall.attachment },
      { label: 'Exterior insulation', value: insulationText(wall) },
      { label: 'Interior vapour retarder', value: wall.interior_vapour_retarder },
      { label: 'Water-resistive barrier', value: wall.water_resistive_barrier },
      {
        label: isWindowless(wall) ? 'Windows' : 'Windows carried by',
        value: isWindowless(wall) ? NO_WINDOWS : wall.buck.label,
      },
      { label: 'U-factor of the wall', value: `${fixed(wall.u_factor, 3)} Btu/(h·ft²·°F)` },
      { label: 'Effective R-value', value: fixed(wall.r_effective, 1) },
    ]),
    ...under('Because', listOf(speaksFor(wall).map(withRule))),
    ...under('What it gives up', listOf(wall.gives_up.map((text) => ({ text })))),
    ...under(
      'Other ways to build the same wall',
      wall.folded && wall.folded.count > 1 ? listOf([{ text: wall.folded.words }]) : null,
    ),
  ]);
}

function consideredText({ considered }: Advice): string {
  const walls = considered.candidates === 1 ? 'wall was' : 'walls were';
  const passed = considered.admitted === 0 ? 'none' : numberText(considered.admitted);
  return `${numberText(considered.candidates)} ${walls} drawn up; ${passed} passed every rule`;
}

/** `mineral wool board, 3 in. in 2 layers (1-1/2 + 1-1/2 in.), R-12.6` */
export function insulationText({ insulation }: RankedAssembly): string {
  const { material, layers, board_thicknesses_in: boards, thickness_in, r } = insulation;
  const build = layers > 1 ? ` in ${layers} layers (${boards.map(inches).join(' + ')} in.)` : '';
  return `${material}, ${inches(thickness_in)} in.${build}, R-${fixed(r, 1)}`;
}

export function costAndWeight(first: RankedAssembly, wall_area_ft2: number | null): RecordBlock[] {
  const price = first.installed_cost_usd_per_ft2;
  return present([
    factsOf([
      { label: 'Installed cost', value: priceText(price) },
      first.cost_parts.length === 0
        ? null
        : {
            label: 'Made up of',
            value: first.cost_parts
              .map(({ label, usd_per_ft2 }) => `${label} $${fixed(usd_per_ft2.likely, 2)}`)
              .join('; '),
          },
      wall_area_ft2 === null
        ? null
        : {
            label: `For ${numberText(wall_area_ft2)} ft² of wall`,
            value: `about ${wholeWallUsd(price.likely, wall_area_ft2)} (from ${wholeWallUsd(price.low, wall_area_ft2)} to ${wholeWallUsd(price.high, wall_area_ft2)})`,
          },
      {
        label: 'Added thickness',
        value: `${inches(first.added_thickness_in)} in. ${addedOutside(first.layers)}`,
      },
      { label: 'Weight', value: `${fixed(first.weight_psf, 1)} psf` },
    ]),
    { kind: 'paragraph', text: 'The prices are for comparing walls. Get quotes before deciding on cost.' },
  ]);
}

export function crew({ crew: asked }: RankedAssembly): RecordBlock[] {
  return present([
    factsOf([
      { label: 'Crew needed', value: asked.needed },
      asked.trades.length > 0 ? { label: 'Trades', value: asked.trades.join(', ') } : null,
    ]),
    ...under(
      'Order of work',
      listOf(
        asked.steps.map((text) => ({ text })),
        true,
      ),
    ),
  ]);
}

function withRule({ text, rule }: { text: string; rule?: string | undefined }) {
  return rule === undefined ? { text } : { text, aside: rule };
}

/** A subheading with its block; neither when the block is missing. */
export function under(heading: string, block: RecordBlock | null): RecordBlock[] {
  return block ? [{ kind: 'subheading', text: heading }, block] : [];
}
