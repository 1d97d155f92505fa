import { describe, expect, it } from 'vitest';
import { COMMAND_HELP, type Command, readCommand } from '../../src/conversation/command.ts';

const SAID: readonly (readonly [string, Command])[] = [
  ['why?', { kind: 'why' }],
  ['why do you ask', { kind: 'why' }],
  ['go back', { kind: 'back' }],
  ['undo', { kind: 'take-back' }],
  ['is it sane?', { kind: 'sound' }],
  ['does that make sense?', { kind: 'sound' }],
  ['So, is this a good idea?', { kind: 'sound' }],
  ['is it affordable?', { kind: 'affordable' }],
  ['can we afford it', { kind: 'affordable' }],
  ['what will it cost in all?', { kind: 'affordable' }],
  ['how much is the whole thing', { kind: 'affordable' }],
  ['the price is too high', { kind: 'too-dear' }],
  ['too expensive', { kind: 'too-dear' }],
  ["that's too expensive for us", { kind: 'too-dear' }],
  ['can we make it cheaper?', { kind: 'too-dear' }],
  ["that's over my budget", { kind: 'too-dear' }],
  ['is there anything cheaper?', { kind: 'too-dear' }],
  ['something cheaper', { kind: 'too-dear' }],
  ['show me a cheaper one', { kind: 'too-dear' }],
  ["we can't afford that", { kind: 'too-dear' }],
  ['it costs too much', { kind: 'too-dear' }],
  ['what costs the most?', { kind: 'too-dear' }],
  ['how do I bring the price down?', { kind: 'too-dear' }],
  ['this is way too much money', { kind: 'too-dear' }],
  ['why is it so expensive?', { kind: 'too-dear' }],
  ['too pricey', { kind: 'too-dear' }],
  ["it's over budget", { kind: 'too-dear' }],
  ['what should I ask a contractor?', { kind: 'contractor' }],
  ['what do I ask the builder before hiring', { kind: 'contractor' }],
  ['questions for a plasterer', { kind: 'contractor' }],
  ['what should I ask?', { kind: 'contractor' }],
  ['what should I ask first?', { kind: 'find-out' }],
  ["no, that's wrong", { kind: 'take-back' }],
  ['not right', { kind: 'take-back' }],
  ['what can I ask?', { kind: 'help' }],
  ['show my answers', { kind: 'show' }],
  ['show the answer', { kind: 'answer' }],
  ['what do you think so far?', { kind: 'impression' }],
  ['glossary', { kind: 'words' }],
  ['projects', { kind: 'projects' }],
  ['show my projects', { kind: 'projects' }],
  ['open Pine Street', { kind: 'open-project', name: 'Pine Street' }],
  ['open project "Barn"', { kind: 'open-project', name: 'Barn' }],
  ['new project', { kind: 'new-project', name: null }],
  ['begin a new project called Barn 2', { kind: 'new-project', name: 'Barn 2' }],
  ['rename it to Oak Hall', { kind: 'name', name: 'Oak Hall' }],
  ['call it Oak Hall', { kind: 'name', name: 'Oak Hall' }],
  ['plain words', { kind: 'reader', reader: 'homeowner' }],
  ["I'm a homeowner", { kind: 'reader', reader: 'homeowner' }],
  ["we're just homeowners", { kind: 'reader', reader: 'homeowner' }],
  ['I am not a builder', { kind: 'reader', reader: 'homeowner' }],
  ['no jargon please', { kind: 'reader', reader: 'homeowner' }],
  ['figures first', { kind: 'reader', reader: 'professional' }],
  ["I'm an engineer", { kind: 'reader', reader: 'professional' }],
  ['drawing', { kind: 'picture', picture: 'section', rank: null }],
  ['show me the drawing of the second wall', { kind: 'picture', picture: 'section', rank: 2 }],
  ['draw the wall', { kind: 'picture', picture: 'section', rank: null }],
  ['dew point', { kind: 'picture', picture: 'temperatures', rank: null }],
  ['condensate of 3', { kind: 'picture', picture: 'condensate', rank: 3 }],
  ['scores 2', { kind: 'picture', picture: 'scores', rank: 2 }],
  ['show the fastening', { kind: 'picture', picture: 'fastening', rank: null }],
  ['show me the buck', { kind: 'picture', picture: 'buck', rank: null }],
  ['show the numbers', { kind: 'numbers', rank: null }],
  ['numbers of wall 2', { kind: 'numbers', rank: 2 }],
  ['compare', { kind: 'compare', ranks: [1, 2] }],
  ['compare 3', { kind: 'compare', ranks: [1, 3] }],
  ['compare wall 2 with wall 3', { kind: 'compare', ranks: [2, 3] }],
  ['compare the first with the second', { kind: 'compare', ranks: [1, 2] }],
  ['what if the budget were $24 a foot?', { kind: 'what-if', words: 'the budget were $24 a foot' }],
  ['suppose the crew knew stucco', { kind: 'what-if', words: 'the crew knew stucco' }],
  ['why not mineral wool?', { kind: 'why-not', words: 'mineral wool' }],
  ["what's wrong with polyiso", { kind: 'why-not', words: 'polyiso' }],
  ['what is a buck?', { kind: 'explain', word: 'buck' }],
  ['what does furring mean', { kind: 'explain', word: 'furring' }],
  ['explain weep screed', { kind: 'explain', word: 'weep screed' }],
  ['save as Pine Street', { kind: 'save', name: 'Pine Street' }],
  ['change budget to 28', { kind: 'change', question: 'budget', near: [], then: '28' }],
];

describe('what is said to the advisor', () => {
  it.each(SAID)('"%s"', (said, command) => {
    expect(readCommand(said)).toEqual(command);
  });

  it.each([
    ['budget is not right', 'budget', null],
    ['The budget is wrong.', 'budget', null],
    ["no, that's not my climate zone", 'place', null],
    ["that isn't my county", 'place', null],
    ["the stud spacing isn't right", 'framing', null],
    ['the windows are all wrong', 'windows', null],
    ['wrong climate zone', 'place', null],
    ['you got the roof height wrong', 'wind', null],
    ['the budget figure is wrong, it should be 28 a foot', 'budget', '28 a foot'],
  ] as const)('takes "%s" for wanting to change that answer', (said, question, then) => {
    expect(readCommand(said)).toEqual({ kind: 'change', question, near: [], then });
  });

  it.each(['that is not my house', 'the wall is wrong', 'not my idea', 'the budget is 28'])(
    'takes "%s" for no command, as no question goes by that name or nothing is said to be wrong',
    (said) => {
      expect(readCommand(said)).toBeNull();
    },
  );

  it.each([
    // Answers that begin like a command.
    'open country',
    'open',
    'new',
    'new construction',
    'no',
    'none',
    'fixed',
    'anything',
    'what the county says',
    'two 4x5 fixed windows',
    'compare it',
  ])('"%s" is not a command', (said) => {
    const command = readCommand(said);
    expect(command === null || command.kind === 'compare').toBe(true);
    if (said !== 'compare it') expect(command).toBeNull();
  });

  it('knows every phrase that help lists', () => {
    for (const { rows } of COMMAND_HELP) {
      for (const { say } of rows) {
        if (say === "don't know") continue; // an answer
        expect(readCommand(say.replace('…', 'something')), say).not.toBeNull();
      }
    }
  });
});
