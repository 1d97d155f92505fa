import { describe, expect, it } from 'vitest';
import { nextQuestion } from '../../src/conversation/agenda.ts';
import type { Answers } from '../../src/conversation/answers.ts';
import type { Draft } from '../../src/conversation/draft.ts';
import { outlookLine } from '../../src/conversation/outlook.ts';
import { sampleImpression } from './fake-services.ts';
import { Talk, WHOLE_TALK } from './talk.ts';

const impression = sampleImpression({ schema: 'cladwright-scenario/1', place: { climate_zone: '5B' } });

/** What the front end found out about the answers in hand. */
function outlook(talk: Talk, matters: readonly string[] | null): Talk {
  return talk.event({
    kind: 'outlook-found',
    outlook: { answers: talk.state.answers, impression, matters },
  });
}

describe('what is asked next', () => {
  const next = (answers: Answers, guide: readonly string[] | null) =>
    nextQuestion({ answers, windowsComplete: false, reopened: null, guide, history: [] })?.id;
  const place: Answers = { place: { climate_zone: '5B' } };

  it('is the place, whatever matters', () => {
    expect(next({}, ['finish'])).toBe('place');
  });

  it('is what tells most about the first choice, in the order of the guide', () => {
    expect(next(place, ['finish', 'crew_skill'])).toBe('finish');
    expect(next({ ...place, finish: 'any' }, ['finish', 'crew_skill'])).toBe('crew');
    expect(next(place, ['windows[0].weight_lb'])).toBe('windows');
    expect(next(place, ['framing.depth_in'])).toBe('framing');
  });

  it('is the next of the list where nothing is known, or nothing that matters is left', () => {
    expect(next(place, null)).toBe('project');
    expect(next(place, [])).toBe('project');
  });

  it('is the one just begun until it is answered in full, whatever tells more', () => {
    const talk = outlook(new Talk().say('zone 5B', 'new'), ['finish']).say('2x6');
    expect(talk.prompt.title).toContain('Still open: the spacing of the studs');
    expect(talk.say('16').prompt.label).toBe('Finish');
    talk.say('change windows', 'six 3x5 ft casements');
    expect(talk.prompt.title).toContain('For the 6 casements, 36 x 60 in., still open');
  });

  it('stays the same after a line that answered nothing', () => {
    const talk = outlook(new Talk().say('zone 5B', 'new'), ['crew_skill']);
    expect(talk.prompt.label).toBe('Framing');
    expect(talk.say('hm').prompt.label).toBe('Framing');
    expect(talk.say('2x6 at 16').prompt.label).toBe('Who builds it');
  });

  it('never changes under the user’s hands: a new guide is taken over with the next answer', () => {
    const talk = new Talk().say('zone 5B');
    outlook(talk, ['finish']);
    expect(talk.prompt.label).toBe('New or retrofit');
    talk.say('new');
    expect(talk.prompt.label).toBe('Finish');
    expect(talk.prompt.why).toContain('It may still change the first choice.');
  });
});

describe('the choices', () => {
  it('leave out lumber for steel studs, and steel depths for wood', () => {
    const steel = new Talk().say('zone 5B', 'new', 'steel at 16');
    expect(steel.prompt.choices).toEqual(expect.arrayContaining(['3 5/8 in. deep', '6 in. deep']));
    expect(steel.prompt.choices).not.toContain('2x6');
    const wood = new Talk().say('zone 5B', 'new', 'wood at 16');
    expect(wood.prompt.choices).toEqual(['2x4', '2x6']);
  });
});

describe('a running impression', () => {
  it('stands beside the question in one sentence, and says when it is older than the last answer', () => {
    const talk = outlook(new Talk().say('zone 5B'), null);
    expect(outlookLine(talk.state)).toBe(
      'So far: Three-coat stucco over 3 in. of mineral wool; 498 of 4,321 walls still in.',
    );
    talk.say('new');
    expect(outlookLine(talk.state)).toMatch(/^So far \(before your last answer\): /);
  });

  it('is told at length when asked for, worked out first where it is old', () => {
    const talk = new Talk().say('zone 5B', 'what do you think so far?');
    expect(talk.last()).toContain('So far: Three-coat stucco');
    expect(talk.last()).toContain('$29 a square foot');
    expect(talk.last()).toContain('A first impression');
    expect(new Talk().say('impression').last()).toContain('needs at least the place');
  });
});

describe('looking ahead between two questions', () => {
  const matters = (said: object) =>
    ['finish', 'crew_skill', 'framing.depth_in'].filter(
      (field) => !((field.split('.')[0] as string) in said),
    );
  const talk = () => new Talk({ looksAhead: true, matters });

  it('asks by what was weighed for the answers in hand, the same way every time', () => {
    const first = talk().say('zone 5B', 'new');
    expect(first.prompt.label).toBe('Finish');
    expect(first.say('any').prompt.label).toBe('Who builds it');
    expect(first.say('general carpenters').prompt.label).toBe('Framing');
  });

  it('finishes a question that is half answered before it weighs anew', () => {
    const half = talk().say('zone 5B, new', 'any', 'general carpenters', '2x6');
    expect(half.prompt.title).toContain('Still open: the spacing of the studs');
    const weighed = half.effects.filter(({ kind }) => kind === 'look-ahead').length;
    half.say('16 in.');
    expect(half.effects.filter(({ kind }) => kind === 'look-ahead')).toHaveLength(weighed + 1);
    expect(half.prompt.label).toBe('Enough asked');
    expect(half.say('1').state.stage).toBe('told');
  });

  it('asks in the order of the list where nothing can be weighed, and before the place is known', () => {
    expect(
      talk()
        .say('new')
        .effects.some(({ kind }) => kind === 'look-ahead'),
    ).toBe(false);
    const none = talk().say('zone 5B');
    none.state = { ...none.state, stage: 'weighing', guide: null };
    expect(none.event({ kind: 'looked-ahead', outlook: null }).prompt.label).toBe('New or retrofit');
    none.state = { ...none.state, stage: 'weighing' };
    expect(none.event({ kind: 'stopped' }).state.stage).toBe('asking');
  });
});

describe('enough asked', () => {
  const settled = () => outlook(new Talk().say('zone 5B', 'new', '2x6 at 16'), []);

  it('is said once nothing that is still open would change the first choice', () => {
    const { prompt } = settled();
    expect(prompt.label).toBe('Enough asked');
    expect(prompt.title).toContain(
      'The first choice is settled: Three-coat stucco over 3 in. of mineral wool.',
    );
  });

  it('leads to the answer, or on with the questions, and is not said twice', () => {
    expect(settled().say('1').state.stage).toBe('told');
    const on = settled().say('go on');
    expect(on.prompt.label).toBe('Sheathing');
    on.say('osb');
    outlook(on, []);
    expect(on.prompt.label).toBe('Cavity insulation');
  });

  it('takes an answer to the question that stood there for what it is', () => {
    const talk = settled().say('osb');
    expect(talk.state.answers.sheathing).toBe('osb');
    expect(talk.prompt.label).toBe('Cavity insulation');
  });

  it('is not said while something that matters is open, for older answers, or in the middle of something', () => {
    expect(outlook(new Talk().say('zone 5B'), ['crew_skill']).prompt.label).toBe('New or retrofit');
    const older = new Talk().say('zone 5B');
    const { answers } = older.state;
    older.say('new').event({ kind: 'outlook-found', outlook: { answers, impression, matters: [] } });
    expect(older.prompt.label).toBe('Framing');
    expect(outlook(new Talk().say('zone 5B', 'back'), []).prompt.label).toBe('Place');
  });
});

describe('stopped work', () => {
  it('goes back to the question, nothing lost', () => {
    const talk = new Talk();
    talk.say('zone 5B');
    talk.state = { ...talk.state, stage: 'advising', assumeRest: true };
    talk.event({ kind: 'stopped' });
    expect(talk.prompt.label).toBe('New or retrofit');
    expect(talk.last()).toContain('Stopped. Nothing is lost');
    talk.say('done');
    expect(talk.state.stage).toBe('told');
  });

  it('with nothing left to ask, offers to work it out after all', () => {
    const talk = new Talk().say('zone 5B', 'done');
    // As if the answer had never come.
    talk.state = { ...talk.state, stage: 'told', advice: null, advisedAnswers: null };
    expect(talk.prompt.label).toBe('Stopped');
    talk.say('work it out');
    expect(talk.state.stage).toBe('told');
    expect(talk.prompt.label).toBe('Decision record');
  });

  it('leaves nothing to save: the answer told before is of other answers', () => {
    const talk = new Talk().say(...WHOLE_TALK);
    const answered = talk.state;
    talk.say('change budget to 20');
    // As if the second answer had been stopped.
    talk.state = { ...talk.state, advice: answered.advice, advisedAnswers: answered.advisedAnswers };
    talk.say('save');
    expect(talk.effects.some(({ kind }) => kind === 'save-record')).toBe(false);
    expect(talk.last()).toContain('"work it out"');
  });

  it('is no event while nothing is under way', () => {
    const talk = new Talk().say('zone 5B');
    const before = talk.state;
    expect(talk.event({ kind: 'stopped' }).state).toBe(before);
  });
});

describe('several projects', () => {
  const barn: Draft = {
    schema: 'cladwright-draft/1',
    saved_at: '2024-05-06T07:08:09.000Z',
    answers: { name: 'Barn', place: { climate_zone: '6A' }, project: 'new' },
    windows_complete: false,
    history: ['place'],
  };

  it('are listed with how far they are', () => {
    const talk = new Talk().event({
      kind: 'projects-listed',
      projects: [
        { name: 'Barn', saved_at: '2024-05-06T07:08:09.000Z', answered: 3, finished: false },
        { name: null, saved_at: '2024-05-05T07:08:09.000Z', answered: 1, finished: true },
      ],
    });
    expect(talk.last()).toMatch(/Barn\s+3 answers, 2024-05-06/);
    expect(talk.last()).toMatch(/\(no name yet\)\s+1 answers, 2024-05-05, record saved/);
  });

  it('are opened by name: the answers in hand are others then, and kept anew', () => {
    const talk = new Talk().say('zone 5B', 'call it Shed');
    talk.event({ kind: 'project-opened', name: 'Barn', draft: barn, near: [] });
    expect(talk.state.answers).toEqual(barn.answers);
    expect(talk.prompt.label).toBe('Framing');
    expect(talk.last()).toContain('Going on with "Barn".');
    expect(talk.drafts.at(-1)?.answers).toEqual(barn.answers);
    // What the other talk had said can't be taken back into this one.
    expect(talk.say('not right').last()).toContain('There is nothing to take back.');
  });

  it('that are not there are said so, with the names that are near', () => {
    const talk = new Talk().event({ kind: 'project-opened', name: 'Bran', draft: null, near: ['Barn'] });
    expect(talk.last()).toContain('No kept talk is called "Bran". Did you mean "Barn"?');
  });

  it('are begun anew once the one in hand has a name', () => {
    const talk = new Talk().say('zone 5B', 'new project');
    expect(talk.last()).toContain('This talk has no name yet');
    expect(talk.state.answers.place).toBeDefined();
    talk.say('call it Shed', 'new project Barn');
    expect(talk.state.answers).toEqual({ name: 'Barn' });
    const kinds = talk.effects.map(({ kind }) => kind);
    expect(kinds.lastIndexOf('put-away')).toBeLessThan(kinds.lastIndexOf('keep-draft'));
  });

  it('a fresh start leaves a kept project alone, and forgets a talk without a name', () => {
    expect(new Talk({ draft: barn }).say('start fresh').effects).toEqual([{ kind: 'put-away' }]);
    const { name: _, ...answers } = barn.answers;
    const nameless = { ...barn, answers };
    expect(new Talk({ draft: nameless }).say('start fresh').effects).toEqual([{ kind: 'drop-draft' }]);
  });

  it('stay kept, as finished, when their record is saved', () => {
    const talk = new Talk().say('zone 5B', 'call it Shed', 'done', 'save');
    expect(talk.drafts.at(-1)).toMatchObject({ answers: { name: 'Shed' }, finished: true });
    expect(talk.effects.some(({ kind }) => kind === 'drop-draft')).toBe(false);
  });
});
