import type { Advice, Figure, RankedAssembly } from '../../advice/advice-schema.ts';
import type { Opening } from '../../advice/openings-schema.ts';
import { fastenerWords, STEP_VERDICT_WORDS, spacingWords } from '../../advice/schedule-words.ts';
import { capital } from '../../base/first-letter.ts';
import { inches } from '../../base/inches.ts';
import { fieldsWordsWithUnit } from '../../brief/field-words.ts';
import { budgetCheck, notInThePrice, quotesFor } from '../bids.ts';
import { DETAIL_PARTS } from '../drawing/opening-detail.ts';
import { figureText, numberText, sentence } from '../figure-text.ts';
import { factsOf, present, type RecordBlock, tableOf } from '../record-document.ts';
import type { DecisionRecord } from '../record-schema.ts';
import { assumedWords } from './scenario-words.ts';

/** Only the assumptions that could change the answer: what somebody has to settle before ordering. */
export function toSettle({ advice }: DecisionRecord): RecordBlock[] {
  const open = advice.assumptions.filter(({ could_change_answer }) => could_change_answer);
  if (open.length === 0) return [];
  const rest = advice.assumptions.length - open.length;
  return present([
    tableOf(
      'Taken as given; settle these before ordering material, they could change the answer',
      [{ title: 'What' }, { title: 'Taken as' }, { title: 'Why' }],
      takenAlike(open).map(([{ value, why }, fields]) => [
        fieldsWordsWithUnit(fields),
        assumedWords(fields[0] ?? '', value),
        why,
      ]),
    ),
    rest === 0
      ? null
      : {
          kind: 'paragraph',
          text: `${rest} more ${rest === 1 ? 'assumption was' : 'assumptions were'} made that would not change the answer; the appendix lists ${rest === 1 ? 'it' : 'them'}.`,
        },
  ]);
}

type Assumption = DecisionRecord['advice']['assumptions'][number];

/** What was taken in the same words for the same reason stands together: every kind of window, often. */
function takenAlike(assumptions: readonly Assumption[]): [Assumption, string[]][] {
  const groups = new Map<string, [Assumption, string[]]>();
  for (const one of assumptions) {
    const key = JSON.stringify([one.value, one.why]);
    const group = groups.get(key);
    if (group) group[1].push(one.field);
    else groups.set(key, [one, [one.field]]);
  }
  return [...groups.values()];
}

/** The lines of the schedule as somebody on site reads them, with the pattern drawn. */
export function scheduleInBrief(wall: RankedAssembly): RecordBlock[] {
  const { steps, why, corner_zone } = wall.fastening_schedule;
  return present([
    {
      kind: 'drawing',
      drawing: { kind: 'elevation', wall },
      table: fastenerTable(steps),
    },
    { kind: 'paragraph', text: `${sentence(why)} ${sentence(corner_zone.text)}` },
  ]);
}

/** One line for each line of the schedule: what, with what, how far apart in field and corner. */
export function fastenerTable(steps: RankedAssembly['fastening_schedule']['steps']) {
  return {
    kind: 'table' as const,
    caption: 'Fastener schedule by zone',
    columns: [
      { title: 'Line', isNumber: true },
      { title: 'Fixes' },
      { title: 'Fastener and length' },
      { title: 'Washer' },
      { title: 'Field' },
      { title: 'Corners' },
      { title: 'Verdict' },
    ],
    rows: steps.map((step) => {
      const zone = (name: string) => step.zones.find((one) => one.zone === name);
      const [field, corner] = [zone('field'), zone('corner')];
      return [
        `${step.step}`,
        `${step.fixes}, to ${step.to}`,
        fastenerWords(step),
        step.washer,
        field ? spacingWords(field) : 'none',
        corner ? spacingWords(corner) : 'none',
        STEP_VERDICT_WORDS[step.verdict],
      ];
    }),
  };
}

/** The worst window drawn at sill, jamb and head, and every kind of window in a line. */
export function openingsInBrief(wall: RankedAssembly): RecordBlock[] {
  const { openings, buck } = wall;
  const drawn = openings.find(({ is_worst }) => is_worst) ?? openings[0];
  return present([
    drawn
      ? {
          kind: 'drawing',
          drawing: { kind: 'details', wall, opening: drawn },
          table: {
            kind: 'table',
            caption: `What the numbers name (${drawn.window}; depth of the frame nominal, measure the unit)`,
            columns: [{ title: 'No.', isNumber: true }, { title: 'Part' }],
            rows: Object.entries(DETAIL_PARTS).map(([number, part]) => [
              number,
              number === '2' ? `${part}: ${drawn.carried_by.label}` : part,
            ]),
          },
        }
      : null,
    tableOf(
      'Every kind of window',
      [
        { title: 'Window' },
        { title: 'Count', isNumber: true },
        { title: 'Weight, lb', isNumber: true },
        { title: 'Carried by' },
        { title: 'Verdict' },
        { title: 'Screws' },
        { title: 'Rough opening, in.' },
      ],
      openings.map((opening) => [
        opening.window,
        numberText(opening.count),
        numberText(opening.weight_lb.high),
        opening.carried_by.label,
        VERDICTS[opening.verdict],
        screwWords(opening),
        `${inches(opening.rough_opening_needed_in.width_in)} x ${inches(opening.rough_opening_needed_in.height_in)}`,
      ]),
    ),
    buck.why === '' ? null : { kind: 'paragraph', text: sentence(buck.why) },
    drawn ? { kind: 'paragraph', text: sentence(drawn.room.advice) } : null,
    buck.flashing_sequence.length === 0
      ? null
      : {
          kind: 'paragraph',
          text: 'The flashing, step by step with its hold points, stands on the build sheet and in the appendix.',
        },
  ]);
}

const VERDICTS: Readonly<Record<Opening['verdict'], string>> = {
  fits: 'it fits',
  'does-not-fit': 'it does not fit',
  engineer: 'an engineer decides',
};

function screwWords({ screw, screws_per_side, screw_spacing_in, screw_length_in }: Opening): string {
  if (screw === null) return 'by the engineer or the maker';
  const length = screw_length_in === null ? '' : `, ${inches(screw_length_in)} in.`;
  const side = screws_per_side === null ? '' : `; ${screws_per_side} a side`;
  const spacing = screw_spacing_in === null ? '' : `, ${inches(screw_spacing_in)} in. apart`;
  return `${screw}${screw.includes(' in.') ? '' : length}${side}${spacing}`;
}

/** Whether the cost fits the budget, from when the prices are, and what to ask quotes for. */
export function budget(wall: RankedAssembly, { scenario, advice }: DecisionRecord): RecordBlock[] {
  const given = scenario.budget_usd_per_ft2;
  const check = budgetCheck(wall.installed_cost_usd_per_ft2, typeof given === 'number' ? given : null);
  const cost = wall.figures.find(({ id }) => id === 'installed-cost');
  return present([
    { kind: 'paragraph', isStrong: true, text: `Budget check: ${check}` },
    factsOf([
      cost
        ? {
            label: 'Prices',
            value: `${cost.method}; ${cost.source.join('; ')}${cost.note ? `; ${cost.note}` : ''}`,
          }
        : null,
      { label: 'Not in that price', value: notInThePrice(advice, wall).join('; ') },
      {
        label: 'Get quotes for',
        value: `${quotesFor(wall, advice).join('; ')}. Give each bidder the build sheet and its take-off.`,
      },
    ]),
  ]);
}

/** Figures that decide, with how they were come by. */
const KEY_FIGURES = [
  'u-factor',
  'max-u-factor',
  'sheathing-temp',
  'indoor-dew-point',
  'condensate-peak',
  'wind',
  'fastener-gravity-use',
  'fastener-wind-use',
  'cladding-weight',
  'installed-cost',
];

export function keyFigures({ figures }: RankedAssembly): RecordBlock[] {
  const chosen = KEY_FIGURES.flatMap((id) => figures.find((figure) => figure.id === id) ?? []);
  const rows = chosen.length > 0 ? chosen : figures;
  const more = figures.length - rows.length;
  return present([
    tableOf(
      'Figures that decide, with method and source',
      [{ title: 'Figure' }, { title: 'Value', isNumber: true }, { title: 'Method' }, { title: 'Source' }],
      rows.map((figure) => [
        capital(figure.what),
        figureText(figure.value, figure.unit),
        figure.method,
        sourceWords(figure),
      ]),
    ),
    more > 0
      ? {
          kind: 'paragraph',
          text: `${more} more figures stand in the appendix, all with method, source and notes.`,
        }
      : null,
  ]);
}

/** Sources are cut for print; the appendix has them whole. */
const LONGEST_SOURCE = 80;

function sourceWords({ source, note }: Figure): string {
  const whole = source.length > 0 ? source.join('; ') : 'no source';
  const cut =
    whole.length > LONGEST_SOURCE ? `${whole.slice(0, LONGEST_SOURCE).replace(/\s\S*$/, '')} …` : whole;
  const isRemembered = /from memory/i.test(`${note ?? ''} ${whole}`);
  // What is cut off may be the very words that own up to it.
  if (!isRemembered || /from memory/i.test(cut)) return cut;
  return `${cut} (${/^from memory/i.test(note ?? '') ? '' : 'partly '}from memory)`;
}

/** What was left out, one line for each reason. */
export function excludedInBrief({ excluded }: Advice): RecordBlock[] {
  const groups = new Map<string, { titles: string[]; because: (typeof excluded)[number]['because'] }>();
  for (const { title, because } of excluded) {
    const reasons = JSON.stringify(because);
    groups.set(reasons, { titles: [...(groups.get(reasons)?.titles ?? []), title], because });
  }
  return present([
    tableOf(
      'Left out, by what, and what would let it in',
      [{ title: 'Wall' }, { title: 'Because' }, { title: 'What would admit it' }],
      [...groups.values()].map(({ titles, because }) => [
        titles.join('; '),
        because.length === 0 ? 'no reason recorded' : reasonWords(because),
        because[0]?.remedy ?? '',
      ]),
    ),
  ]);
}

function reasonWords(because: Advice['excluded'][number]['because']): string {
  const [whole, ...more] = because;
  if (!whole) return '';
  // Its first sentence; the appendix has the rest.
  const first = { ...whole, text: /^.*?[a-z0-9)][.](?=\s|$)/.exec(whole.text)?.[0] ?? whole.text };
  return more.length === 0
    ? `${first.text} (${first.rule})`
    : `${first.text} (${first.rule}) And ${more.length} more: ${more.map(({ rule }) => rule).join(', ')}.`;
}

/** How many rules said what; the list is in the appendix. */
export function traceInBrief({ verdicts }: RankedAssembly, { rules }: Advice): RecordBlock[] {
  const count = (verdict: string) => verdicts.filter((one) => one.verdict === verdict).length;
  const memory = verdicts.filter((one) => one.provenance === 'memory' && one.verdict !== 'pass').length;
  return present([
    {
      kind: 'paragraph',
      text: `${verdicts.length} rules from ${rules.packs.length} packs judged this wall: ${count('forbid')} forbid it, ${count('undecided')} could not decide (what they wait for stands among the cautions), ${count('caution')} warn, ${count('prefer')} speak for it, ${count('pass')} pass. ${memory === 0 ? 'None' : `${memory}`} of those that spoke ${memory === 1 ? 'rests' : 'rest'} on a text from memory that nobody has verified.`,
    },
  ]);
}
