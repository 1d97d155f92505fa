import { addedOutside } from '../advice/added-outside.ts';
import type { Advice, Caution, RankedAssembly } from '../advice/advice-schema.ts';
import { speaksFor } from '../advice/speaks-for.ts';
import { isWindowless, NO_WINDOWS } from '../advice/windowless.ts';
import { ended } from '../base/first-letter.ts';
import { fieldWords, valueWords } from '../brief/field-words.ts';
import type { Block, FigureRow } from './blocks.ts';
import { sectionBlocks } from './pictures.ts';
import { costBlocks } from './tell-cost.ts';
import { houseBlocks } from './tell-house.ts';
import { openingBlocks } from './tell-openings.ts';
import { physicsBlocks } from './tell-physics.ts';
import { findOutBlocks, kindLines, robustnessBlocks, scoreBlocks } from './tell-ranking.ts';
import { scheduleBlocks } from './tell-schedule.ts';

export { blocksToText } from './blocks.ts';

/**
 * The answer told as plain structured text: the first choice with its reasons, cautions and figures; the
 * alternatives; what was left out and why; what was assumed; what would change the answer.
 */
export function adviceBlocks(advice: Advice): Block[] {
  return [
    { kind: 'title', text: 'The answer', aside: siteAside(advice) },
    { kind: 'paragraph', text: considered(advice) },
    ...houseBlocks(advice),
    ...list('About the site', advice.site.notes),
    ...(advice.ranked.length === 0 ? nothingPasses(advice) : ranked(advice)),
    ...robustnessBlocks(advice),
    ...comparisonBlocks(advice),
    ...fallbackBlocks(advice),
    ...excludedBlocks(advice),
    ...findOutBlocks(advice),
    ...assumptionBlocks(advice),
    ...changeBlocks(advice),
    ...generalCautions(advice),
    ...recap(advice),
  ];
}

export function siteAside(advice: Advice): string {
  return `zone ${advice.site.climate_zone}, ${advice.code_edition} codes`;
}

export function considered({ considered: { candidates, admitted }, site, name }: Advice): string {
  const walls = candidates.toLocaleString('en-US');
  const passing =
    admitted === 0
      ? 'each of them breaks at least one rule'
      : `${admitted.toLocaleString('en-US')} of them break no rule`;
  return `${name}: ${site.place} (climate zone ${site.climate_zone}, ${site.zone_source}). I drew up ${walls} walls; ${passing}.`;
}

function ranked(advice: Advice): Block[] {
  const [first, ...others] = advice.ranked;
  if (!first) return [];
  return [
    ...firstChoice(first, advice),
    ...(others.length > 0 ? [{ kind: 'title' as const, text: 'Alternatives' }] : []),
    ...others.flatMap((wall) => alternative(wall, first)),
  ];
}

function firstChoice(wall: RankedAssembly, advice: Advice): Block[] {
  return [{ kind: 'title', text: 'First choice' }, ...wholeWall(wall, advice), ...scoreBlocks(wall, advice)];
}

function wholeWall(wall: RankedAssembly, advice: Advice): Block[] {
  return [
    { kind: 'heading', text: wall.title },
    { kind: 'figures', rows: wholeFigures(wall) },
    ...list('Other ways to build the same wall', kindLines(wall)),
    ...list('Why', reasonLines(wall)),
    ...list('Layers, from inside to outside', layerLines(wall)),
    ...sectionBlocks(wall),
    ...physicsBlocks(wall),
    ...scheduleBlocks(wall),
    ...costBlocks(wall, advice),
    ...list('Windows, in this order', wall.buck.flashing_sequence),
    ...openingBlocks(wall),
    ...list('What it asks of the crew', [wall.crew.needed, ...wall.crew.steps]),
    ...list('What it gives up', wall.gives_up),
    ...cautionList('Cautions for this wall', wall.cautions),
  ];
}

export function alternative(wall: RankedAssembly, first: RankedAssembly): Block[] {
  const own = wall.cautions.filter(
    (caution) => !first.cautions.some((other) => isSameCaution(caution, other)),
  );
  const shared = wall.cautions.length - own.length;
  return [
    { kind: 'heading', text: `${wall.rank}. ${wall.title}` },
    { kind: 'figures', rows: keyFigures(wall) },
    ...list('Against the first choice', kindLines(wall)),
    ...list('Why it is in the running', reasonLines(wall).slice(0, 4)),
    ...list('What it gives up', wall.gives_up),
    ...cautionList('Cautions that the first choice does not have', own),
    ...(shared > 0
      ? [{ kind: 'paragraph' as const, text: sharedWords(shared), role: 'warning' as const }]
      : []),
  ];
}

function sharedWords(count: number): string {
  return count === 1
    ? 'One caution of the first choice holds here too.'
    : `${count} cautions of the first choice hold here too.`;
}

/** The same rule speaking, though perhaps with other figures. */
export function isSameCaution(a: Caution, b: Caution): boolean {
  return a.rule === undefined ? a.text === b.text : a.rule === b.rule;
}

export function keyFigures(wall: RankedAssembly): FigureRow[] {
  const { low, likely, high } = wall.installed_cost_usd_per_ft2;
  return [
    {
      label: 'Cost installed',
      value: `about $${money(likely)} a square foot ($${money(low)} to $${money(high)})`,
    },
    { label: 'Heat', value: `U ${figure(wall.u_factor, 3)}, effective R ${figure(wall.r_effective, 1)}` },
    {
      label: 'Added thickness',
      value: `${figure(wall.added_thickness_in, 2)} in. ${addedOutside(wall.layers)}`,
    },
    { label: 'Weight', value: `${figure(wall.weight_psf, 1)} lb per square foot` },
  ];
}

export function wholeFigures(wall: RankedAssembly): FigureRow[] {
  const { insulation, fastening, buck } = wall;
  return [
    { label: 'Cladding', value: `${wall.cladding}; ${wall.attachment}` },
    { label: 'Insulation', value: insulationWords(insulation) },
    { label: 'Rain', value: wall.water_resistive_barrier },
    { label: 'Vapour', value: wall.interior_vapour_retarder },
    { label: 'Fastening', value: fasteningWords(fastening) },
    ...(fastening.support === 'adhered'
      ? []
      : [{ label: 'Load on a fastener', value: loadWords(fastening) }]),
    { label: 'Windows', value: isWindowless(wall) ? NO_WINDOWS : buckWords(buck) },
    ...keyFigures(wall),
  ];
}

function insulationWords(insulation: RankedAssembly['insulation']): string {
  const boards = insulation.board_thicknesses_in.map((t) => `${figure(t, 2)} in.`).join(' + ');
  const layers = insulation.layers === 1 ? 'one layer' : `${insulation.layers} layers (${boards})`;
  return `${insulation.material}, ${figure(insulation.thickness_in, 2)} in. in ${layers}, R ${figure(insulation.r, 1)}`;
}

function fasteningWords(fastening: RankedAssembly['fastening']): string {
  if (fastening.support === 'adhered') return fastening.why;
  const length =
    fastening.length_in === null ? 'length by the engineer' : `${figure(fastening.length_in, 2)} in. long`;
  const table = {
    permitted: 'within the code table',
    'design-required': 'the code table asks for a design here',
    'outside-table': 'outside the code table',
  }[fastening.table_verdict];
  const washer = fastening.washer.replace(/^none\b/, 'no washer');
  return `${fastening.fastener}, ${length}, every ${figure(fastening.spacing_along_stud_in, 1)} in. along studs at ${figure(fastening.stud_spacing_in, 1)} in.; ${fastening.lath_or_furring}; ${washer}; ${table}${onFurringWords(fastening)}`;
}

/** "; into the furring: 11 gauge nail every 6 in., 4 in. at the corners" */
function onFurringWords({ on_furring }: RankedAssembly['fastening']): string {
  if (!on_furring?.fastener || on_furring.field_spacing_in === null) return '';
  const { fastener, field_spacing_in: field, corner_spacing_in: corner } = on_furring;
  const closer = corner === null || corner === field ? '' : `, ${figure(corner, 1)} in. at the corners`;
  return `; into the furring: ${fastener} every ${figure(field, 1)} in.${closer}`;
}

function loadWords(fastening: RankedAssembly['fastening']): string {
  const capacity =
    fastening.wind_capacity_lb === null
      ? 'capacity not known'
      : `capacity ${figure(fastening.wind_capacity_lb, 0)} lb`;
  const weakest = fastening.weakest_link === null ? '' : `. Used most: ${fastening.weakest_link}`;
  return `${figure(fastening.gravity_load_lb, 1)} lb of weight; ${figure(fastening.wind_load_lb, 1)} lb of wind (${capacity})${weakest}`;
}

function buckWords(buck: RankedAssembly['buck']): string {
  const verdict =
    buck.verdict === null
      ? 'not checked'
      : {
          fits: 'carries the windows',
          'does-not-fit': 'does not carry the windows',
          engineer: 'needs an engineer',
        }[buck.verdict];
  return `${buck.label}: ${verdict}. ${buck.why}`;
}

export function reasonLines(wall: RankedAssembly): string[] {
  return speaksFor(wall).map(({ text, rule }) => (rule ? `${text} [${cited(wall, rule)}]` : text));
}

/** Where a rule comes from, in a few words, with its name; one that is recalled says so. */
export function cited(wall: RankedAssembly, rule: string): string {
  const verdict = wall.verdicts.find((candidate) => candidate.rule === rule);
  if (!verdict) return `rule ${rule}`;
  return `${shortCitation(verdict.citation)}; rule ${rule}`;
}

/** The first clause of a citation; the whole stands in the record and in `rules explain`. */
export function shortCitation(citation: string): string {
  const [clause = citation] = citation.split(/[:;(]|\. |, (?=[a-z])/, 1);
  const short = clause.trim().replace(/[.,]$/, '');
  if (citation.endsWith('(from memory, not verified)')) return `${short}, from memory`;
  return citation.includes('from memory') ? `${short}, in part from memory` : short;
}

export function layerLines(wall: RankedAssembly): string[] {
  return wall.layers.map(({ label, thickness_in, r, provenance }) => {
    const parts = [
      thickness_in > 0 ? `${figure(thickness_in, 3)} in.` : null,
      r > 0 ? `R ${figure(r, 2)}` : null,
      provenance === 'memory' ? 'figures from memory' : null,
    ].filter((part) => part !== null);
    return parts.length > 0 ? `${label}: ${parts.join(', ')}` : label;
  });
}

export function cautionList(title: string, cautions: readonly Caution[]): Block[] {
  if (cautions.length === 0) return [];
  return [
    { kind: 'heading', text: title },
    { kind: 'list', items: cautions.map(cautionLine), role: 'warning' },
  ];
}

export function cautionLine({ kind, text, remedy }: Caution): string {
  return `Caution (${kind.replaceAll('-', ' ')}): ${text}${remedy ? ` What to do: ${remedy}` : ''}`;
}

export function nothingPasses(advice: Advice): Block[] {
  return [
    { kind: 'title', text: 'No wall passes' },
    {
      kind: 'paragraph',
      text:
        advice.excluded.length > 0
          ? 'Every wall breaks at least one rule. Below is what comes closest, and what would admit it.'
          : 'Every wall breaks at least one rule, and none comes close enough to name.',
    },
    ...titledList('What would change that', changeLines(advice)),
  ];
}

/** The synthetic finish, which is shown and not ranked. */
export function comparisonBlocks({ comparison }: Advice): Block[] {
  if (!comparison) return [];
  const { low, likely, high } = comparison.installed_cost_usd_per_ft2;
  return [
    { kind: 'title', text: 'For comparison: the synthetic finish' },
    {
      kind: 'paragraph',
      text: `${comparison.title} would pass too: about $${money(likely)} a square foot ($${money(low)} to $${money(high)}), U ${figure(comparison.u_factor, 3)}, ${figure(comparison.weight_psf, 1)} lb per square foot. It is not ranked, because the wall is to do without it.`,
    },
    { kind: 'list', items: [...comparison.gains, ...comparison.gives_up] },
  ];
}

/** The wall that looks like stucco, offered when only true stucco would do and none passes. */
export function fallbackBlocks(advice: Advice): Block[] {
  const { fallback } = advice;
  if (!fallback) return [];
  const { assembly, why } = fallback;
  return [
    { kind: 'title', text: 'Fallback: the look of stucco' },
    { kind: 'paragraph', text: why },
    ...wholeWall(assembly, advice),
  ];
}

export function excludedBlocks(advice: Advice): Block[] {
  if (advice.excluded.length === 0) return [];
  const isNearMiss = advice.ranked.length === 0;
  return [
    { kind: 'title', text: isNearMiss ? 'What comes closest' : 'What was left out, and why' },
    ...advice.excluded.flatMap((wall): Block[] => [
      { kind: 'heading', text: wall.title },
      {
        kind: 'list',
        items: wall.because.map(
          ({ text, citation, rule, remedy }) =>
            `${text} [${shortCitation(citation)}; rule ${rule}]${remedy ? ` What would admit it: ${remedy}` : ''}`,
        ),
      },
    ]),
  ];
}

export function assumptionBlocks(advice: Advice): Block[] {
  if (advice.assumptions.length === 0) return [];
  return [
    { kind: 'title', text: 'What I assumed' },
    {
      kind: 'list',
      items: advice.assumptions.map(({ field, value, why, could_change_answer }) => {
        const weighs = could_change_answer ? ' Another value could change the answer.' : '';
        return `${fieldWords(field)}: ${ended(valueWords(field, value))} ${why}${weighs}`;
      }),
    },
  ];
}

/** Where nothing passes it is told at once, by {@link nothingPasses}. */
export function changeBlocks(advice: Advice): Block[] {
  if (advice.ranked.length === 0) return [];
  return titledList('What would change the answer', changeLines(advice));
}

function changeLines({ would_change_the_answer }: Advice): string[] {
  return would_change_the_answer.map((change) => `If ${change.if}: ${change.then}`);
}

export function generalCautions(advice: Advice): Block[] {
  if (advice.cautions.length === 0) return [];
  return [
    { kind: 'title', text: 'Cautions' },
    { kind: 'list', items: advice.cautions.map(cautionLine), role: 'warning' },
  ];
}

/** The end of a long answer, which is what stays on the screen. */
export function recap({ ranked, fallback }: Advice): Block[] {
  const shown = ranked.length > 0 ? ranked : fallback ? [fallback.assembly] : [];
  if (shown.length === 0) return [];
  const items = shown.map((wall) => {
    const cost = money(wall.installed_cost_usd_per_ft2.likely);
    return `${wall.title}: about $${cost} a square foot, U ${figure(wall.u_factor, 3)}, ${figure(wall.added_thickness_in, 2)} in. thicker, ${figure(wall.weight_psf, 1)} lb per square foot`;
  });
  return [
    {
      kind: 'title',
      text: ranked.length > 0 ? 'In short' : 'In short: no wall passes, this one is the fallback',
    },
    { kind: 'list', items, numbered: true },
  ];
}

function list(title: string, items: readonly string[]): Block[] {
  return items.length === 0
    ? []
    : [
        { kind: 'heading', text: title },
        { kind: 'list', items },
      ];
}

function titledList(title: string, items: readonly string[]): Block[] {
  return items.length === 0
    ? []
    : [
        { kind: 'title', text: title },
        { kind: 'list', items },
      ];
}

function figure(value: number, decimals: number): string {
  return String(Number(value.toFixed(decimals)));
}

function money(value: number): string {
  return value >= 10 ? String(Math.round(value)) : value.toFixed(1);
}
