import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { scenarioSchema } from '../../src/brief/scenario.ts';
import { answersSchema } from '../../src/conversation/answers-schema.ts';
import { draftSchema } from '../../src/conversation/draft-schema.ts';
import { QUESTIONS } from '../../src/conversation/questions.ts';
import { Talk, WHOLE_TALK } from './talk.ts';

const line = fc.oneof(
  fc.constantFrom(
    ...WHOLE_TALK,
    ...QUESTIONS.flatMap((q) => q.choices.map((choice) => choice.label)),
    ...QUESTIONS.map((q) => `change ${q.label}`),
    'back',
    'why',
    'help',
    'show',
    'done',
    'save',
    'start over',
    'yes',
    'no',
    'keep',
    'new',
    'none',
    "don't know",
    'lincoln',
    'Bozeman',
    'zone 5',
    '2x4',
    '24 in.',
    'two 24x36 in. windows',
    'all double, flanged',
    'budget 25 a foot',
    'call it Quarry Lane',
    '-3',
  ),
  fc.integer({ min: 0, max: 40 }).map(String),
  fc.string({ maxLength: 30 }),
);

describe('any talk', () => {
  it('keeps its answers valid, its talk whole, and ends when the input does', () => {
    fc.assert(
      fc.property(fc.array(line, { maxLength: 30 }), (lines) => {
        const talk = new Talk();
        let turns = 0;
        for (const text of lines) {
          talk.say(text);
          expect(answersSchema.safeParse(talk.state.answers).success).toBe(true);
          expect(talk.state.turns.length).toBeGreaterThanOrEqual(turns);
          turns = talk.state.turns.length;
          // Nothing is ever left hanging: something is asked, or the talk is over.
          expect(['asking', 'told', 'left']).toContain(talk.state.stage);
          if (talk.state.stage !== 'left') expect(talk.prompt.title).not.toBe('');
        }
        talk.event({ kind: 'input-ended' });
        expect(talk.state.stage).toBe('left');
        expect([0, 2]).toContain(talk.state.exitCode);
        for (const scenario of talk.advised) expect(scenarioSchema.safeParse(scenario).success).toBe(true);
        for (const draft of talk.drafts) {
          const saved_at = '2024-05-06T07:08:09.000Z';
          expect(draftSchema.safeParse(JSON.parse(JSON.stringify({ ...draft, saved_at }))).success).toBe(
            true,
          );
        }
      }),
      { numRuns: 300 },
    );
  });
});
