import { dollars, fixed } from '../record/figure-text.ts';
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
import { packsText, REPORT_NOTICE, surely } from './report-words.ts';

export const OUTCOME_WORDS: Readonly<Record<Outcome, string>> = {
  same: 'as before',
  figures: 'other figures',
  'other-wall': 'another wall',
  'nothing-passes-now': 'nothing passes now',
  'passes-now': 'a wall passes now',
  'nothing-passes': 'still nothing passes',
};

const LONGEST_NAME = 28;

/** What two rule sets decide differently, as a document: table first, then project by project with the reasons. */
export function changesDocument(changes: Changes): RecordDocument {
  const { projects, from, to } = changes;
  const decided = projects.filter(({ outcome }) => DECIDES_OTHERWISE.has(outcome));
  const refigured = projects.filter(({ outcome }) => outcome === 'figures');
  const sections: RecordSection[] = [
    { id: 'summary', heading: 'What changes', blocks: summaryBlocks(changes) },
    { id: 'decisions', heading: 'Decided otherwise', blocks: decided.flatMap(projectBlocks) },
    { id: 'figures', heading: 'The same wall with other figures', blocks: refigured.flatMap(projectBlocks) },
    { id: 'same', heading: 'Decided as before', blocks: sameBlocks(projects) },
  ];
  return {
    title: titleOf(from, to),
    head: [
      { label: 'From', value: `${from.label}; ${packsText(from.packs)}` },
      { label: 'To', value: `${to.label}; ${packsText(to.packs)}` },
      { label: 'Projects', value: `${projects.length}` },
      { label: 'Decided otherwise', value: `${changes.decisions_changed}` },
    ],
    notice: REPORT_NOTICE,
    sections: sections.filter(({ blocks }) => blocks.length > 0),
    appendix: [],
    appendixNote: '',
  };
}

/** What differs between the two rule sets, "2018 edition to 2024 edition"; what both have is said once. */
function titleOf(from: Changes['from'], to: Changes['to']): string {
  const isSameEdition = from.edition === to.edition;
  const [before, after] = [from, to].map(houseOf);
  const isSameHouse = before?.digest === after?.digest;
  // What was not set on either side is no part of the comparison.
  const edition = !isSameEdition
    ? [`${editionWords(from)} to ${editionWords(to)}`]
    : from.edition === null
      ? []
      : [editionWords(from)];
  const house = !isSameHouse
    ? [`${before?.words} to ${after?.words}`]
    : before?.digest === ''
      ? []
      : [`${before?.words}`];
  return isSameEdition && isSameHouse ? `${from.label} to the same` : [...edition, ...house].join(', ');
}

function editionWords({ edition }: Changes['from']): string {
  return edition === null ? 'each project’s own edition' : `${edition} edition`;
}

function houseOf({ packs }: Changes['from']) {
  const own = packs.filter(({ house }) => house);
  const names = own.map(({ name, version }) => `${name} ${version}`).join(' and ');
  return {
    words: own.length > 0 ? `house rules ${names}` : 'no house rules',
    digest: own.map(({ sha256 }) => sha256).join(),
  };
}

function summaryBlocks({ projects, decisions_changed }: Changes): RecordBlock[] {
  const count = (outcome: Outcome) => projects.filter((project) => project.outcome === outcome).length;
  const kept = projects.length - decisions_changed;
  return present([
    {
      kind: 'paragraph',
      isStrong: true,
      text: `${decisions_changed} of ${projects.length} decisions change; ${kept} stay, ${count('figures') || 'none'} of them with other figures.`,
    },
    tableOf(
      'Project by project: before and after',
      [{ title: 'Project' }, { title: 'Decision' }, { title: 'U-factor' }, { title: 'Cost' }],
      projects.map(({ name, outcome, before, after }) => [
        shortName(name),
        OUTCOME_WORDS[outcome],
        pair(before, after, ({ u_factor }) => fixed(u_factor, 3)),
        pair(before, after, ({ cost_usd_per_ft2 }) => dollars(Math.round(cost_usd_per_ft2.likely))),
      ]),
    ),
  ]);
}

/** Leaves room for the figures in 80 columns; the whole name stands below. */
function shortName(name: string): string {
  const letters = [...name];
  return letters.length <= LONGEST_NAME
    ? name
    : `${letters
        .slice(0, LONGEST_NAME - 1)
        .join('')
        .trimEnd()}…`;
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

function projectBlocks(project: ProjectChange): RecordBlock[] {
  const { name, file, before, after, parts_changed, why, figures, outcome } = project;
  const isSameWall = outcome === 'figures';
  return present([
    { kind: 'subheading', text: `${name} (${file})` },
    {
      kind: 'facts',
      rows: [
        { label: isSameWall ? 'Wall' : 'Before', value: choiceText(before) },
        ...(isSameWall ? [] : [{ label: 'After', value: choiceText(after) }]),
        ...(parts_changed.length > 0 ? [{ label: 'Parts changed', value: parts_changed.join(', ') }] : []),
        ...(figures.length > 0 ? [{ label: 'Figures', value: figuresText(project) }] : []),
      ],
    },
    listOf(why.map(reasonItem)),
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

/** What rules a wall out or in is told with its citation, the rest with the rule's id. */
function reasonItem(reason: Reason): ListItem {
  const { kind, rule, citation } = reason;
  const decides = kind === 'rules-it-out' || kind === 'no-longer-ruled-out';
  const aside = [...(decides && citation ? [citation] : []), ...(rule ? [`rule ${rule}`] : [])].join('; ');
  return { lead: KIND_WORDS[kind], text: reasonText(reason), ...(aside ? { aside } : {}) };
}

/** A reason in one line: "Highest U-factor allowed: 0.060 → 0.045". */
export function reasonText({ text, before, after, detail }: Reason): string {
  if (before === undefined || after === undefined) return text;
  const change = `${text.replace(/[.:]$/, '')}: ${before} → ${after}`;
  return detail === undefined ? change : `${change}. ${detail}`;
}
