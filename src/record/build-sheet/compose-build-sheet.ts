import type { Caution, RankedAssembly } from '../../advice/advice-schema.ts';
import { openingTitle, otherSequences } from '../../advice/opening-words.ts';
import { aimWords } from '../../advice/schedule-words.ts';
import { isWindowless } from '../../advice/windowless.ts';
import { capital } from '../../base/first-letter.ts';
import { numberText, sentence } from '../figure-text.ts';
import {
  type ListItem,
  listOf,
  present,
  type RecordBlock,
  type RecordDocument,
  tableOf,
} from '../record-document.ts';
import type { DecisionRecord } from '../record-schema.ts';
import { under } from '../sections/decision.ts';
import { fastenerTable } from '../sections/in-brief.ts';
import { whoMustSign } from '../status/who-must-sign.ts';
import type { SitePractice } from './site-practice.ts';
import type { TakeOffLine } from './take-off-line.ts';

/** Rules whose cautions set limits of weather and time. */
const LIMITS: readonly string[] = [
  'stucco-practice.not-below-40-degrees',
  'stucco-practice.curing',
  'safety.open-wall-weather',
  'safety.bare-wall-weather',
  'stucco-practice.coats',
  'stucco-practice.control-joints',
  'stucco-practice.keep-the-finish-open',
  'stucco-practice.evaluation-report',
];

const CREW_KINDS: readonly Caution['kind'][] = ['site-work', 'health', 'fire'];

/** What goes to the site: order of work with its hold points, fasteners, what to buy, tools, pictures, cautions. */
export function composeBuildSheet(
  record: DecisionRecord,
  wall: RankedAssembly,
  lines: readonly TakeOffLine[],
  practice: SitePractice,
): RecordDocument {
  const { advice, status, sign_off, digest, revision } = record;
  const all = [...advice.cautions, ...wall.cautions];
  const missing = whoMustSign(advice).filter(({ role, must }) => must && sign_off[role] === null);
  return {
    title: record.title,
    head: [
      { label: 'Wall', value: wall.title },
      { label: 'Place', value: `${advice.site.place}, zone ${advice.site.climate_zone}` },
      { label: 'Record', value: `revision ${revision}, ${status}, digest ${digest.slice(0, 16)}` },
      { label: 'Area', value: `${numberText(areaOf(wall))} ft² of wall, openings not taken off` },
    ],
    notice:
      status === 'accepted' && missing.length === 0
        ? 'Accepted. Where the wall found on site differs from this sheet, stop and ask before going on.'
        : `Not to be built from yet: the record is ${status}${missing.length > 0 ? `, and ${missing.map(({ role }) => role).join(', ')} must sign` : ''}.`,
    sections: [
      { id: 'sequence', heading: 'Order of work', blocks: sequence(wall) },
      { id: 'fasteners', heading: 'Fasteners', blocks: fasteners(wall) },
      { id: 'take-off', heading: 'What to buy', blocks: takeOffTable(lines) },
      { id: 'site', heading: 'On site', blocks: site(wall, all, practice) },
    ].filter((section) => section.blocks.length > 0),
    appendix: [],
    appendixNote: '',
  };
}

/** The area that everything is counted on. */
export function areaOf(wall: RankedAssembly): number {
  return wall.thermal.assumptions.wall_area_ft2;
}

function sequence(wall: RankedAssembly): RecordBlock[] {
  const { buck, openings, crew } = wall;
  const others = otherSequences(openings, buck.flashing_sequence).map((one) => openingTitle(one, 1));
  return present([
    { kind: 'subheading', text: 'First' },
    listOf([
      {
        text: 'Permit in hand, record signed, studs found and marked, services found, switched off and marked.',
        hold: 'Nobody drives a long screw before the services are marked.',
      },
    ]),
    ...under('Barrier, openings and boards', listOf(buck.flashing_sequence.map(stepItem), true)),
    others.length === 0
      ? null
      : {
          kind: 'paragraph',
          text: `In another order, as the record's appendix has it: ${others.join('; ')}.`,
        },
    ...under(
      'Cladding',
      listOf(
        crew.steps.map((step, i) => ({
          text: capital(step),
          ...(isGlued(wall) ? gluedHoldOf(wall, step) : holdOf(wall, step, i)),
        })),
        true,
      ),
    ),
  ]);
}

/** Steps of the answer carry their hold point after "HOLD:". */
function stepItem(text: string): ListItem {
  const [step = text, hold] = text.split(/\s*HOLD:\s*/);
  return hold === undefined ? { text: step } : { text: step, hold };
}

/** Hold points of the cladding: before something is covered for good. Common practice, no source. */
function holdOf(wall: RankedAssembly, step: string, position: number): { hold?: string } {
  if (position === 0)
    return { hold: 'boards tight, joints offset, every fastener in a stud, before this hides them.' };
  if (/scratch|base coat/i.test(step))
    return { hold: 'lath laps, ties, screeds and joints looked at and photographed first.' };
  if (/^finish coat/i.test(step)) return { hold: 'curing time over, no soft spots or open cracks.' };
  if (/panels|siding/i.test(step))
    return {
      hold: `furring true and over the studs, screens in${isWindowless(wall) ? '' : ', head flashings open'}.`,
    };
  return {};
}

function isGlued({ fastening }: RankedAssembly): boolean {
  return fastening.support === 'adhered';
}

/** The same where nothing but glue holds the boards. */
function gluedHoldOf(wall: RankedAssembly, step: string): { hold?: string } {
  if (/glued/i.test(step))
    return {
      hold: 'barrier dry, sound and of the kind that the report names, glue and pattern as it says, before a board hides them.',
    };
  if (/base coat/i.test(step))
    return { hold: 'boards tight and flat, joints offset and closed, before the coat hides them.' };
  return holdOf(wall, step, Number.NaN);
}

function fasteners(wall: RankedAssembly): RecordBlock[] {
  const { steps, why, corner_zone } = wall.fastening_schedule;
  const carrying = steps.find((step) => step.aim !== null && step.does === 'carries');
  return present([
    fastenerTable(steps),
    { kind: 'paragraph', text: `${sentence(why)} ${sentence(corner_zone.text)}` },
    carrying?.aim
      ? {
          kind: 'paragraph',
          text: `Hitting the studs: ${[aimWords(carrying.aim), ...carrying.aim.how].map(sentence).join(' ')}`,
        }
      : null,
  ]);
}

function takeOffTable(lines: readonly TakeOffLine[]): RecordBlock[] {
  return present([
    tableOf(
      'Take-off with waste; for quotes, measure again before ordering (common practice, no source, where nothing else is said)',
      [
        { title: 'Item' },
        { title: 'Net', isNumber: true },
        { title: 'Unit' },
        { title: 'Waste, %', isNumber: true },
        { title: 'Order', isNumber: true },
        { title: 'In' },
        { title: 'How counted' },
      ],
      lines.map((line) => [
        line.item,
        line.net === null ? 'measure' : numberText(line.net),
        line.unit,
        line.net === null ? '' : `${line.waste_percent}`,
        line.order === null ? 'measure' : numberText(line.order),
        line.order === null ? '' : line.order_unit,
        line.how,
      ]),
    ),
  ]);
}

function site(wall: RankedAssembly, cautions: readonly Caution[], practice: SitePractice): RecordBlock[] {
  const has = (role: string) => wall.layers.some((layer) => layer.role === role);
  const isPlaster = wall.layers.some(
    ({ role, label }) => role === 'finish' && /plaster|one-coat/i.test(label),
  );
  const tools = [
    ...practice.tools.always,
    ...(isPlaster ? practice.tools.plaster : []),
    ...(has('furring') ? practice.tools.furring : []),
    ...(/panel|lap siding/i.test(wall.cladding) ? practice.tools.panels : []),
  ];
  const limits = LIMITS.flatMap((rule) => cautions.find((caution) => caution.rule === rule) ?? []);
  const crew = CREW_KINDS.flatMap((kind) =>
    cautions.filter((caution) => caution.kind === kind && !limits.includes(caution) && concernsCrew(caution)),
  );
  const words = ({ text, remedy }: Caution) => ({
    text: remedy ? `${sentence(text)} ${sentence(remedy)}` : text,
  });
  return present([
    ...under('Weather and curing limits', listOf(limits.map(words))),
    ...under('Cautions for the crew', listOf(crew.map(words))),
    ...under('Tools', { kind: 'paragraph', text: `${capital(tools.join('; '))}.` }),
    ...under('Photograph', listOf(pictures(wall, practice).map((text) => ({ text })))),
  ]);
}

/** What to photograph: fasteners, lath and coats only where the wall has them. */
function pictures(wall: RankedAssembly, { photograph }: SitePractice): string[] {
  const { layers } = wall;
  const hasLath = layers.some(({ label }) => /\blath\b/i.test(label));
  const hasCoats = hasLath || layers.some(({ role, label }) => role === 'finish' && /\bcoat/i.test(label));
  return [
    ...photograph.always,
    ...(isWindowless(wall) ? [] : photograph.openings),
    ...(isGlued(wall) ? photograph.glue : photograph.fasteners),
    ...(hasLath ? photograph.lath : []),
    ...(hasCoats ? photograph.coats : []),
    ...photograph.end,
  ];
}

/** What hurts people at work; what a designer settles stands in the record. */
function concernsCrew({ kind, rule }: Caution): boolean {
  return kind !== 'fire' || rule === undefined || rule.startsWith('safety.');
}
