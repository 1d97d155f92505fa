import type { RankedAssembly } from '../advice/advice-schema.ts';
import { capital } from '../base/first-letter.ts';
import { momentText } from './figure-text.ts';
import type { RecordBlock, RecordDocument, RecordSection } from './record-document.ts';
import type { DecisionRecord } from './record-schema.ts';
import { alternatives, alternativesInFull, changes, excluded } from './sections/comparison.ts';
import { costAndWeight, crew, decision, scores } from './sections/decision.ts';
import { houseRules } from './sections/house.ts';
import {
  budget,
  excludedInBrief,
  keyFigures,
  openingsInBrief,
  scheduleInBrief,
  toSettle,
  traceInBrief,
} from './sections/in-brief.ts';
import { deadLoad, schedule, wind } from './sections/loads.ts';
import { everyWindow } from './sections/openings.ts';
import { cautions, figures, packs, trace } from './sections/paper-trail.ts';
import { condensate, heat, profile, profileNotes } from './sections/physics.ts';
import { findOutFirst, firmness } from './sections/ranking.ts';
import { assumptions, placeNotes, priorities, questions, situation } from './sections/situation.ts';
import { fastening, layers, openings } from './sections/wall.ts';
import { whoMustSign } from './status/who-must-sign.ts';

function statusWords({ status, superseded_by }: DecisionRecord): string {
  if (status === 'superseded') {
    return superseded_by ? `superseded by ${superseded_by.file}` : 'superseded by a later record';
  }
  return status === 'accepted' ? 'accepted' : 'proposed, not yet accepted';
}

const NOTICE =
  'A proposal worked out by a program, not a design. Local code, the building official and the licensed professional decide. Read the cautions before anyone orders material or climbs a scaffold.';

const CLOSING =
  'This record says what was decided on what was known that day. It does not replace the adopted code, the makers’ instructions, or the judgement of a licensed design professional who knows the building. The building official has the last word.';

/** A record as a document: title, head and every section that has something to say, in reading order. */
export function composeDocument(record: DecisionRecord): RecordDocument {
  const { advice } = record;
  const first = advice.ranked[0];
  const wall = first ?? advice.fallback?.assembly;
  const sections: RecordSection[] = [
    { id: 'decision', heading: 'Decision', blocks: decision(advice) },
    { id: 'situation', heading: 'The situation', blocks: situation(record) },
    { id: 'to-settle', heading: 'Settle before ordering', blocks: toSettle(record) },
    { id: 'house', heading: 'House rules', blocks: houseRules(advice) },
    ...(wall ? wallSections(wall, record) : []),
    { id: 'alternatives', heading: 'Alternatives, and what each gives up', blocks: alternatives(advice) },
    { id: 'excluded', heading: 'Left out, and why', blocks: excludedInBrief(advice) },
    { id: 'changes', heading: 'What would change the answer', blocks: changes(advice) },
    { id: 'find-out', heading: 'Find out first', blocks: findOutFirst(advice) },
    { id: 'cautions', heading: 'Cautions', blocks: cautions(advice) },
    ...(wall
      ? [
          {
            id: 'rules',
            heading: `What the rules said${ofFallback(record)}`,
            blocks: traceInBrief(wall, advice),
          },
        ]
      : []),
    { id: 'sign-off', heading: 'Sign-off', blocks: [signatures(record)] },
    { id: 'closing', heading: 'Who has the last word', blocks: closing(record) },
  ];
  const behind = [
    { id: 'place', heading: 'Notes on the place', blocks: placeNotes(record) },
    { id: 'questions', heading: 'Questions and answers', blocks: questions(record) },
    { id: 'assumptions', heading: 'Assumptions', blocks: assumptions(record) },
    { id: 'priorities', heading: 'What mattered', blocks: priorities(record) },
    ...(wall ? wallAppendix(wall, record) : []),
    { id: 'firmness', heading: 'How firm the first choice is', blocks: firmness(advice) },
    { id: 'alternatives-in-full', heading: 'Alternatives in full', blocks: alternativesInFull(advice) },
    { id: 'excluded-in-full', heading: 'Left out, in full', blocks: excluded(advice) },
    ...(wall ? [{ id: 'trace', heading: `Rule trace${ofFallback(record)}`, blocks: trace(wall) }] : []),
    { id: 'packs', heading: 'Rule packs', blocks: packs(advice) },
  ].filter((section) => section.blocks.length > 0);
  return {
    title: record.title,
    head: [
      { label: 'Status', value: statusWords(record) },
      { label: 'Date', value: momentText(record.created) },
      { label: 'Revision', value: `${record.revision}` },
      ...(record.continues ? [{ label: 'Goes on from', value: record.continues.file }] : []),
      ...(record.supersedes ? [{ label: 'Replaces', value: record.supersedes.file }] : []),
      { label: 'Decision', value: first ? first.title : decisionWithoutFirst(record) },
    ],
    notice: NOTICE,
    sections: sections.filter((section) => section.blocks.length > 0),
    appendix: behind,
    appendixNote: `Not printed: an appendix of ${behind.length} sections${wall ? `, among them all ${wall.verdicts.length} verdicts of the rules` : ''}. It stands on the screen page below, in the .md file and, with every figure, in the .json file of this record.`,
  };
}

/** The wall in detail: of the first choice, or of the fallback when nothing passes as asked. */
function wallSections(wall: RankedAssembly, record: DecisionRecord): RecordSection[] {
  const of = ofFallback(record);
  const area = record.scenario.wall_area_ft2;
  return [
    { id: 'layers', heading: `The wall, inside to outside${of}`, blocks: layers(wall) },
    { id: 'openings', heading: `Windows, bucks and flashing${of}`, blocks: openingsInBrief(wall) },
    { id: 'fastening', heading: `Fastening${of}`, blocks: scheduleInBrief(wall) },
    { id: 'profile', heading: `Temperature and dew point through the wall${of}`, blocks: profile(wall) },
    { id: 'condensate', heading: `Condensate by month${of}`, blocks: condensate(wall) },
    {
      id: 'cost',
      heading: `What it costs and weighs${of}`,
      blocks: [...costAndWeight(wall, typeof area === 'number' ? area : null), ...budget(wall, record)],
    },
    { id: 'key-figures', heading: `Figures${of}`, blocks: keyFigures(wall) },
  ];
}

/** What stands behind it, section by section. */
function wallAppendix(wall: RankedAssembly, record: DecisionRecord): RecordSection[] {
  const of = ofFallback(record);
  return [
    { id: 'scores', heading: `How it scores${of}`, blocks: scores(wall, record.advice) },
    {
      id: 'profile-notes',
      heading: `How temperature and dew point were worked out${of}`,
      blocks: profileNotes(wall),
    },
    { id: 'heat', heading: `Heat and the energy code${of}`, blocks: heat(wall) },
    {
      id: 'schedule',
      heading: `Fastening schedule${of}`,
      blocks: [...fastening(wall), ...schedule(wall), ...wind(record.advice)],
    },
    {
      id: 'flashing',
      heading: `Window buck and flashing${of}`,
      blocks: [...openings(wall), ...everyWindow(wall)],
    },
    { id: 'dead-load', heading: `Dead load${of}`, blocks: deadLoad(wall) },
    { id: 'crew', heading: `What it asks of the crew${of}`, blocks: crew(wall) },
    { id: 'figures', heading: `All figures${of}`, blocks: figures(wall) },
  ];
}

function decisionWithoutFirst({ advice }: DecisionRecord): string {
  const none = 'none of the walls passes every rule';
  return advice.fallback ? `${none}; the fallback is ${advice.fallback.assembly.title}` : none;
}

function ofFallback({ advice }: DecisionRecord): string {
  return advice.ranked.length > 0 ? '' : ' (of the fallback)';
}

function signatures({ sign_off, advice }: DecisionRecord): RecordBlock {
  return {
    kind: 'signatures',
    rows: whoMustSign(advice).map(({ role, must, why }) => ({
      role: capital(role),
      duty: `${must ? 'must sign' : 'signs only if asked'}: ${why}`,
      name: sign_off[role]?.name ?? '',
      date: sign_off[role]?.date ?? '',
    })),
  };
}

function closing({ tool_version, schema, digest }: DecisionRecord): RecordBlock[] {
  return [
    { kind: 'paragraph', text: CLOSING },
    {
      kind: 'facts',
      rows: [
        { label: 'Written by', value: `cladwright ${tool_version}, ${schema}` },
        { label: 'Digest of the record', value: digest },
      ],
    },
  ];
}
