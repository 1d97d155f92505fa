import { describe, expect, it } from 'vitest';
import { Refusal } from '../../src/base/refusal.ts';
import type { OnInterrupt } from '../../src/cli/interrupts.ts';
import { type PlainConversation, runPlainConversation } from '../../src/cli/plain-conversation.ts';
import { fakeServices } from '../conversation/fake-services.ts';
import { memoryStore } from '../conversation/memory-store.ts';
import { sampleAdvice } from '../conversation/sample-advice.ts';
import { WHOLE_SCENARIO, WHOLE_TALK } from '../conversation/talk.ts';

async function* chunks(...parts: (string | Uint8Array)[]): AsyncGenerator<string | Uint8Array> {
  yield* parts;
}

async function talk(input: PlainConversation['input'], change: Partial<PlainConversation> = {}) {
  const services = fakeServices();
  let written = '';
  const code = await runPlainConversation({
    input,
    output: async (text) => {
      written += text;
    },
    services,
    draft: null,
    echo: true,
    ...change,
  });
  return { code, written, services };
}

const lines = (...said: readonly string[]) => chunks(said.map((line) => `${line}\n`).join(''));

describe('the conversation in plain lines', () => {
  it('goes from the first question to the saved record', async () => {
    const { code, written, services } = await talk(lines(...WHOLE_TALK, 'save', 'finish'));
    expect(code).toBe(0);
    expect(services.asked).toEqual([WHOLE_SCENARIO]);
    expect(services.saved).toEqual([WHOLE_SCENARIO]);
    expect(written).toContain('Where does the wall stand?');
    expect(written).toContain('» Boulder, CO');
    expect(written).toContain('First choice');
    expect(written).toContain('/tmp/records/wall.md');
  });

  it('takes the end of input for "assume the rest" and saves nothing unasked', async () => {
    const { code, written, services } = await talk(lines('zone 5B', 'new'));
    expect(code).toBe(0);
    expect(services.asked).toEqual([
      { schema: 'cladwright-scenario/1', place: { climate_zone: '5B' }, project: 'new' },
    ]);
    expect(services.saved).toEqual([]);
    expect(written).toContain('What I assumed');
  });

  it('promises to keep nothing that it does not keep', async () => {
    const { written } = await talk(lines('zone 5B', 'done', 'finish'));
    expect(written).not.toContain('Your answers are kept');
  });

  it('asks about a contradiction once and loses none of the lines behind it', async () => {
    const { written, services } = await talk(
      lines(...WHOLE_TALK.slice(0, 3), '2x4', ...WHOLE_TALK.slice(3), 'finish'),
    );
    expect(services.asked).toEqual([WHOLE_SCENARIO]);
    expect(written.match(/Which holds\?/g)).toHaveLength(1);
    expect(written).not.toContain('Not understood');
    const words = written.replace(/\s+/g, ' ');
    expect(words).toContain('Stud depth: I assume the first, 5.5 in. (2x6), and not 3.5 in. (2x4).');
  });

  it('takes no line for an answer to a question that an earlier line did not answer', async () => {
    const { services, written } = await talk(
      lines(
        'zone 5B',
        'retrofit',
        '2x6 at 16',
        '2x4',
        'purple monkeys',
        'plywood',
        'R-21',
        '3',
        'no windows',
        'anything',
      ),
    );
    expect(services.asked).toMatchObject([
      {
        framing: { depth_in: 5.5 },
        sheathing: 'plywood',
        interior_vapour_retarder: 'class-ii',
        windows: [],
        finish: 'any',
      },
    ]);
    expect(written.match(/Not understood/g)).toHaveLength(1);
  });

  it('leaves the question of a line that it does not understand open, so that the next line meets the next one', async () => {
    const { code, written, services } = await talk(
      lines('zone 5B', 'retrofit', '2x6 at 16', 'flying carpet', '21', 'R-900', 'no windows', '3', '24'),
    );
    expect(code).toBe(0);
    // By position: 21 is the R-value, 3 the finish, 24 the budget.
    expect(services.asked).toEqual([
      {
        schema: 'cladwright-scenario/1',
        place: { climate_zone: '5B' },
        project: 'retrofit',
        framing: { material: 'wood', depth_in: 5.5, spacing_in: 16 },
        sheathing: 'unknown',
        cavity_insulation_r: 21,
        interior_vapour_retarder: 'unknown',
        windows: [],
        finish: 'any',
        budget_usd_per_ft2: 24,
      },
    ]);
    const words = written.replace(/\s+/g, ' ');
    expect(words).toContain('Line 4 was the answer to this question, so the next line meets the next one.');
    expect(words).toContain('Left open: sheathing.');
    const end = words.slice(words.indexOf('Lines that I did not understand, or not wholly'));
    expect(end).toContain('Line 4: "flying carpet"; sheathing left open');
    expect(end).toContain('Line 6: ');
    expect(end).toContain('; vapour retarder left open');
  });

  it('counts every line, tells what it did not understand of one, and of a place', async () => {
    const { written } = await talk(
      lines('nowhere at all', '', 'zone 5B', 'new, purple monkeys', 'help', '2x6'),
    );
    const words = written.replace(/\s+/g, ' ');
    const end = words.slice(words.indexOf('Lines that I did not'));
    expect(end).toMatch(/Line 1: "nowhere at all" - Line 4: "purple monkeys" $/);
    expect((await talk(lines('zone 5B', 'new'))).written).not.toContain('Lines that I did not');
  });

  it('leaves what may mean two things open once the next line does not settle it', async () => {
    const upToFinish = WHOLE_TALK.slice(0, 10);
    const { written, services } = await talk(lines(...upToFinish, '$500', '', 'general carpenters', '1800'));
    expect(services.asked).toMatchObject([
      { budget_usd_per_ft2: 'unknown', crew_skill: 'general', wall_area_ft2: 1800 },
    ]);
    expect(written).toContain('Line 11: "$500"; budget left open');
    const settled = await talk(lines(...upToFinish, '$500', 'a foot', 'general carpenters'));
    expect(settled.services.asked).toMatchObject([{ budget_usd_per_ft2: 500, crew_skill: 'general' }]);
    expect(settled.written).not.toContain('Lines that I did not');
  });

  it('keeps the answer of a question that was gone back to when the new one is not understood', async () => {
    const { services, written } = await talk(
      lines('zone 5B', 'new', '2x6 at 16', 'change framing', 'elephants', 'osb'),
    );
    expect(services.asked).toMatchObject([{ framing: { depth_in: 5.5 }, sheathing: 'osb' }]);
    expect(written).toContain('Kept as it was.');
  });

  it('leaves a question standing on a terminal, where it can be answered again', async () => {
    const { services, written } = await talk(lines('zone 5B', 'new', '2x6 at 16', 'flying carpet', '2'), {
      echo: false,
    });
    expect(services.asked).toMatchObject([{ sheathing: 'plywood' }]);
    expect(written).not.toContain('Line 4');
  });

  it('tells what it did not understand also where no place is named', async () => {
    let written = '';
    const refused = runPlainConversation({
      input: lines('new', 'flying carpet'),
      output: async (text) => {
        written += text;
      },
      services: fakeServices(),
      draft: null,
      echo: true,
    });
    await expect(refused).rejects.toThrow(/^place: /);
    expect(written).toContain('Line 2: "flying carpet"');
  });

  it('saves at the end of input when that was asked for', async () => {
    const { services, written } = await talk(lines('zone 5B'), { save: true });
    expect(services.saved).toHaveLength(1);
    expect(written).toContain('/tmp/records/wall.json');
  });

  it.each([
    ['nothing at all', ''],
    ['no place', 'new\n2x6 at 16\n'],
    ['a place that stays open', 'lincoln\n'],
  ])('refuses %s by the field that is missing', async (_what, input) => {
    const refused = talk(chunks(input));
    await expect(refused).rejects.toBeInstanceOf(Refusal);
    await expect(refused).rejects.toThrow(/^place: .*Boulder, CO/);
  });

  it('passes the refusal of a scenario on when nobody is left to ask', async () => {
    const refusal = new Refusal({ field: 'place.county', value: '"Nowhere"', accepted: 'Give a county.' });
    const services = fakeServices({ advise: () => Promise.reject(refusal) });
    await expect(talk(lines('zone 5B'), { services })).rejects.toThrow('place.county: "Nowhere"');
  });

  it('ends with 1 when no wall passes', async () => {
    const services = fakeServices({ advise: async (scenario) => sampleAdvice(scenario, { ranked: [] }) });
    expect((await talk(lines('zone 5B'), { services })).code).toBe(1);
  });

  it('does not read on after "quit"', async () => {
    const { services, code } = await talk(lines('zone 5B', 'quit', 'new', 'done'));
    expect(services.asked).toEqual([]);
    expect(code).toBe(0);
  });

  it('takes lines however they are cut into chunks, with either line end, the last one without', async () => {
    const whole = 'Boulder, CO\r\nnew\n2x6 at 16\r\n';
    const bytes = new TextEncoder().encode(`${whole}call it Dačice`);
    const single = await talk(chunks(...Array.from(bytes, (byte) => Uint8Array.of(byte))));
    const once = await talk(chunks(`${whole}call it Dačice`));
    expect(single.services.asked).toEqual(once.services.asked);
    expect(single.services.asked[0]).toMatchObject({ project: 'new', name: 'Dačice' });
    expect(single.written).toBe(once.written);
  });

  it('shows escape codes of its input instead of passing them on', async () => {
    const { written } = await talk(lines('zone 5B', '\u001b[2J\u001b]0;title\u0007wood', 'done'));
    expect(written).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u007f-\u009f]/);
    expect(written).toContain('\\u001b[2J');
  });

  it('writes lines of at most 80 columns, and plain ASCII when asked', async () => {
    const { written } = await talk(lines(...WHOLE_TALK), { ascii: true });
    expect(written).toMatch(/^[\n\u0020-\u007e]*$/);
    expect(Math.max(...written.split('\n').map((line) => line.length))).toBeLessThanOrEqual(80);
  });

  it('marks where to type on a terminal, and does not repeat what was typed', async () => {
    const { written } = await talk(lines('zone 5B'), { echo: false });
    expect(written).toContain('Colorado\n» ');
    expect(written).not.toContain('» zone 5B');
  });

  it('ends with what the output says when it takes no more, and has kept the answers', async () => {
    const draft = memoryStore();
    let room = 4;
    const full = Object.assign(new Error('no space left'), { code: 'ENOSPC', syscall: 'write' });
    const ended = talk(lines('Boulder, CO', 'new', '2x6 at 16'), {
      draft,
      echo: false,
      output: async () => {
        room -= 1;
        if (room < 0) throw full;
      },
    });
    await expect(ended).rejects.toBe(full);
    expect(draft.current()?.answers).toMatchObject({ place: { county: 'Boulder' } });
  });

  it('says below a line that was broken off what becomes of the answers', async () => {
    const last: string[] = [];
    const watched = (draft: PlainConversation['draft'], ...said: readonly string[]) =>
      talk(
        (async function* () {
          yield* said.map((line) => `${line}\n`);
          last.push(interrupt?.lastWords() ?? '');
        })(),
        {
          echo: false,
          draft,
          interrupts: (handled) => {
            interrupt = handled;
            return () => {
              interrupt = null;
            };
          },
        },
      );
    let interrupt: OnInterrupt | null = null;
    await watched(memoryStore(), 'zone 5B', 'new');
    await watched(null, 'zone 5B', 'new');
    await watched(memoryStore()).catch(() => undefined);
    expect(last).toEqual([
      '\nStopped. Your answers are kept; next time I offer to go on with them.\n',
      '\nStopped.\n',
      '\nStopped.\n',
    ]);
    expect(interrupt).toBeNull();
  });

  it('offers a kept talk and keeps each answer of this one', async () => {
    const draft = memoryStore({
      schema: 'cladwright-draft/1',
      saved_at: '2024-05-06T07:08:09.000Z',
      answers: { place: { climate_zone: '5B' } },
      windows_complete: false,
      history: ['place'],
    });
    const { written, services } = await talk(lines('go on', 'new'), { draft });
    expect(written).toContain('2024-05-06');
    expect(services.asked[0]).toMatchObject({ place: { climate_zone: '5B' }, project: 'new' });
    expect(draft.current()?.answers.project).toBe('new');
  });
});
