import type { Advice, Caution, CautionKind, RankedAssembly } from '../../advice/advice-schema.ts';
import { CAUTION_KINDS } from '../../advice/advice-schema.ts';
import { citationWithProvenance, figureText, sentence } from '../figure-text.ts';
import { listOf, present, type RecordBlock, tableOf } from '../record-document.ts';
import { under } from './decision.ts';

/** Where somebody can be hurt comes before what can spoil the wall or the purse. */
const SAFETY_KINDS: readonly CautionKind[] = ['professional', 'structural', 'fire', 'health', 'site-work'];
const KIND_ORDER = [...SAFETY_KINDS, ...CAUTION_KINDS.filter((kind) => !SAFETY_KINDS.includes(kind))];

const KIND_WORDS: Readonly<Record<CautionKind, string>> = {
  professional: 'Who decides',
  structural: 'Structure',
  fire: 'Fire',
  health: 'Health',
  'site-work': 'Work on site',
  moisture: 'Moisture',
  energy: 'Energy',
  openings: 'Windows and doors',
  ground: 'Ground and termites',
  buildability: 'Crew',
  cost: 'Cost',
  practice: 'Practice',
  data: 'Data',
};

/** The general cautions and those of the first choice (or the fallback), each once, safety first. */
export function cautions(advice: Advice): RecordBlock[] {
  const wall = advice.ranked[0] ?? advice.fallback?.assembly;
  const all = [...advice.cautions, ...(wall?.cautions ?? [])];
  const once = [...new Map(all.map((caution) => [`${caution.kind} ${caution.text}`, caution])).values()];
  return KIND_ORDER.flatMap((kind) =>
    under(KIND_WORDS[kind], listOf(once.filter((caution) => caution.kind === kind).map(cautionItem))),
  );
}

function cautionItem({ text, remedy, rule }: Caution) {
  const whole = remedy ? `${sentence(text)} ${sentence(remedy)}` : sentence(text);
  return rule === undefined ? { text: whole } : { text: whole, aside: rule };
}

export function figures({ figures: computed }: RankedAssembly): RecordBlock[] {
  return present([
    tableOf(
      'Figures with method and source',
      [
        { title: 'Figure' },
        { title: 'Value', isNumber: true },
        { title: 'Method' },
        { title: 'Source' },
        { title: 'Note' },
      ],
      computed.map((figure) => [
        figure.what,
        figureText(figure.value, figure.unit),
        figure.method,
        figure.source.length > 0 ? figure.source.join('; ') : 'no source',
        figure.note ?? '',
      ]),
    ),
  ]);
}

const VERDICT_WORDS = {
  forbid: 'forbids',
  undecided: 'undecided',
  caution: 'caution',
  prefer: 'prefers',
  pass: 'passes',
} as const;
const VERDICT_ORDER = Object.keys(VERDICT_WORDS);

/** Every rule that had something to say of the first choice; what is open or warns stands on top. */
export function trace({ verdicts }: RankedAssembly): RecordBlock[] {
  const sorted = [...verdicts].sort(
    (a, b) =>
      VERDICT_ORDER.indexOf(a.verdict) - VERDICT_ORDER.indexOf(b.verdict) || (a.rule < b.rule ? -1 : 1),
  );
  const undecided = verdicts.filter(({ verdict }) => verdict === 'undecided');
  const [silent, speaking] = [sorted.filter(isSilent), sorted.filter((v) => !isSilent(v))];
  return present([
    ...under(
      'Still open: what no rule could decide',
      listOf(undecided.map((v) => ({ lead: v.title, text: v.text, aside: v.rule }))),
    ),
    tableOf(
      'What the rules said of this wall',
      [{ title: 'Rule' }, { title: 'Verdict' }, { title: 'What it found' }, { title: 'Citation' }],
      speaking.map((v) => [
        v.rule,
        VERDICT_WORDS[v.verdict],
        v.text,
        citationWithProvenance(v.citation, v.provenance),
      ]),
    ),
    tableOf(
      'Rules that looked at this wall and found nothing to say: all pass',
      [{ title: 'Rule' }, { title: 'About' }, { title: 'Citation' }],
      silent.map((v) => [v.rule, v.title, citationWithProvenance(v.citation, v.provenance)]),
    ),
  ]);
}

/** A rule that was kept and has no words of its own for it: its text only repeats its title. */
function isSilent({ verdict, text, title }: RankedAssembly['verdicts'][number]): boolean {
  return verdict === 'pass' && (text === '' || text.startsWith(`${title}: kept`));
}

export function packs({ rules }: Advice): RecordBlock[] {
  return present([
    tableOf(
      'Rule packs that decided',
      [{ title: 'Pack' }, { title: 'Version' }, { title: 'SHA-256' }],
      rules.packs.map((pack) => [
        pack.house ? `${pack.name} (house pack)` : pack.name,
        pack.version,
        pack.sha256,
      ]),
    ),
  ]);
}
