import { describe, expect, it } from 'vitest';
import data from '../../src/conversation/data/standing-walls.json' with { type: 'json' };
import { standingWallsSchema } from '../../src/conversation/understanding/standing-walls.ts';
import { Talk, WHOLE_TALK } from './talk.ts';

const SHEATHING = 3;
const asked = (question: number, ...lines: readonly string[]) =>
  new Talk().say(...WHOLE_TALK.slice(0, question), ...lines);
const framing = (...lines: readonly string[]) => asked(2, ...lines);

describe('the old cladding', () => {
  it('stands in a list that keeps to its form', () => {
    expect(standingWallsSchema.parse(data)).toEqual(data);
  });

  it.each(['vinyl siding', 'vinyl', 'wood siding', 'clapboards', 'shingles', 'stucco', 'brick veneer'])(
    'is heard as that where the sheathing is asked: "%s"',
    (line) => {
      const talk = asked(SHEATHING, line);
      expect(talk.last()).toContain('that is the old cladding');
      expect(talk.last()).toContain('the board under it');
      expect(talk.last()).not.toContain('Not understood');
      expect(talk.state.answers.sheathing).toBeUndefined();
      expect(talk.prompt.label).toBe('Sheathing');
    },
  );

  it('leaves the board under it, and what else is said in the line, to be taken', () => {
    expect(asked(SHEATHING, 'vinyl siding over plywood').state.answers.sheathing).toBe('plywood');
    expect(asked(SHEATHING, "clapboards, don't know what is under it").state.answers.sheathing).toBe(
      'unknown',
    );
    const first = new Talk().say('old house in Boulder, CO with vinyl siding, 2x4 at 16');
    expect(first.state.answers).toMatchObject({ project: 'retrofit', 'framing.depth_in': 3.5 });
    expect(first.last(4)).toContain('"vinyl siding": that is the old cladding');
  });

  it('is told with what it may set free, and how sure that is', () => {
    const asbestos = framing('asbestos shingles').last();
    expect(asbestos).toContain('Caution (health), asbestos shingles: It may hold asbestos');
    expect(asbestos).toContain('(Two sources agree.)');
    expect(asbestos).not.toContain('lead');
    // 1978 and certified renovators: US EPA, fact sheet on the lead-based paint laws.
    expect(framing('clapboards').last()).toContain('from before 1978 may hold lead');
    expect(framing('vinyl siding').last()).not.toContain('Caution');
  });

  it('is free of that on a younger house, unless it was said to hold it', () => {
    expect(framing('built 1995, old siding').last()).not.toContain('Caution');
    expect(framing('built 1995, asbestos siding').last()).toContain('Caution (health)');
    expect(framing('built 1950, old siding').last()).toMatch(/may hold lead[\s\S]*may hold asbestos/);
  });

  it('is no matter on a new wall, and is the finish where that is asked', () => {
    expect(new Talk().say('zone 5B', 'new', 'vinyl siding').last()).toContain('nothing old has to come off');
    const finish = asked(9, 'wood siding').last();
    expect(finish).toContain('Say "anything"');
    expect(finish).not.toContain('old cladding');
  });
});

describe('a wall without studs', () => {
  it.each([
    ['log house', 'is a log wall'],
    ['logs', 'is a log wall'],
    ['cinder block', 'is a wall of concrete block'],
    ['CMU', 'is a wall of concrete block'],
    ['SIPs', 'is a wall of foam-core panels'],
    ['ICF', 'is a concrete wall'],
    ['solid brick', 'is a solid brick wall'],
    ['brick', 'may be a brick wall'],
    ['post and beam', 'may be a wall of posts'],
  ])('is told to be outside of what is known: "%s"', (line, words) => {
    const talk = framing(line);
    expect(talk.prompt.label).toBe('Not a wall that I know');
    expect(talk.prompt.title).toContain(words);
    expect(talk.prompt.title).toContain('my advice does not hold');
  });

  it('lets the talk go on for another wall, or end', () => {
    const on = framing('log house', 'go on');
    expect(on.prompt.label).toBe('Framing');
    expect(framing('brick', 'a veneer').prompt.label).toBe('Framing');
    expect(framing('cinder block', '2x4 at 16').state.answers['framing.depth_in']).toBe(3.5);
    expect(framing('log house', 'no').state.stage).toBe('left');
    expect(framing('log house', '2').state.stage).toBe('left');
    expect(framing('log house', '7').prompt.label).toBe('Not a wall that I know');
  });

  it('is said to lines written beforehand, which go past it', () => {
    const talk = new Talk({ asksOnce: true }).say('zone 5B', 'retrofit', 'log house', '2x4 at 16');
    expect(talk.last(4)).toContain('my advice does not hold');
    expect(talk.state.answers['framing.depth_in']).toBe(3.5);
  });

  it.each(['2x4 at 16, on a block foundation', 'brick chimney', 'not a log house', 'plywood, brick outside'])(
    'is not heard in "%s"',
    (line) => expect(framing(line).state.asides).toEqual([]),
  );

  it('that goes by the name of a veneer too is the house behind a new wall', () => {
    const talk = new Talk().say('zone 5B', 'new, brick house');
    expect(talk.state.asides).toEqual([]);
    expect(talk.last()).toContain('I take that for what stands already');
    expect(new Talk().say('zone 5B', 'new, SIPs').state.asides).toHaveLength(1);
  });
});
