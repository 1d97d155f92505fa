import stringWidth from 'string-width';
import { lower } from '../base/first-letter.ts';
import { listed } from '../base/listed.ts';
import { cleanText } from '../record/clean-text.ts';
import { dollars, fixed, sentence } from '../record/figure-text.ts';
import {
  type ListItem,
  listOf,
  present,
  type RecordBlock,
  type RecordDocument,
  type RecordSection,
  tableOf,
} from '../record/record-document.ts';
import {
  type Changes,
  DECIDES_OTHERWISE,
  type Decision,
  type Outcome,
  type ProjectChange,
  type Reason,
} from './changes-schema.ts';
import { REPORT_NOTICE, surely } from './report-words.ts';
import { areSame, ruleSetRows, titleOf } from './rule-set-words.ts';
import { type NumberedProject, type SharedReason, sharedReasons } from './shared-reasons.ts';

export const OUTCOME_WORDS: Readonly<Record<Outcome, string>> = {
  same: 'as before',
  figures: 'other figures',
  'other-wall': 'another wall',
  'nothing-passes-now': 'nothing passes now',
  'passes-now': 'a wall passes now',
  'nothing-passes': 'still nothing passes',
};

/** Together with the other columns of the table it keeps to 80. */
const LONGEST_NAME = 24;

const SAME_SIDES = 'Both sides are the same rules and the same edition, so nothing can differ.';

/**
 * What two rule sets decide differently, as a document: table first, the reasons that several projects have, then
 * project by project with its own.
 */
export function changesDocument(changes: Changes): RecordDocument {
  const { projects } = changes;
  const numbered = projects.map((project, i) => ({ number: i + 1, project }));
  const decided = numbered.filter(({ project }) => DECIDES_OTHERWISE.has(project.outcome));
  const refigured = numbered.filter(({ project }) => project.outcome === 'figures');
  const told = numbered.filter((one) => decided.includes(one) || refigured.includes(one));
  const { shared, numberOf } = sharedReasons(told, reasonText);
  const blocksOf = (one: NumberedProject) => projectBlocks(one, numberOf);
  const sections: RecordSection[] = [
    { id: 'summary', heading: 'What changes', blocks: summaryBlocks(changes) },
    { id: 'reasons', heading: 'Reasons that several projects have', blocks: sharedBlocks(shared) },
    { id: 'decisions', heading: 'Decided otherwise', blocks: decided.flatMap(blocksOf) },
    { id: 'figures', heading: 'The same wall with other figures', blocks: refigured.flatMap(blocksOf) },
    { id: 'same', heading: 'Decided as before', blocks: sameBlocks(projects) },
  ];
  return {
    title: titleOf(changes),
    head: [
      ...ruleSetRows(changes),
      { label: 'Projects', value: `${projects.length}` },
      { label: 'Decided otherwise', value: `${changes.decisions_changed}` },
    ],
    notice: REPORT_NOTICE,
    sections: sections.filter(({ blocks }) => blocks.length > 0),
    appendix: [],
    appendixNote: '',
  };
}

function summaryBlocks(changes: Changes): RecordBlock[] {
  const { projects, decisions_changed } = changes;
  const count = (outcome: Outcome) => projects.filter((project) => project.outcome === outcome).length;
  const kept = projects.length - decisions_changed;
  return present([
    {
      kind: 'paragraph',
      isStrong: true,
      text: `${decisions_changed} of ${projects.length} decisions change; ${kept} stay, ${count('figures') || 'none'} of them with other figures.`,
    },
    areSame(changes) ? { kind: 'paragraph', text: SAME_SIDES } : null,
    tableOf(
      'Project by project: before and after',
      [
        { title: 'No.', isNumber: true },
        { title: 'Project' },
        { title: 'Decision' },
        { title: 'U-factor' },
        { title: 'Cost' },
      ],
      projects.map(({ name, outcome, before, after }, i) => [
        `${i + 1}`,
        shortName(name),
        OUTCOME_WORDS[outcome],
        pair(before, after, ({ u_factor }) => fixed(u_factor, 3)),
        pair(before, after, ({ cost_usd_per_ft2 }) => dollars(Math.round(cost_usd_per_ft2.likely))),
      ]),
    ),
  ]);
}

/** Several reasons told once, each with what differs between the projects that have it. */
function sharedBlocks(shared: readonly SharedReason[]): RecordBlock[] {
  if (shared.length === 0) return [];
  const hasMarks = shared.some(({ slots }) => slots.length > 0);
  return [
    {
      kind: 'paragraph',
      text: `Each is told once; the projects below name it by its number.${hasMarks ? ' [a], [b] and so on stand for what differs from project to project.' : ''}`,
    },
    ...shared.flatMap(({ number, reason, text, slots, projects }) => {
      const aside = asideOf(reason);
      return [
        { kind: 'subheading' as const, text: `Reason ${number}: ${lower(KIND_WORDS[reason.kind])}` },
        { kind: 'paragraph' as const, text: `${sentence(text)}${aside ? ` (${aside})` : ''}` },
        {
          kind: 'facts' as const,
          rows: [
            ...slots.map(({ mark, values }) => ({
              label: mark,
              value: values
                .map(({ value, projects: where }) => `${value}: ${projectsText(where)}`)
                .join('; '),
            })),
            // Every mark names them already.
            ...(slots.length > 0 ? [] : [{ label: 'Where', value: projectsText(projects) }]),
          ],
        },
      ];
    }),
  ];
}

function projectsText(numbers: readonly number[]): string {
  return `${numbers.length === 1 ? 'project' : 'projects'} ${listed(numbers.map(String))}`;
}

/** Leaves room for the figures in 80 columns, as wide as it will be shown; the whole name stands below. */
function shortName(name: string): string {
  const shown = cleanText(name);
  if (stringWidth(shown) <= LONGEST_NAME) return shown;
  let short = '';
  for (const letter of shown) {
    if (stringWidth(short + letter) >= LONGEST_NAME) break;
    short += letter;
  }
  return `${short.trimEnd()}…`;
}

/** "0.057 → 0.045", one value where both are the same. */
function pair(
  before: Decision,
  after: Decision,
  tell: (choice: NonNullable<Decision['choice']>) => string,
): string {
  const [a, b] = [before, after].map(({ choice }) => (choice ? tell(choice) : 'none'));
  return a === b ? `${a}` : `${a} → ${b}`;
}

/** One line for each: what rules and limits say otherwise of a wall that stays stands in the JSON form. */
function sameBlocks(projects: readonly ProjectChange[]): RecordBlock[] {
  const kept = projects.filter(({ outcome }) => outcome === 'same' || outcome === 'nothing-passes');
  return present([
    listOf(
      kept.map(({ name, file, before, after, why }) => {
        const verdicts = why.filter(({ kind }) => kind === 'verdict').length;
        const zones = [before.climate_zone, after.climate_zone];
        const asides = [
          file,
          ...(zones[0] === zones[1] ? [] : [`zone ${zones.join(' → ')}`]),
          ...(verdicts === 0
            ? []
            : [`${verdicts} ${verdicts === 1 ? 'rule speaks' : 'rules speak'} otherwise`]),
        ];
        return { lead: name, text: after.choice?.title ?? choiceText(after), aside: asides.join('; ') };
      }),
    ),
  ]);
}

function projectBlocks(
  { number, project }: NumberedProject,
  numberOf: ReadonlyMap<Reason, number>,
): RecordBlock[] {
  const { name, file, before, after, parts_changed, why, figures, outcome } = project;
  const isSameWall = outcome === 'figures';
  return present([
    { kind: 'subheading', text: `${number}. ${name} (${file})` },
    {
      kind: 'facts',
      rows: [
        { label: isSameWall ? 'Wall' : 'Before', value: choiceText(before) },
        ...(isSameWall ? [] : [{ label: 'After', value: choiceText(after) }]),
        ...(parts_changed.length > 0 ? [{ label: 'Parts changed', value: parts_changed.join(', ') }] : []),
        ...(figures.length > 0 ? [{ label: 'Figures', value: figuresText(project) }] : []),
      ],
    },
    listOf(whyItems(why, numberOf)),
  ]);
}

function choiceText({ choice, closest }: Decision): string {
  if (choice) {
    return `${choice.title}; ${choice.water_resistive_barrier}; ${choice.interior_vapour_retarder}; ${choice.buck}`;
  }
  return `nothing passes${closest ? `; closest: ${closest.title}` : ''}`;
}

type FigureWords = { readonly label: string; readonly tell: (value: number) => string };

const FIGURE_WORDS: Readonly<Record<string, FigureWords>> = {
  u_factor: { label: 'U-factor', tell: (u) => fixed(u, 4) },
  max_u_factor: { label: 'highest U-factor allowed', tell: (u) => fixed(u, 3) },
  u_margin_percent: { label: 'margin below it', tell: (percent) => `${fixed(percent, 1)} %` },
  cost_usd_per_ft2: { label: 'likely cost', tell: (usd) => `$${fixed(usd, 1)} per ft²` },
  added_thickness_in: { label: 'added thickness', tell: (inches) => `${fixed(inches, 2)} in.` },
  weight_psf: { label: 'weight', tell: (psf) => `${fixed(psf, 1)} psf` },
  score: { label: 'score', tell: (score) => fixed(score, 4) },
};

function figuresText({ figures, before, after }: ProjectChange): string {
  return figures
    .map((changed) => {
      const { label, tell } = FIGURE_WORDS[changed.figure] ?? { label: changed.figure, tell: String };
      const told = (value: number | null, { choice }: Decision) => {
        const words = value === null ? 'none' : tell(value);
        return changed.figure === 'max_u_factor' ? surely(words, choice?.max_u_factor_provenance) : words;
      };
      return `${label} ${told(changed.before, before)} → ${told(changed.after, after)}`;
    })
    .join('; ');
}

const KIND_WORDS: Readonly<Record<Reason['kind'], string>> = {
  'rules-it-out': 'Ruled out now',
  'no-longer-ruled-out': 'No longer ruled out',
  verdict: 'Other verdict',
  limit: 'Other limit',
  price: 'Other price',
  score: 'Score',
};

/** Kind by kind: of the reasons told above no more than their numbers, own ones in full. */
function whyItems(why: readonly Reason[], numberOf: ReadonlyMap<Reason, number>): ListItem[] {
  return [...new Set(why.map(({ kind }) => kind))].flatMap((kind) => {
    const ofKind = why.filter((reason) => reason.kind === kind);
    const pointers = ofKind
      .map((reason) => ({ reason, number: numberOf.get(reason) ?? 0 }))
      .filter(({ number }) => number > 0)
      .sort((a, b) => a.number - b.number)
      .map(({ reason, number }) => `reason ${number} (${reason.rule ?? reason.text})`);
    const own = ofKind.filter((reason) => !numberOf.has(reason));
    return [
      ...(pointers.length > 0 ? [{ lead: KIND_WORDS[kind], text: listed(pointers) }] : []),
      ...own.map(reasonItem),
    ];
  });
}

function reasonItem(reason: Reason): ListItem {
  const aside = asideOf(reason);
  return { lead: KIND_WORDS[reason.kind], text: reasonText(reason), ...(aside ? { aside } : {}) };
}

/** What rules a wall out or in is told with its citation, the rest with the rule's id. */
function asideOf({ kind, rule, citation }: Reason): string {
  const decides = kind === 'rules-it-out' || kind === 'no-longer-ruled-out';
  return [...(decides && citation ? [citation] : []), ...(rule ? [`rule ${rule}`] : [])].join('; ');
}

/** A reason in one line: "Highest U-factor allowed: 0.060 → 0.045". */
export function reasonText({ text, before, after, detail }: Reason): string {
  if (before === undefined || after === undefined) return text;
  const change = `${text.replace(/[.:]$/, '')}: ${before} → ${after}`;
  return detail === undefined ? change : `${change}. ${detail}`;
}
