import { type ChildProcess, spawn } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { builtEntry } from '../built-program.ts';
import { ROOT, runProgram } from '../run-program.ts';

const scenario = (change: object = {}) =>
  JSON.stringify({
    schema: 'cladwright-scenario/1',
    place: { climate_zone: '5B' },
    project: 'new',
    framing: { material: 'wood', depth_in: 5.5, spacing_in: 16 },
    sheathing: 'osb',
    cavity_insulation_r: 21,
    interior_vapour_retarder: 'class-iii',
    windows: [
      { count: 4, width_in: 36, height_in: 48, glazing: 'double', mounting: 'flanged', weight_lb: 90 },
    ],
    finish: 'any',
    crew_skill: 'general',
    wall_area_ft2: 1800,
    exposure: 'B',
    fire_separation_ft: 12,
    wildfire_area: false,
    max_added_thickness_in: 6,
    ...change,
  });

const HEIGHTS = [14, 18, 22, 26];
/** Four that can be answered, and between them some that can't. */
const LINES = [
  ...HEIGHTS.slice(0, 2).map((height) => scenario({ name: `Wall ${height}`, mean_roof_height_ft: height })),
  '{"schema":"cladwright-scenario/1"',
  '',
  ...HEIGHTS.slice(2).map((height) => scenario({ name: `Wall ${height}`, mean_roof_height_ft: height })),
  scenario({ schema: 'cladwright-scenario/2' }),
];
const INPUT = `${LINES.join('\n')}\n`;
const FAILED = [3, 4, 7];

let folder = '';
let serial = 0;
/** A path that nobody has used. */
const fresh = (name: string) => join(folder, `${++serial}-${name}`);
const file = (name: string, text: string | Uint8Array) => {
  const path = fresh(name);
  writeFileSync(path, text);
  return path;
};

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'batch-'));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const batch = (args: readonly string[], stdin: string | Uint8Array = '') =>
  runProgram(['batch', ...args], { stdin });
const linesOf = (text: string): string[] => text.split('\n').slice(0, -1);
const errorsOf = (text: string) =>
  linesOf(text)
    .map((line): { schema: string; line: number; source: string; error: string } => JSON.parse(line))
    .filter(({ schema }) => schema === 'cladwright-batch-error/1');

/** One worker thread, one run: what every other way has to come to. */
let whole: Awaited<ReturnType<typeof batch>>;
beforeAll(async () => {
  whole = await batch(['-', '--jobs', '1', '--top', '2'], INPUT);
}, 60_000);

describe('a batch', () => {
  it('answers line by line what advise answers, in the order of the input, with what is wrong in its place', async () => {
    expect(whole.code).toBe(1);
    const lines = linesOf(whole.stdout);
    expect(lines).toHaveLength(LINES.length);
    expect(errorsOf(whole.stdout).map(({ line }) => line)).toEqual(FAILED);
    for (const [i, given] of LINES.entries()) {
      if (FAILED.includes(i + 1)) continue;
      const alone = await runProgram(['advise', '-', '--json', '--top', '2'], { stdin: given });
      expect(lines[i]).toBe(JSON.stringify(JSON.parse(alone.stdout)));
    }
    expect(whole.stderr).toContain('line 3: this line, column 34');
    expect(whole.stderr).toContain('7 lines: 4 answered, 3 failed');
  }, 60_000);

  it.each([2, 4])(
    'comes to the same with %i threads',
    async (jobs) => {
      const { code, stdout } = await batch(['-', '--jobs', `${jobs}`, '--top', '2', '--json'], INPUT);
      expect(code).toBe(1);
      expect(stdout).toBe(whole.stdout);
    },
    60_000,
  );

  it('comes to the same split into parts by line and joined again', async () => {
    const all = file('all.ndjson', INPUT);
    const script = `
      set -e
      split -l 4 -d -a 4 ${all} ${folder}/part.
      ls ${folder}/part.???? | xargs -P 2 -I PART sh -c 'n=$(echo PART | sed "s/.*part\\.0*//"); "$NODE" "$ENTRY" batch - --top 2 --jobs 1 --first-line $((\${n:-0} * 4 + 1)) --out PART.out < PART' || true
      cat ${folder}/part.????.out
    `;
    const child = spawn('bash', ['-c', script], {
      env: { ...process.env, NODE: process.execPath, ENTRY: await builtEntry() },
    });
    let out = '';
    child.stdout.setEncoding('utf8').on('data', (text: string) => {
      out += text;
    });
    await new Promise((resolve) => child.on('close', resolve));
    expect(out).toBe(whole.stdout);
  }, 60_000);

  it('takes files, and folders without what is plainly something else', async () => {
    const dir = fresh('folder');
    mkdirSync(join(dir, 'deeper'), { recursive: true });
    writeFileSync(join(dir, 'b.json'), LINES[0] ?? '');
    writeFileSync(join(dir, 'deeper', 'c.ndjson'), `${LINES[1]}\nno JSON\n`);
    writeFileSync(join(dir, 'a.json'), '{"schema":"cladwright-scenario/1","place":{"climate_zone":"9"}}');
    writeFileSync(join(dir, 'rules.json'), '{"schema":"cladwright-rules/1"}');
    writeFileSync(join(dir, 'notes.txt'), 'no scenario');
    const { code, stdout, stderr } = await batch([dir, join(dir, 'b.json'), '--short']);
    expect(code).toBe(1);
    const told = linesOf(stdout).map((line): Record<string, unknown> => JSON.parse(line));
    expect(told.map(({ schema, source, source_line }) => [schema, source, source_line])).toEqual([
      ['cladwright-batch-error/1', join(dir, 'a.json'), undefined],
      ['cladwright-batch-short/1', undefined, undefined],
      ['cladwright-batch-short/1', undefined, undefined],
      ['cladwright-batch-error/1', join(dir, 'deeper', 'c.ndjson'), 2],
      ['cladwright-batch-short/1', undefined, undefined],
    ]);
    // The same project twice is answered twice: a scenario in, a line out.
    expect(told[4]).toEqual(told[1]);
    expect(stderr).toContain(`Passed over, no scenarios: ${join(dir, 'rules.json')}.`);
  }, 60_000);

  it('names a file that can’t be read once, and answers the others', async () => {
    const dir = fresh('unread');
    mkdirSync(dir);
    writeFileSync(join(dir, 'a.json'), LINES[0] ?? '');
    writeFileSync(join(dir, 'b.json'), Uint8Array.of(0xff, 0xfe));
    const { code, stderr } = await batch([dir, '--short']);
    expect(code).toBe(1);
    expect(stderr).toContain(`${join(dir, 'b.json')}: this text is not accepted. Give UTF-8`);
    expect(stderr.split('b.json')).toHaveLength(2);
    expect(stderr).toContain('2 lines: 1 answered, 1 failed');
  }, 60_000);

  it('passes over hidden folders, and the answers of an earlier batch', async () => {
    const dir = fresh('kept');
    mkdirSync(join(dir, '.kept-back'), { recursive: true });
    writeFileSync(join(dir, '.kept-back', 'a.json'), 'no scenario');
    writeFileSync(join(dir, 'answers.ndjson'), '{"schema":"cladwright-batch-short/1"}\nmore\n');
    writeFileSync(join(dir, 'broken.json'), 'no scenario');
    const { stdout, stderr } = await batch([dir]);
    expect(errorsOf(stdout).map(({ source }) => source)).toEqual([join(dir, 'broken.json')]);
    expect(stderr).toContain(`Passed over, no scenarios: ${join(dir, 'answers.ndjson')}.`);
  }, 60_000);

  it('names file and line of a failed line where several files come in', async () => {
    const [first, second] = [file('first.ndjson', 'a\nb\n'), file('second.ndjson', 'c\n')];
    const { stdout, stderr } = await batch([first, second]);
    expect(stderr).toContain(`${second}, line 1: `);
    expect(errorsOf(stdout).map(({ line }) => line)).toEqual([1, 2, 3]);
  }, 60_000);

  it('says in short lines what the answers say', async () => {
    const { stdout } = await batch(['-', '--short', '--top', '1'], `${LINES[0]}\n`);
    const [full = ''] = linesOf(whole.stdout);
    const { ranked, considered } = JSON.parse(full);
    expect(JSON.parse(stdout)).toMatchObject({
      name: 'Wall 14',
      admitted: considered.admitted,
      first_choice: { id: ranked[0].id, u_factor: ranked[0].u_factor, score: ranked[0].score },
      closest: null,
    });
  }, 60_000);

  it('ends with 0 where nothing passes: that is an answer, not a failed line', async () => {
    const impossible = scenario({ finish: 'cement-stucco', budget_usd_per_ft2: 3 });
    const { code, stdout, stderr } = await batch(['-', '--short'], `${impossible}\n`);
    expect(code).toBe(0);
    expect(JSON.parse(stdout)).toMatchObject({ first_choice: null, closest: { because: expect.any(Array) } });
    expect(stderr).toContain('1 line: 1 answered, nothing passes in 1 of them');
  }, 60_000);
});

describe('bad input of a batch', () => {
  it('is told line by line and stops nothing: mixed schema versions, 50 MB, no UTF-8, a key twice, a line of an answer', async () => {
    const rows = [
      '{"schema":"cladwright-scenario/2","place":{"climate_zone":"5B"}}',
      `{"name":"${'x'.repeat(50_000_000)}"}`,
      Buffer.from([0x7b, 0x22, 0xff, 0xfe, 0x22, 0x7d]),
      '{"schema":"cladwright-scenario/1","schema":"cladwright-scenario/1"}',
      '{"schema":"cladwright-advice/1"}',
      `${'['.repeat(5000)}`,
      'null',
    ];
    const stdin = Buffer.concat(rows.flatMap((row) => [Buffer.from(row), Buffer.from('\n')]));
    const { code, stdout, stderr } = await batch(['-', '--first-line', '101'], stdin);
    expect(code).toBe(1);
    const errors = errorsOf(stdout);
    expect(errors.map(({ line }) => line)).toEqual([101, 102, 103, 104, 105, 106, 107]);
    for (const [i, words] of [
      'schema: "cladwright-scenario/2"',
      'over 1 MB',
      'no UTF-8',
      'each key once',
      'schema: "cladwright-advice/1"',
      'Nest at most 64 levels',
      'null',
    ].entries()) {
      expect(errors[i]?.error).toContain(words);
    }
    expect(stdout.length).toBeLessThan(10_000);
    expect(stderr).toContain('line 102: this line: over 1 MB');
  }, 60_000);

  it('is refused with 2 before anything is written: paths, numbers, house rules', async () => {
    const empty = fresh('empty');
    mkdirSync(empty);
    const out = fresh('never.ndjson');
    for (const [args, words] of [
      [[], 'PATH: (nothing)'],
      [[empty], 'this one has none'],
      [[join(empty, 'nosuch.json')], 'there is no such file'],
      [['-', '-'], 'once only'],
      [['-', '--jobs', '0'], '--jobs: "0"'],
      [['-', '--jobs', 'many'], '--jobs: "many"'],
      [['-', '--top', '21'], '--top: "21"'],
      [['-', '--edition', '2017'], '--edition: "2017"'],
      [['-', '--first-line', '-1'], '--first-line'],
      [['-', '--house-rules', join(empty, 'nosuch.json')], 'nosuch.json'],
    ] as const) {
      const ended = await batch([...args, ...(args.length > 0 ? ['--out', out] : [])], INPUT);
      expect(ended).toMatchObject({ code: 2, stdout: '' });
      expect(ended.stderr).toContain(words);
    }
    expect(existsSync(out)).toBe(false);
  }, 60_000);

  it('is never its own output', async () => {
    const dir = fresh('own');
    mkdirSync(dir);
    writeFileSync(join(dir, 'w.json'), 'no scenario');
    const out = join(dir, 'answers.ndjson');
    const args = [dir, '--out', out];
    const first = await batch(args);
    const lines = readFileSync(out, 'utf8');
    expect(await batch(args)).toMatchObject({ code: first.code, stdout: '' });
    expect(readFileSync(out, 'utf8')).toBe(lines);
    const named = await batch([out, '--out', out]);
    expect(named).toMatchObject({ code: 2, stdout: '' });
    expect(named.stderr).toContain('The answers go into this file');
  }, 60_000);

  it('that is empty gives no lines and says so', async () => {
    expect(await batch(['-'], '')).toEqual({ code: 0, stdout: '', stderr: 'Nothing came in: no lines.\n' });
  });
});

async function start(args: readonly string[]): Promise<ChildProcess> {
  return spawn(process.execPath, [await builtEntry(), 'batch', ...args], { cwd: ROOT, stdio: 'pipe' });
}

const ended = (child: ChildProcess) =>
  new Promise<number | null>((resolve) => child.on('close', (code) => resolve(code)));

async function until(is: () => boolean): Promise<void> {
  for (let i = 0; i < 3000 && !is(); i++) await wait(10);
  expect(is()).toBe(true);
}

const sizeOf = (path: string) => statSync(path, { throwIfNoEntry: false })?.size ?? 0;

describe('a batch with house rules', () => {
  it('judges every line by them as they stood when it began, though the file is gone', async () => {
    const shipped = readFileSync(join(ROOT, 'scenarios/house-packs/harrow-lane.rules.json'));
    const pack = file('house.rules.json', shipped);
    const args = ['-', '--short', '--jobs', '2', '--house-rules', pack];
    const undisturbed = await batch(args, INPUT);
    const child = await start(args);
    let out = '';
    child.stdout?.setEncoding('utf8').on('data', (text: string) => {
      out += text;
    });
    child.stdin?.write(`${LINES[0]}\n`);
    await until(() => out.includes('\n'));
    // The other thread starts with the next lines.
    rmSync(pack);
    child.stdin?.end(`${LINES.slice(1).join('\n')}\n`);
    await ended(child);
    expect(out).toBe(undisturbed.stdout);
  }, 30_000);
});

describe('a batch that is broken off', () => {
  it('goes on after a kill where it was, to the same lines as an uninterrupted run', async () => {
    const out = fresh('out.ndjson');
    const args = ['-', '--jobs', '2', '--top', '2', '--out', out];
    const child = await start(args);
    child.stdin?.end(INPUT);
    await until(() => sizeOf(out) > 0);
    child.kill('SIGKILL');
    await ended(child);
    expect(sizeOf(out)).toBeLessThan(whole.stdout.length);
    // As if the last line had been torn.
    writeFileSync(out, '{"schema":"cladwri', { flag: 'a' });
    expect(existsSync(`${out}.lock`)).toBe(true);
    expect(await batch(args, INPUT)).toMatchObject({ code: 1, stdout: '' });
    expect(existsSync(`${out}.lock`)).toBe(false);
    expect(readFileSync(out, 'utf8')).toBe(whole.stdout);
    const again = await batch(args, INPUT);
    expect(again).toMatchObject({ code: 1, stdout: '' });
    expect(again.stderr).toContain('7 of the lines stood there already');
    expect(readFileSync(out, 'utf8')).toBe(whole.stdout);
  }, 90_000);

  it('is not mixed with another one into the same file, not even in its first moment', async () => {
    const out = fresh('out.ndjson');
    const child = await start(['-', '--jobs', '1', '--top', '2', '--out', out]);
    await until(() => existsSync(out));
    const other = await batch(['-', '--out', out], 'something else\n');
    expect(other).toMatchObject({ code: 2, stdout: '' });
    expect(other.stderr).toContain(`--out: ${JSON.stringify(out)} is not accepted. Another run writes into`);
    expect(other.stderr).toContain(`process ${child.pid}`);
    child.stdin?.end(INPUT);
    expect(await ended(child)).toBe(1);
    expect(readFileSync(out, 'utf8')).toBe(whole.stdout);
    expect(existsSync(`${out}.lock`)).toBe(false);
  }, 60_000);

  it('by Ctrl-C ends with 130 after a whole line, and goes on from there', async () => {
    const out = fresh('out.ndjson');
    const args = ['-', '--jobs', '1', '--top', '2', '--out', out];
    const child = await start(args);
    child.stdin?.end(INPUT);
    let said = '';
    child.stderr?.on('data', (chunk) => {
      said += String(chunk);
    });
    await until(() => sizeOf(out) > 0);
    child.kill('SIGINT');
    expect(await ended(child)).toBe(130);
    expect(said).toContain('Interrupted. The same command goes on from here.');
    const before = readFileSync(out, 'utf8');
    expect(before.endsWith('\n')).toBe(true);
    const there = linesOf(before).length;
    expect(there).toBeLessThan(LINES.length);
    const { stderr } = await batch(args, INPUT);
    expect(stderr).toContain(`${there} of the lines stood there already`);
    expect(readFileSync(out, 'utf8')).toBe(whole.stdout);
  }, 90_000);

  it('by a reader that closes the pipe stops at once, without a fault', async () => {
    const child = await start([file('all.ndjson', INPUT.repeat(200)), '--jobs', '1', '--short']);
    let said = '';
    child.stderr?.on('data', (chunk) => {
      said += String(chunk);
    });
    child.stdout?.once('data', () => child.stdout?.destroy());
    expect(await ended(child)).toBeLessThanOrEqual(1);
    expect(said).toContain('Nobody reads any more: stopped.');
    expect(said).not.toContain('internal fault');
  }, 60_000);

  it('does not go on with other input, other options, or a file of somebody else', async () => {
    const broken = file('broken.ndjson', 'a\nb\nc\n');
    const out = fresh('out.ndjson');
    expect((await batch([broken, '--out', out])).code).toBe(1);
    const before = readFileSync(out, 'utf8');
    const refused = async (args: readonly string[], words: string) => {
      const { code, stdout, stderr } = await batch(args);
      expect({ code, stdout }).toEqual({ code: 2, stdout: '' });
      expect(stderr).toContain(words);
    };
    await refused([file('other.ndjson', 'a\nB\nc\n'), '--out', out], 'answer other scenarios');
    writeFileSync(broken, 'a\nb\n');
    await refused([broken, '--out', out], 'answer other scenarios');
    writeFileSync(broken, 'a\nb\nc\n');
    await refused([broken, '--out', out, '--top', '5'], 'answered by other rules, options');
    expect(readFileSync(out, 'utf8')).toBe(before);
    // More at the end is gone on with.
    writeFileSync(broken, 'a\nb\nc\nd\n');
    expect((await batch([broken, '--out', out])).code).toBe(1);
    expect(errorsOf(readFileSync(out, 'utf8')).map(({ line }) => line)).toEqual([1, 2, 3, 4]);
    const own = file('own.txt', 'my notes\n');
    await refused([broken, '--out', own], 'no batch that could be gone on with');
    expect(readFileSync(own, 'utf8')).toBe('my notes\n');
    await refused([broken, '--out', folder], 'Give the name of a file');
    await refused([broken, '--out', join(folder, 'nosuch', 'x')], 'There is no such folder');
  }, 60_000);
});
