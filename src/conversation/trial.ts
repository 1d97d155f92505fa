import type { Impression } from '../advice/first-impression.ts';
import { Refusal } from '../base/refusal.ts';
import type { Answers, FieldId, Finding } from './answers.ts';
import { withAnswer } from './answers-schema.ts';
import type { Block, FigureRow } from './blocks.ts';
import { withTotalDivided } from './budget-total.ts';
import { describeAnswer, dollarsInAll, FIELD_LABELS } from './describe.ts';
import { QUESTIONS } from './questions.ts';
import type { Trial } from './state.ts';
import type { Context, Reading } from './understanding/reading.ts';
import { understand } from './understanding/understand.ts';

/** Words of a "what if" that say nothing about the wall. */
const CONDITIONAL =
  /\b(?:were|was|is|stood|stands|lies|lay|had|used|use|took|take|chose|spent|instead|only|just|could be|went with|i|we|hired?|got|get|brought in|bring in)\b/g;

/**
 * What a "what if" changes, read without any question being asked: first as it stands, then as an answer to the question
 * that it names, last as an answer to each question in turn, which counts only when exactly one takes it.
 *
 * @param total_usd  the budget as it was given, where that was one sum for the whole wall
 * @returns null when nothing, or more than one thing, could be meant
 */
export function readTrial(words: string, answers: Answers, total_usd: number | null = null): Trial | null {
  const text = words.replace(CONDITIONAL, ' ').replace(/\s+/g, ' ').trim();
  const tryAs = (id: Context['question'], said = text) =>
    cleanTrial(said, contextFor(id, answers), answers, total_usd);
  const plain = tryAs(null);
  if (plain) return plain;
  const named = QUESTIONS.filter(({ label, aliases }) =>
    [label.toLowerCase(), ...aliases].some((name) => new RegExp(`\\b${name}\\b`).test(text)),
  );
  for (const question of named) {
    const names = [question.label.toLowerCase(), ...question.aliases].join('|');
    const value = text.replace(new RegExp(`\\b(?:the |a |an )?(?:${names})\\b`, 'g'), ' ').trim();
    const trial = tryAs(question.id) ?? tryAs(question.id, value);
    if (trial) return trial;
  }
  const taken = QUESTIONS.flatMap(({ id }) => {
    const trial = tryAs(id);
    return trial ? [trial] : [];
  });
  return taken.length === 1 ? (taken[0] ?? null) : null;
}

function contextFor(id: Context['question'], answers: Answers): Context {
  const question = QUESTIONS.find((candidate) => candidate.id === id);
  return {
    question: id,
    open: question?.parts.map(({ field }) => field) ?? [],
    answers,
    choices: [],
    windowsPhase: null,
    windowsMissing: [],
    isHomeowner: false,
  };
}

function cleanTrial(
  text: string,
  context: Context,
  answers: Answers,
  total_usd: number | null,
): Trial | null {
  const reading = withTotalDivided(withOwnTotal(understand(text, context), total_usd), answers);
  if (reading.unclear.length > 0 || reading.either || reading.unframed || reading.place !== null) return null;
  const changes = [...reading.findings, ...unknownsOf(reading), ...windowChanges(reading, answers)];
  if (changes.length === 0) return null;
  let tried = answers;
  try {
    for (const { field, value } of changes) tried = withAnswer(tried, field, value);
  } catch (error) {
    if (error instanceof Refusal) return null;
    throw error;
  }
  return { answers: tried, changes };
}

/** One sum for the whole wall is another price of a square foot where the wall is another size. */
function withOwnTotal(reading: Reading, total_usd: number | null): Reading {
  const says = (field: FieldId) => reading.findings.some((finding) => finding.field === field);
  if (total_usd === null || reading.budgetTotal || says('budget_usd_per_ft2') || !says('wall_area_ft2'))
    return reading;
  return { ...reading, budgetTotal: { usd: total_usd, words: `${dollarsInAll(total_usd)} in all` } };
}

function unknownsOf({ unknowns }: Reading): Finding[] {
  return unknowns.map((field) => ({ field, value: 'unknown' as const, words: '' }));
}

/** Whole kinds of window stand for a new list; loose aspects ("triple glazing") change every kind there is. */
function windowChanges({ windows }: Reading, { windows: known }: Answers): Finding[] {
  if (windows.length === 0) return [];
  const said = windows.map(({ window }) => window);
  const isList = said.some(({ count, width_in }) => count !== undefined || width_in !== undefined);
  const value =
    isList || !Array.isArray(known) ? said : known.map((window) => Object.assign({}, window, ...said));
  return [{ field: 'windows', value, words: '' }];
}

/** What was tried, and the first choice before and after. */
export function trialBlocks(trial: Trial, answers: Answers, now: Impression, then: Impression): Block[] {
  return [
    {
      kind: 'chips',
      lead: 'Tried',
      items: trial.changes.map(({ field, value }) => changeWords(field, answers, value)),
    },
    { kind: 'figures', rows: besides(now, then) },
    {
      kind: 'paragraph',
      text: isSameFirst(now, then)
        ? 'The first choice stays the same.'
        : 'The first choice becomes another one.',
      role: 'note',
    },
  ];
}

function changeWords(field: FieldId, answers: Answers, value: Finding['value']): string {
  const before = answers[field];
  const was = before === undefined ? 'not said' : describeAnswer(field, before);
  return `${FIELD_LABELS[field]}: ${was} -> ${describeAnswer(field, value)}`;
}

function isSameFirst(now: Impression, then: Impression): boolean {
  return now.first?.title === then.first?.title;
}

function besides(now: Impression, then: Impression): FigureRow[] {
  const row = (label: string, of: (first: NonNullable<Impression['first']>) => string): FigureRow => ({
    label,
    value: `${now.first ? of(now.first) : 'none'} -> ${then.first ? of(then.first) : 'none'}`,
  });
  return [
    { label: 'First choice now', value: now.first?.title ?? 'no wall passes' },
    { label: 'First choice then', value: then.first?.title ?? 'no wall passes' },
    row('Likely cost', ({ likely_usd_per_ft2 }) => `$${likely_usd_per_ft2.toFixed(0)} a square foot`),
    row('U-factor', ({ u_factor }) => u_factor.toFixed(3)),
    row('Added thickness', ({ added_thickness_in }) => `${added_thickness_in.toFixed(1)} in.`),
    row('Weight', ({ weight_psf }) => `${weight_psf.toFixed(1)} psf`),
    {
      label: 'Walls still in',
      value: `${now.admitted.toLocaleString('en-US')} -> ${then.admitted.toLocaleString('en-US')}`,
    },
  ];
}
