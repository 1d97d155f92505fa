import { fieldWordsWithUnit } from '../../brief/field-words.ts';
import { figureText, keyWords, numberText, sentence } from '../figure-text.ts';
import { factsOf, listOf, present, type RecordBlock, tableOf } from '../record-document.ts';
import type { DecisionRecord } from '../record-schema.ts';
import { assumedWords, scenarioFields } from './scenario-words.ts';

const REGIMES: Readonly<Record<string, string>> = { A: 'moist (A)', B: 'dry (B)', C: 'marine (C)' };

const PRIORITY_WORDS: Readonly<Record<string, string>> = {
  cost: 'low cost',
  moisture_safety: 'safety against moisture',
  energy: 'low energy use',
  ease: 'easy to build',
  carbon: 'low carbon',
};

/** Where the wall stands, what is there, and what was wished, as it was given. */
export function situation({ scenario, advice }: DecisionRecord): RecordBlock[] {
  const { site } = advice;
  const fields = scenarioFields(scenario);
  return present([
    factsOf([
      { label: 'Place', value: site.place },
      { label: 'Climate zone', value: `${site.climate_zone} (${site.zone_source})` },
      site.moisture_regime === null
        ? null
        : { label: 'Moisture regime', value: REGIMES[site.moisture_regime] ?? site.moisture_regime },
      {
        label: 'Mean of the coldest months',
        value: withSource(figureText(site.winter_mean_temp_f, '°F'), site.climate_source),
      },
      { label: 'Yearly precipitation', value: figureText(site.annual_precip_in, 'in.') },
      { label: 'Code edition', value: advice.code_edition },
      ...fields.map(({ label, value }) => (value === null ? null : { label, value })),
    ]),
  ]);
}

/** What is said of the climate data of the place. */
export function placeNotes({ advice }: DecisionRecord): RecordBlock[] {
  return present([listOf(advice.site.notes.map((text) => ({ text })))]);
}

function withSource(value: string, source: string | null): string {
  return source === null ? value : `${value} (${source})`;
}

export function questions({ advice }: DecisionRecord): RecordBlock[] {
  return present([
    tableOf(
      'What was asked and what was answered',
      [{ title: 'Question' }, { title: 'Answer' }],
      advice.answers.map(({ question, answer }) => [question, answer]),
    ),
  ]);
}

/** What was not said and had to be taken as given; those that could change the answer come first. */
export function assumptions({ advice }: DecisionRecord): RecordBlock[] {
  const sorted = [...advice.assumptions].sort(
    (a, b) => Number(b.could_change_answer) - Number(a.could_change_answer),
  );
  const deciding = sorted.filter((a) => a.could_change_answer).length;
  return present([
    deciding === 0
      ? null
      : {
          kind: 'paragraph',
          isStrong: true,
          text:
            deciding === 1
              ? 'One of these could change the answer. Settle it before ordering material.'
              : `${deciding} of these could change the answer. Settle them before ordering material.`,
        },
    tableOf(
      'What was not said and was taken as given',
      [{ title: 'What' }, { title: 'Taken as' }, { title: 'Why' }, { title: 'Could change the answer' }],
      sorted.map((a) => [
        fieldWordsWithUnit(a.field),
        assumedWords(a.field, a.value),
        a.why,
        a.could_change_answer ? 'yes, settle first' : 'no',
      ]),
    ),
  ]);
}

/** The weights as the user gave them, heaviest first. */
export function priorities({ scenario, advice }: DecisionRecord): RecordBlock[] {
  const given = scenario.priorities;
  const weights =
    given === undefined || given === 'unknown'
      ? []
      : Object.entries(given).flatMap(([key, weight]) =>
          typeof weight === 'number' ? [{ key, weight }] : [],
        );
  if (weights.length > 0) {
    const sorted = weights.sort((a, b) => b.weight - a.weight);
    return present([
      tableOf(
        'What mattered, heaviest first',
        [{ title: 'What' }, { title: 'Weight', isNumber: true }],
        sorted.map(({ key, weight }) => [PRIORITY_WORDS[key] ?? keyWords(key), numberText(weight)]),
      ),
    ]);
  }
  const assumed = advice.assumptions.find((a) => a.field === 'priorities');
  const taken = assumed ? ` Taken as: ${sentence(assumedWords('priorities', assumed.value))}` : '';
  return [{ kind: 'paragraph', text: `No weights were given.${taken}` }];
}
