import type { Advice, Caution, RankedAssembly } from '../advice/advice-schema.ts';
import { fastenerWords, STEP_VERDICT_WORDS, spacingWords } from '../advice/schedule-words.ts';
import { speaksFor } from '../advice/speaks-for.ts';
import { ended } from '../base/first-letter.ts';
import { inches } from '../base/inches.ts';
import { listed } from '../base/listed.ts';
import { budgetCheck, isRetrofit, notInThePrice, quotesFor, saysRule } from '../record/bids.ts';
import { dollars, wholeWallUsd } from '../record/figure-text.ts';
import { whoMustSign } from '../record/status/who-must-sign.ts';
import type { Block } from './blocks.ts';
import { note, titledList, warning } from './notes.ts';
import { partsOfCost } from './tell-cost.ts';
import { plainCaution } from './tell-homeowner.ts';
import { findOutBlocks, PLAIN_TIE } from './tell-ranking.ts';
import { nothingPassesBlocks } from './tell-short-answers.ts';

const MOST_REASONS = 3;

/** Where the wall itself may fail or hurt somebody; care on site and good practice are told by "cautions". */
const WEAK_POINTS: readonly Caution['kind'][] = ['structural', 'moisture', 'fire', 'energy', 'data'];

/** "Is it sane?": what the rules say of the first choice, its weak points, what is open and who must answer for it. */
export function soundBlocks(advice: Advice): Block[] {
  const [wall] = advice.ranked;
  if (!wall) return nothingPassesBlocks(advice);
  const undecided = wall.verdicts.filter(({ verdict }) => verdict === 'undecided').map(({ rule }) => rule);
  const weak = wall.cautions.filter(
    ({ kind, rule }) => WEAK_POINTS.includes(kind) || undecided.some((one) => one === rule),
  );
  const designer = whoMustSign(advice).find(({ role, must }) => role === 'designer' && must);
  return [
    { kind: 'title', text: 'Is it a sound plan?' },
    { kind: 'paragraph', text: soundWords(wall, undecided.length) },
    ...titledList(
      'What speaks for it',
      speaksFor(wall)
        .slice(0, MOST_REASONS)
        .map(({ text }) => text),
    ),
    ...(weak.length > 0
      ? [
          { kind: 'heading' as const, text: 'Its weak points' },
          { kind: 'list' as const, items: weak.map(plainCaution), role: 'warning' as const },
        ]
      : []),
    ...findOutBlocks(advice),
    ...tieBlocks(advice),
    warning(
      `Caution: sound on paper is not yet safe to build. ${designer ? `A designer must sign: ${ended(designer.why)} ` : ''}Local code, the building department and licensed professionals decide. "cautions" tells all there is to beware of.`,
    ),
  ];
}

function soundWords({ title, verdicts }: RankedAssembly, undecided: number): string {
  const cautions = verdicts.filter(({ verdict }) => verdict === 'caution').length;
  const open =
    undecided === 0
      ? ''
      : ` ${undecided} cannot be decided with what is known, and ${undecided === 1 ? 'counts' : 'count'} as open, not as kept.`;
  return `By the rules that I hold walls against: yes, if what stands below is heeded. ${title} breaks none of the ${verdicts.length} rules that apply. ${cautions} of them ${cautions === 1 ? 'asks' : 'ask'} for care.${open}`;
}

function tieBlocks({ ranked }: Advice): Block[] {
  const ties = ranked.filter(({ tie_with_first }) => tie_with_first);
  return titledList(
    'As good as this one',
    ties.map(({ rank, title }) => `${rank}. ${title}: ${PLAIN_TIE}`),
  );
}

/** "Is it affordable?": dollars for the whole wall, and what these dollars do not pay for. */
export function affordBlocks(advice: Advice, budget_usd_per_ft2: number | null): Block[] {
  const [wall, ...others] = advice.ranked;
  if (!wall) return nothingPassesBlocks(advice);
  const area_ft2 = wall.thermal.assumptions.wall_area_ft2;
  const isAssumed = advice.assumptions.some(({ field }) => field === 'wall_area_ft2');
  const { low, likely, high } = wall.installed_cost_usd_per_ft2;
  const prices = wall.figures.find(({ id }) => id === 'installed-cost');
  return [
    { kind: 'title', text: 'Is it affordable?' },
    {
      kind: 'paragraph',
      text: `The first choice comes to about ${wholeWallUsd(likely, area_ft2)} for ${area(area_ft2)} of wall; from ${wholeWallUsd(low, area_ft2)} to ${wholeWallUsd(high, area_ft2)}. That is ${dollars(likely)} a square foot (${dollars(low)} to ${dollars(high)}) times the area, rounded to hundreds.`,
    },
    ...(isAssumed
      ? [
          note(
            'I assumed the area. Say how much wall there is, as in "1800 sq ft", and I count again: measure the outside walls.',
          ),
        ]
      : []),
    ...(budget_usd_per_ft2 === null
      ? [note('You gave no budget to hold that against: "$30 a foot", or "25k total".')]
      : [
          {
            kind: 'paragraph' as const,
            text: `${budgetCheck(wall.installed_cost_usd_per_ft2, budget_usd_per_ft2)} For the whole wall your budget is ${wholeWallUsd(budget_usd_per_ft2, area_ft2)}.`,
          },
        ]),
    ...titledList(
      'The others',
      others.map(({ rank, title, installed_cost_usd_per_ft2: cost }) => {
        const range = `${wholeWallUsd(cost.low, area_ft2)} to ${wholeWallUsd(cost.high, area_ft2)}`;
        return `${rank}. ${title}: about ${wholeWallUsd(cost.likely, area_ft2)} (${range})`;
      }),
    ),
    ...partsOfCost(wall),
    ...titledList('What is not in these figures', notInThePrice(advice, wall)),
    warning(
      `Caution: these prices are rough${prices?.note ? ` (${prices.note})` : ''}. Get at least two quotes before you decide.`,
    ),
  ];
}

/** "It is too expensive": what passes for less and what that gives up, what costs most, and how to try another budget. */
export function cheaperBlocks(advice: Advice, budget_usd_per_ft2: number | null): Block[] {
  const [wall, ...others] = advice.ranked;
  if (!wall) return nothingPassesBlocks(advice);
  const area_ft2 = wall.thermal.assumptions.wall_area_ft2;
  const { low, likely, high } = wall.installed_cost_usd_per_ft2;
  const budget =
    budget_usd_per_ft2 === null ? '' : ` ${budgetCheck(wall.installed_cost_usd_per_ft2, budget_usd_per_ft2)}`;
  const cheaper = others
    .filter((other) => other.installed_cost_usd_per_ft2.likely < likely)
    .sort((a, b) => a.installed_cost_usd_per_ft2.likely - b.installed_cost_usd_per_ft2.likely);
  const moves = (advice.robustness ?? []).filter(
    ({ kind, what, winner }) =>
      winner !== null && (kind === 'budget' || (kind === 'weight' && what === 'cost')),
  );
  const isAssumed = advice.assumptions.some(({ field }) => field === 'wall_area_ft2');
  // The first budget in whole dollars that the rules hold against it.
  const wanted = Math.max(1, Math.ceil(low) - 1);
  return [
    { kind: 'title', text: 'If it costs too much' },
    {
      kind: 'paragraph',
      text: `The first choice likely costs ${dollars(likely)} a square foot (${dollars(low)} to ${dollars(high)}), about ${wholeWallUsd(likely, area_ft2)} for ${area(area_ft2)}${isAssumed ? ', an area that I assumed' : ''}.${budget}`,
    },
    ...(cheaper.length > 0
      ? titledList(
          'What passes for less',
          cheaper.map((other) => lessWords(other, wall, area_ft2)),
        )
      : [note('None of the other walls that I ranked likely costs less.')]),
    ...partsOfCost(wall),
    ...titledList(
      'When another wall comes first',
      moves.map(({ sentence }) => sentence),
    ),
    note(
      `A wall is ruled out where even its low end is over the budget. "what if the budget were $${wanted} a foot" tries one without the first choice; "change budget to ${wanted}" works it out anew${moves.some(({ kind }) => kind === 'weight') ? ', and "change priorities to cost" puts the price first' : ''}. No budget makes a wall pass that breaks a rule.`,
    ),
    warning(
      'Caution: prices are rough, from memory unless you gave your own. Ask for two quotes of each wall before you give one up.',
    ),
  ];
}

function lessWords(other: RankedAssembly, wall: RankedAssembly, area_ft2: number): string {
  const { likely } = other.installed_cost_usd_per_ft2;
  const saved = wholeWallUsd(wall.installed_cost_usd_per_ft2.likely - likely, area_ft2);
  const gives = other.gives_up.length > 0 ? ` It gives up: ${other.gives_up.map(ended).join(' ')}` : '';
  return `${other.rank}. ${other.title}: likely ${dollars(likely)} a square foot, about ${saved} less.${gives}`;
}

function area(area_ft2: number): string {
  return `${Math.round(area_ft2).toLocaleString('en-US')} sq ft`;
}

/** "What should I ask a contractor?": questions that follow from the first choice. */
export function contractorBlocks(advice: Advice): Block[] {
  const [wall] = advice.ranked;
  if (!wall) return nothingPassesBlocks(advice);
  return [
    { kind: 'title', text: 'What to ask a contractor' },
    { kind: 'paragraph', text: `For ${wall.title}:` },
    { kind: 'list', numbered: true, items: questionsFor(wall, advice) },
    ...titledList('Ask quotes for, each by itself', quotesFor(wall, advice)),
    note(
      'Somebody who has built such a wall answers these at once. "save" writes the build sheet with all the figures: give it to each bidder.',
    ),
  ];
}

function questionsFor(wall: RankedAssembly, advice: Advice): string[] {
  const { cladding, insulation, crew, buck, openings } = wall;
  const thickness = `${inches(insulation.thickness_in)} in. of ${insulation.material}`;
  return [
    `Have you built ${cladding} over ${thickness} before? Show me two such walls, one of them some winters old.`,
    `Who does what: ${listed(crew.trades)}? It takes ${ended(crew.needed)} Is one of you answerable for the whole wall?`,
    ...fasteningQuestions(wall),
    ...designerQuestion(advice),
    ...(openings.length > 0
      ? [
          `How do you carry the windows out to the new face? My plan: ${ended(buck.label)} What does the window maker say to that in writing, and does the warranty hold?`,
          flashingQuestion(buck.flashing_sequence),
        ]
      : []),
    `Which evaluation report or maker’s instruction covers this cladding over ${thickness} with these fasteners? May I have its number, and does the building department take it?`,
    `Where does rain that gets behind the cladding run out, at the foot of the wall${openings.length > 0 ? ' and over each window' : ''}?${remedyOf(wall, 'ground-and-termite.weep-screed')}`,
    'Who takes out the permit, which code edition holds here, and what does the inspector want to see before it is covered?',
    ...(saysRule(wall, 'stucco-practice.curing')
      ? [
          `How long does each coat cure, and what do you do below 40 °F?${remedyOf(wall, 'stucco-practice.curing')}`,
        ]
      : []),
    ...(isRetrofit(advice)
      ? [
          'What do you do when there is rot, lead or asbestos under the old cladding, and at what price for each square foot? What is closed again each evening?',
        ]
      : []),
    'What is not in your price: scaffold, permits, the engineer, moving eaves, meters and lamps, clearing away?',
    'Are you licensed and insured for this here, and who comes when it cracks or leaks, for how many years?',
  ];
}

/** What is driven, how far apart, and how each one finds its stud: by the schedule of the wall. */
function fasteningQuestions({ fastening_schedule: { steps } }: RankedAssembly): string[] {
  const carrying = steps.find(({ does, aim }) => does === 'carries' && aim !== null);
  if (!carrying) return [];
  const corner = carrying.zones.find(({ zone }) => zone === 'corner');
  const spacing = corner ? `, ${spacingWords(corner)} at the corners of the house` : '';
  return [
    `Which fasteners hold the cladding, how long and how far apart? My plan: ${carrying.fixes}, ${fastenerWords(carrying)}${spacing} (${STEP_VERDICT_WORDS[carrying.verdict]}). How do you make sure that each one hits a stud, and what becomes of those that miss?`,
  ];
}

function designerQuestion(advice: Advice): string[] {
  const designer = whoMustSign(advice).find(({ role }) => role === 'designer');
  if (!designer) return [];
  return designer.must
    ? [`Who designs and signs what a table does not settle? Needed here: a designer, ${ended(designer.why)}`]
    : ['Does the building department want a designer’s signature, and whose would it be?'];
}

/** The places in the order of work where somebody should look before it is covered. */
function flashingQuestion(sequence: readonly string[]): string {
  const holds = sequence.flatMap((step) => /HOLD:\s*(.+)$/.exec(step)?.[1] ?? []);
  const looks = holds.length > 0 ? ` Stop and let me look each time: ${holds.join(' ')}` : '';
  return `In what order do you flash a window, from the bare opening to the sealed frame? My plan has ${sequence.length} steps.${looks}`;
}

function remedyOf({ cautions }: RankedAssembly, rule: string): string {
  const remedy = cautions.find((caution) => caution.rule === rule)?.remedy;
  return remedy ? ` (${remedy.replace(/\.$/, '')}.)` : '';
}
