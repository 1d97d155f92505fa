import { describe, expect, it } from 'vitest';
import { fakeServices } from '../conversation/fake-services.ts';
import { memoryStore } from '../conversation/memory-store.ts';
import { WHOLE_SCENARIO, WHOLE_TALK } from '../conversation/talk.ts';
import { until } from './screen.ts';
import { TerminalTalk } from './terminal-talk.ts';

const QUESTIONS = [
  /Place .* 1 of/,
  /New or retrofit .* 2 of/,
  /Framing .* 3 of/,
  /Sheathing .* 4 of/,
  /Cavity insulation .* 5 of/,
  /Vapour retarder .* 6 of/,
  /Which windows/,
  /another kind of window/,
  /Rough openings .* 8 of/,
  /Finish .* 9 of/,
  /Budget .* 10 of/,
  /Who builds it .* 11 of/,
  /Wall size .* 12 of/,
  /Wind .* 13 of/,
  /Surroundings .* 14 of/,
  /Priorities .* 15 of/,
];

async function wholeTalk(talk: TerminalTalk): Promise<void> {
  for (const [i, line] of WHOLE_TALK.entries()) await talk.answer(QUESTIONS[i] ?? /never/, line);
  await talk.sees('Save the decision record?');
}

const CLEARS = ['\u001b[3J', '\u001b[2J', '\u001bc', '\u001b[?1049h', '\u001b[H\u001b[J'];

function expectNothingCleared(talk: TerminalTalk): void {
  for (const code of CLEARS) expect(talk.screen.written.includes(code), JSON.stringify(code)).toBe(false);
}

describe('the terminal conversation', () => {
  it.each([
    [80, 24],
    [120, 40],
    [60, 24],
  ])('goes from the first question to the saved record at %d by %d', async (columns, rows) => {
    const talk = new TerminalTalk({ columns, rows });
    await wholeTalk(talk);
    await talk.answer('Save the record', 'save');
    await talk.sees('/tmp/records/wall.md');
    await talk.answer('What next', 'finish');
    expect(await talk.ended).toBe(0);
    expect(talk.services.asked).toEqual([WHOLE_SCENARIO]);
    expect(talk.services.saved).toEqual([WHOLE_SCENARIO]);

    expectNothingCleared(talk);
    const all = (await talk.screen.everything()).join('\n');
    for (const words of [
      'Where does the wall stand?',
      '» Boulder, CO',
      'First choice',
      'Alternatives',
      'Done.',
    ]) {
      expect(all.split(words).length - 1, words).toBe(1);
    }
    expect(Math.max(...(await talk.screen.everything()).map((row) => row.length))).toBeLessThanOrEqual(
      columns,
    );
    expect(talk.keyboard.isRaw).toBe(false);
    expect(talk.screen.written.endsWith('\u001b[?25l')).toBe(false);
  });

  it('keeps the cursor where the next character goes', async () => {
    const talk = new TerminalTalk();
    await talk.sees('Where does the wall stand?');
    talk.keyboard.press('Doña Ana 木');
    await talk.sees('» Doña Ana 木');
    const rows = await talk.screen.view();
    const cursor = await talk.screen.cursor();
    expect(rows[cursor.y]).toBe('» Doña Ana 木');
    expect(cursor.x).toBe(2 + 'Doña Ana '.length + 2);
    talk.keyboard.press('\u007f\u007f\u007f\u007f');
    await talk.sees(/» Doña A$/m);
    talk.keyboard.press('\u0003');
    expect(await talk.ended).toBe(130);
  });

  it('picks nothing with Up before Down, nor above the first choice', async () => {
    const talk = new TerminalTalk();
    await talk.answer('Where does', 'zone 5B');
    await talk.sees('New wall');
    for (const keys of ['\u001b[A', '\u001b[B\u001b[A']) {
      talk.keyboard.press(keys.slice(0, 3));
      if (keys.length > 3) {
        await talk.sees('> 1  New wall');
        talk.keyboard.press(keys.slice(3));
        await talk.sees(/^ {2}1 {2}New wall/m);
      }
      talk.keyboard.press('\r');
      await talk.sees('Nothing was said.');
    }
    talk.keyboard.press('\u0003');
    await talk.ended;
  });

  it('picks a choice with the arrow keys', async () => {
    const talk = new TerminalTalk();
    await talk.answer('Where does', 'zone 5B');
    await talk.sees('New wall');
    talk.keyboard.press('\u001b[B');
    talk.keyboard.press('\u001b[B');
    await talk.sees('> 2  Retrofit of an existing wall');
    talk.keyboard.press('\u001b[A');
    await talk.sees('> 1  New wall');
    talk.keyboard.press('\r');
    await talk.sees('» New wall');
    await talk.answer('Framing', 'done');
    await talk.answer('Save the decision record?', 'finish');
    await talk.ended;
    expect(talk.services.asked?.[0]?.project).toBe('new');
  });

  it('escape goes back, or first empties the line', async () => {
    const talk = new TerminalTalk();
    await talk.answer('Where does', 'zone 5B');
    await talk.sees('2 of 14');
    talk.keyboard.press('rubbish');
    await talk.sees('» rubbish');
    talk.keyboard.press('\u001b');
    await talk.sees(/» ?$/m);
    talk.keyboard.press('\u001b');
    await talk.sees('So far: climate zone 5B');
    talk.keyboard.press('\u0003');
    expect(await talk.ended).toBe(130);
  });

  it('takes a paste as text, line ends and escape codes too, and sends nothing by itself', async () => {
    const talk = new TerminalTalk();
    await talk.answer('Where does', 'zone 5B');
    await talk.sees('2 of 14');
    talk.keyboard.press('\u001b[200~new\r\n2x6 at 16\r\n\u001b[2Josb\r\n\u001b[201~');
    await talk.sees('» new; 2x6 at 16');
    const screen = await talk.sees('2 of 14');
    expect(screen).toContain('osb');
    expectNothingCleared(talk);
    talk.keyboard.press('\u0003');
    await talk.ended;
  });

  it('takes a fast typed line, enter and all, in one chunk', async () => {
    const talk = new TerminalTalk();
    await talk.sees('Where does');
    talk.keyboard.press('zone 5B\r');
    await talk.sees('2 of 14');
    talk.keyboard.press('\u0003');
    await talk.ended;
  });

  it('Ctrl-C keeps the answers, puts the terminal back and ends with 130', async () => {
    const draftStore = memoryStore();
    const talk = new TerminalTalk({ draftStore });
    await talk.answer('Where does', 'zone 5B');
    await talk.sees('2 of 14');
    talk.keyboard.press('half a wo');
    talk.keyboard.press('\u0003');
    expect(await talk.ended).toBe(130);
    expect(draftStore.current()?.answers).toEqual({ place: { climate_zone: '5B' } });
    expect(talk.keyboard.isRaw).toBe(false);
    expect(talk.screen.written).toContain('\u001b[?2004l');
    expect((await talk.screen.view()).join('\n')).toContain('Your answers are kept');
    expect((await talk.screen.view()).join('\n')).not.toContain('half a wo');
    expect(talk.screen.written.lastIndexOf('\u001b[?25h')).toBeGreaterThan(
      talk.screen.written.lastIndexOf('\u001b[?25l'),
    );
  });

  it('offers an unfinished talk and goes on with it', async () => {
    const draftStore = memoryStore({
      schema: 'cladwright-draft/1',
      saved_at: '2024-05-06T07:08:09.000Z',
      answers: { place: { climate_zone: '5B' }, project: 'new' },
      windows_complete: false,
      history: ['place', 'project'],
    });
    const talk = new TerminalTalk({ draftStore });
    await talk.answer('2024-05-06', '1');
    const screen = await talk.sees('Framing');
    expect(screen).toContain('climate zone 5B');
    talk.keyboard.press('\u0003');
    await talk.ended;
  });

  it('stays shorter than the window while the window shrinks and grows, and clears nothing', async () => {
    const talk = new TerminalTalk({ rows: 30 });
    await talk.answer('Where does', 'zone 5B');
    await talk.answer('2 of 14', 'new');
    await talk.answer('Framing', '2x6 at 16');
    await talk.sees('6  No sheathing');
    for (const [columns, rows] of [
      [80, 12],
      [80, 7],
      [80, 3],
      [50, 10],
      [120, 40],
    ] as const) {
      talk.screen.resize(columns, rows);
      await talk.sees(/» ?$/m);
      await new Promise((resolve) => setTimeout(resolve, 60));
      const cursor = await talk.screen.cursor();
      expect(cursor.y).toBeLessThan(rows);
    }
    await talk.answer('What will cover', 'osb');
    await talk.sees('Noted [Sheathing: OSB]');
    expectNothingCleared(talk);
    const all = (await talk.screen.everything()).join('\n');
    expect(all).toContain('» zone 5B');
    expect(all).toContain('» 2x6 at 16');
    talk.keyboard.press('\u0003');
    await talk.ended;
  });

  it('leaves nothing of the old frame behind when the window becomes narrower', async () => {
    const talk = new TerminalTalk({ columns: 100, rows: 30 });
    await talk.answer('Where does', 'zone 5B');
    await talk.answer('2 of 14', 'new');
    await talk.sees('What are the studs');
    talk.keyboard.press('half a line');
    await talk.sees('half a line');
    for (const columns of [70, 60, 44]) {
      talk.screen.resize(columns, 30);
      await talk.sees(/3 of 14 .*┤\s*$/m);
      await until('the frame fits', async () => {
        const rows = await talk.screen.view();
        return rows.some((row) => row.includes('3 of 14') && row.length === Math.min(columns, 72));
      });
      await new Promise((resolve) => setTimeout(resolve, 80));
      const all = (await talk.screen.everything()).join('\n');
      for (const words of ['What are the studs', 'half a line', '3 of 14', '6 in. steel studs']) {
        expect(all.split(words).length - 1, `${words} at ${columns}\n${all}`).toBe(1);
      }
    }
    talk.keyboard.press('\u0003');
    await talk.ended;
  });

  it.each([
    ['escape', '\u001b'],
    ['Ctrl-C', '\u0003'],
  ])('stops the answer with %s: the talk goes on', async (_key, code) => {
    const services = fakeServices();
    const talk = new TerminalTalk({
      services: {
        ...services,
        async advise(scenario, how) {
          how?.onProgress({ walls: 18_000, times: 2 });
          await new Promise<void>((resolve) => {
            how?.signal.addEventListener('abort', () => resolve());
          });
          return services.advise(scenario);
        },
      },
    });
    await talk.answer('Where does', 'zone 5B');
    await talk.answer('2 of 14', 'done');
    await talk.sees('18,000 walls judged, 2 times over. Esc stops.');
    talk.keyboard.press(code);
    await talk.sees('Stopped. Nothing is lost');
    await talk.answer('2 of 14', 'new');
    await talk.sees('What are the studs');
    talk.keyboard.press('\u0003');
    expect(await talk.ended).toBe(130);
  });

  it('answers keys while something is worked out beside the question', async () => {
    const services = fakeServices();
    const talk = new TerminalTalk({
      services: { ...services, firstImpression: () => new Promise(() => {}) },
    });
    await talk.answer('Where does', 'zone 5B');
    await talk.answer('2 of 14', 'new');
    await talk.answer('What are the studs', '2x6 at 16');
    await talk.sees('What will cover');
    talk.keyboard.press('\u0003');
    expect(await talk.ended).toBe(130);
  });

  it('puts the terminal in order before it sleeps, and draws itself anew when woken', async () => {
    let sleeping = 0;
    const talk = new TerminalTalk({
      suspend: () => {
        sleeping += 1;
      },
    });
    await talk.answer('Where does', 'zone 5B');
    await talk.sees('2 of 14');
    talk.keyboard.press('half a w');
    await talk.sees('» half a w');
    talk.keyboard.press('\u001a');
    await until('it sleeps', () => sleeping === 1);
    expect(talk.keyboard.isRaw).toBe(false);
    expect(talk.screen.written.endsWith('\u001b[?2004l\u001b[?25h')).toBe(true);
    expect((await talk.screen.view()).join('\n')).not.toContain('half a w');
    talk.screen.write('$ ls\nrecords\n');
    process.emit('SIGCONT', 'SIGCONT');
    const screen = await talk.sees('» half a w');
    expect(talk.keyboard.isRaw).toBe(true);
    expect(screen).toContain('records');
    expect(screen.split('2 of 14')).toHaveLength(2);
    talk.keyboard.press('\u0003');
    expect(await talk.ended).toBe(130);
  });

  it('is plain ASCII when asked', async () => {
    const talk = new TerminalTalk({ ascii: true });
    await talk.answer('Where does', 'zone 5B');
    await talk.answer('2 of 14', 'done');
    await talk.sees('Save the decision record?');
    talk.keyboard.press('\u0003');
    await talk.ended;
    expect((await talk.screen.everything()).join('\n')).toMatch(/^[\n\u0020-\u007e]*$/);
  });

  it('writes no colour, bold or dim when colour is off', async () => {
    const talk = new TerminalTalk({ colour: 'none' });
    await talk.answer('Where does', 'zone 5B');
    await talk.sees('2 of 14');
    talk.keyboard.press('\u0003');
    await talk.ended;
    expect(talk.screen.written).not.toMatch(/\u001b\[[0-9;]*m/);
  });

  it('writes colour when it is on, and the same words', async () => {
    const talk = new TerminalTalk({ colour: 'basic' });
    await talk.answer('Where does', 'zone 5B');
    await talk.sees('2 of 14');
    talk.keyboard.press('\u0003');
    await talk.ended;
    expect(talk.screen.written).toMatch(/\u001b\[33m/);
    expect((await talk.screen.everything()).join('\n')).toContain('Noted [Place: climate zone 5B]');
  });

  it('ends with 1 when no wall passes', async () => {
    const { sampleAdvice } = await import('../conversation/sample-advice.ts');
    const services = fakeServices();
    const talk = new TerminalTalk({
      services: { ...services, advise: async (scenario) => sampleAdvice(scenario, { ranked: [] }) },
    });
    await talk.answer('Where does', 'zone 5B');
    await talk.answer('2 of 14', 'done');
    await talk.answer('Save the decision record?', 'finish');
    expect(await talk.ended).toBe(1);
  });

  it('puts the terminal back and passes a fault on', async () => {
    const services = fakeServices({ advise: () => Promise.reject(new TypeError('a fault')) });
    const talk = new TerminalTalk({ services });
    const ended = expect(talk.ended).rejects.toThrow('a fault');
    await talk.answer('Where does', 'zone 5B');
    await talk.answer('2 of 14', 'done');
    await ended;
    expect(talk.keyboard.isRaw).toBe(false);
  });
});
