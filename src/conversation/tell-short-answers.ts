import type { Advice, Caution, RankedAssembly } from '../advice/advice-schema.ts';
import { fastenerWords, STEP_VERDICT_WORDS, spacingWords } from '../advice/schedule-words.ts';
import type { ScheduleStep } from '../assessment/schedule/schedule-schema.ts';
import { capital, ended } from '../base/first-letter.ts';
import { listed } from '../base/listed.ts';
import { fieldWords } from '../brief/field-words.ts';
import { whoMustSign } from '../record/status/who-must-sign.ts';
import type { Block, FigureRow } from './blocks.ts';
import { note, titledList, warning } from './notes.ts';
import type { ShortQuestion } from './short-questions.ts';
import { excludedBlocks, isSameCaution, nothingPasses } from './tell-advice.ts';
import { KIND_WORDS, plainCaution } from './tell-homeowner.ts';

/** Questions about the first choice: none of them has an answer while there is no wall. */
export type OfFirstChoice = Exclude<ShortQuestion, 'next-step' | 'none-pass' | 'meaning'>;

/** A short, honest answer from the figures, verdicts and cautions of the first choice, and how to see more. */
export function shortAnswerBlocks(question: OfFirstChoice, advice: Advice): Block[] {
  const [wall] = advice.ranked;
  if (!wall) return nothingPassesBlocks(advice);
  switch (question) {
    case 'screws':
      return screwBlocks(advice, wall);
    case 'rot':
      return rotBlocks(advice, wall);
    case 'cracks':
      return crackBlocks(wall);
    case 'lasting':
      return lastingBlocks(advice, wall);
    case 'safe':
      return safeBlocks(advice, wall);
    case 'own-hands':
      return ownHandsBlocks(advice, wall);
  }
}

/** That nothing passes, what comes closest with the rules against it, and what to say next. */
export function nothingPassesBlocks(advice: Advice): Block[] {
  return [
    ...nothingPasses(advice),
    ...excludedBlocks(advice),
    note(
      '"change …" with the name of a question gives another answer, as in "change budget to 40" or "change finish"; "what if …" only tries one. No answer makes a wall pass that breaks a rule of another kind.',
    ),
  ];
}

/** "Why does nothing pass?" */
export function nonePassBlocks(advice: Advice): Block[] {
  const { candidates, admitted } = advice.considered;
  if (advice.ranked.length === 0) return nothingPassesBlocks(advice);
  const words = `${admitted.toLocaleString('en-US')} of ${candidates.toLocaleString('en-US')} walls pass. "why not …" tells what is against one of the others.`;
  return [note(words)];
}

function screwBlocks(advice: Advice, { fastening_schedule: schedule, title }: RankedAssembly): Block[] {
  const isAssumed = advice.assumptions.some(({ field }) => field === 'wall_area_ft2');
  const area = isAssumed ? ' The area was assumed, and the numbers with it.' : '';
  return [
    { kind: 'title', text: 'The fasteners, in the order of work' },
    { kind: 'paragraph', text: ended(title) },
    { kind: 'figures', rows: schedule.steps.map(stepRow) },
    { kind: 'paragraph', text: `${schedule.why}${area}` },
    ...(schedule.verdict === 'design-required'
      ? [warning('Caution (structural): do not order these before a licensed designer has sized them.')]
      : []),
    note(
      'Numbers are for the whole wall, waste included. "show the fastening" draws the one that carries; "whole answer" has every check, what the boards are held by until then, and how to hit the studs.',
    ),
  ];
}

function stepRow(step: ScheduleStep): FigureRow {
  const [field, corner] = step.zones;
  const inField = field ? spacingWords(field) : 'no spacing';
  const atCorners = corner ? spacingWords(corner) : inField;
  const spacing = inField === atCorners ? inField : `${inField}, at the corners of the house ${atCorners}`;
  const count = step.project_count_with_waste;
  return {
    label: `${step.step}. ${shortlyFixed(step)}`,
    value: [
      fastenerWords(step),
      `${spacing}, to ${step.to}`,
      count === null ? 'not counted' : `${Math.round(count).toLocaleString('en-US')} to buy`,
      STEP_VERDICT_WORDS[step.verdict],
    ].join('; '),
  };
}

/** What a line fixes, without the windows that it is for. */
function shortlyFixed({ fixes }: ScheduleStep): string {
  return fixes.replace(/ \(.*\)$/, '');
}

const MOISTURE: readonly string[] = ['vapour', 'rain'];

function rotBlocks(advice: Advice, wall: RankedAssembly): Block[] {
  const verdicts = wall.verdicts.filter(({ concern }) => MOISTURE.includes(concern));
  const keeps = wall.reasons.filter(({ rule }) => verdicts.some((verdict) => verdict.rule === rule));
  const own = wall.cautions.filter(({ kind }) => kind === 'moisture');
  const hidden = advice.cautions.filter(({ rule }) => rule === 'safety.hidden-decay');
  return [
    { kind: 'title', text: 'Will it rot?' },
    {
      kind: 'paragraph',
      text: `Nobody can promise that it won’t. ${heldAgainst(verdicts, 'rules on vapour and rain')}`,
    },
    { kind: 'paragraph', text: wall.condensate_note },
    ...titledList(
      'What keeps it dry',
      keeps.map(({ text }) => text),
    ),
    ...toHeed('What can still wet it', [...own, ...undecidedOf(wall, MOISTURE), ...hidden]),
    note(
      'Most walls that rot are wet by rain at windows and ends of walls, and by indoor air through holes: no figure here counts those (from memory). "temperatures" and "condensate" draw what is counted; "what should I ask a contractor" has the flashing.',
    ),
  ];
}

/** How the rules of a concern came out, in a sentence. */
function heldAgainst(verdicts: RankedAssembly['verdicts'], rules: string): string {
  const of = (wanted: string) => verdicts.filter(({ verdict }) => verdict === wanted).length;
  const [cautions, open] = [of('caution'), of('undecided')];
  const parts = [
    cautions > 0 ? `${cautions} of them ${cautions === 1 ? 'asks' : 'ask'} for care` : null,
    open > 0 ? `${open} cannot be decided with what is known` : null,
  ].filter((part) => part !== null);
  return `Of the ${verdicts.length} ${rules} that apply it breaks none${parts.length > 0 ? `; ${parts.join(', ')}` : ''}.`;
}

/** What no rule could settle is told as what it is, not as kept. */
function undecidedOf({ verdicts }: RankedAssembly, concerns: readonly string[]): Caution[] {
  return verdicts
    .filter(({ verdict, concern }) => verdict === 'undecided' && concerns.includes(concern))
    .map(({ text, rule }) => ({ kind: 'data', text, rule }));
}

function toHeed(title: string, cautions: readonly Caution[]): Block[] {
  const each = cautions.filter((one, i) => cautions.findIndex((other) => isSameCaution(one, other)) === i);
  if (each.length === 0) return [];
  return [
    { kind: 'heading', text: title },
    { kind: 'list', items: each.map(plainCaution), role: 'warning' },
  ];
}

const SAYS_CRACK = /\bcrack/i;
/** Rules against cracks whose words do not name them. */
const AGAINST_CRACKS: readonly string[] = [
  'stucco-practice.control-joints',
  'stucco-practice.not-below-40-degrees',
];

function crackBlocks(wall: RankedAssembly): Block[] {
  const cautions = wall.cautions.filter(
    ({ text, remedy, rule }) =>
      SAYS_CRACK.test(`${text} ${remedy ?? ''}`) || (rule !== undefined && AGAINST_CRACKS.includes(rule)),
  );
  const gives = wall.gives_up.filter((text) => SAYS_CRACK.test(text));
  const isKnown = cautions.length + gives.length > 0;
  return [
    { kind: 'title', text: 'Will it crack?' },
    {
      kind: 'paragraph',
      text: isKnown
        ? `It can. I have no figure for how likely that is: it hangs on the mix, the weather and the hands. What I hold against ${wall.cladding} is this.`
        : `I have no figure for that, and nothing that I hold against ${wall.cladding} speaks of cracks.`,
    },
    ...titledList('What it gives up', gives),
    ...toHeed('What to heed against cracks', cautions),
    note('"what should I ask a contractor" asks who comes when it cracks; "cautions" has the rest.'),
  ];
}

/** Where time works on the wall: what holds it, what wets it and what lives in it. */
const SHORTENS: readonly Caution['kind'][] = ['moisture', 'structural', 'ground'];

function lastingBlocks(advice: Advice, wall: RankedAssembly): Block[] {
  const wear = [...wall.cautions, ...advice.cautions].filter(({ kind }) => SHORTENS.includes(kind));
  const steps = wall.fastening_schedule.steps.filter(({ fastener }) => fastener !== null);
  const metals = [...new Set(steps.map(({ corrosion }) => corrosion.class))].map((metal) => {
    const fixed = steps.filter(({ corrosion }) => corrosion.class === metal).map(shortlyFixed);
    return `for ${listed(fixed)}: ${metal}`;
  });
  return [
    { kind: 'title', text: 'How long does it last?' },
    {
      kind: 'paragraph',
      text: `I have no figure in years: none of my sources gives one for such a wall, and I do not make one up. What I can tell is what decides it.`,
    },
    { kind: 'paragraph', text: wall.condensate_note },
    ...titledList('What the fasteners must be, for they cannot be changed later', metals),
    ...titledByName('What shortens it, where it is not heeded', wear, wall),
    note(
      'Ask to see two such walls, some winters old: "what should I ask a contractor". "cautions" says what to do about each point.',
    ),
  ];
}

/** Where somebody may be hurt, the first to be hurt first. */
const MAY_HURT: readonly Caution['kind'][] = [
  'structural',
  'fire',
  'health',
  'site-work',
  'moisture',
  'professional',
];

function safeBlocks(advice: Advice, wall: RankedAssembly): Block[] {
  const open = wall.verdicts.filter(({ verdict }) => verdict === 'undecided');
  const all = [...wall.cautions, ...advice.cautions].filter(
    ({ kind, rule }) => MAY_HURT.includes(kind) && !open.some((verdict) => verdict.rule === rule),
  );
  const designer = whoMustSign(advice).find(({ role, must }) => role === 'designer' && must);
  return [
    { kind: 'title', text: 'Is it safe?' },
    {
      kind: 'paragraph',
      text: `${designer ? `Not before a designer has signed: ${ended(designer.why)}` : 'By the rules that I hold walls against nothing forbids it; that is not yet safe.'} ${heldAgainst(wall.verdicts, 'rules')}`,
    },
    ...titledByName('Where somebody may be hurt, or the wall may fail', all, wall),
    ...titledList(
      'What cannot be decided with what is known',
      open.map(({ title }) => title),
    ),
    warning(
      'Caution: local code, the building department and licensed professionals decide, not this list. "cautions" tells each point with what to do about it.',
    ),
  ];
}

/** The cautions of each kind by the names of their rules: a line a kind. */
function titledByName(title: string, cautions: readonly Caution[], wall: RankedAssembly): Block[] {
  const kinds = MAY_HURT.concat('ground').filter((kind) => cautions.some((one) => one.kind === kind));
  const items = kinds.map((kind) => {
    const names = cautions.filter((one) => one.kind === kind).map((one) => nameOf(one, wall));
    return `${capital(KIND_WORDS[kind] ?? kind)}: ${[...new Set(names)].join('; ')}`;
  });
  if (items.length === 0) return [];
  return [
    { kind: 'heading', text: title },
    { kind: 'list', items, role: 'warning' },
  ];
}

/** A caution by the name of its rule. */
function nameOf({ rule, text }: Caution, { verdicts }: RankedAssembly): string {
  return verdicts.find((verdict) => verdict.rule === rule)?.title ?? text.replace(/\.$/, '');
}

const ABOUT_HANDS = 'buildability.crew-below-need';

function ownHandsBlocks(advice: Advice, wall: RankedAssembly): Block[] {
  const isAssumed = advice.assumptions.some(({ field }) => field === 'crew_skill');
  const verdict = wall.verdicts.find(({ rule }) => rule === ABOUT_HANDS);
  const work = wall.cautions.filter(({ kind }) => kind === 'buildability' || kind === 'health');
  return [
    { kind: 'title', text: 'Can you do it yourself?' },
    {
      kind: 'paragraph',
      text: `It takes ${ended(wall.crew.needed)} Trades: ${ended(listed(wall.crew.trades))}${verdict ? ` ${isAssumed ? 'Of the crew that I assumed' : 'Of the crew that you told me of'}: ${ended(verdict.text)}` : ''}`,
    },
    ...titledList('What there is to do', wall.crew.steps),
    ...toHeed('What is hard or harmful in it', work),
    note(
      '"what if we did it ourselves, first time" judges the walls for that crew; "change who builds it" answers it anew.',
    ),
  ];
}

/** What has to be looked into before anybody touches a standing wall. */
const BEFORE_WORK: readonly string[] = ['safety.lead-and-asbestos', 'safety.hidden-decay'];

/** "What should I do now?": the steps that follow from the answer, in the order in which they save money. */
export function nextStepBlocks(advice: Advice, isSaved: boolean): Block[] {
  const [wall, ...others] = advice.ranked;
  if (!wall) return nothingPassesBlocks(advice);
  const open = (advice.find_out_first ?? []).map(({ field }) => fieldWords(field));
  const designer = whoMustSign(advice).find(({ role, must }) => role === 'designer' && must);
  const ties = others.filter(({ tie_with_first }) => tie_with_first).map(({ rank }) => `wall ${rank}`);
  const before = BEFORE_WORK.flatMap((rule) => {
    const caution = [...advice.cautions, ...wall.cautions].find((one) => one.rule === rule);
    return caution?.remedy ? [`${ended(nameOf(caution, wall))} ${caution.remedy}`] : [];
  });
  return [
    { kind: 'title', text: 'What to do next' },
    { kind: 'paragraph', text: ended(wall.title) },
    {
      kind: 'list',
      numbered: true,
      items: [
        open.length > 0
          ? `Find out what I assumed and what would change the choice: ${ended(listed(open))} "find out first" says how.`
          : null,
        ...before,
        designer ? `Have a designer sign, ${ended(designer.why)}` : null,
        'Ask the building department which code holds there, what permit it wants and what it wants to see.',
        `Get at least two quotes for it${ties.length > 0 ? `, and for ${listed(ties)}, as good as far as prices can tell` : ''}. "what should I ask a contractor" has the questions, "is it affordable" the dollars.`,
        isSaved
          ? 'Give the build sheet that was saved to each bidder.'
          : 'Save the record: "save" writes it, with a build sheet for the bidders.',
        'Order nothing before these are done.',
      ].filter((item) => item !== null),
    },
  ];
}
