import { describe, expect, it } from 'vitest';
import packageJson from '../../package.json';
import { runProgram } from './run-program.ts';

describe('help and version', () => {
  it('shows the version of package.json', async () => {
    expect(await runProgram(['--version'])).toEqual({
      code: 0,
      stdout: `${packageJson.version}\n`,
      stderr: '',
    });
  });

  it('shows commands and the table of exit codes', async () => {
    const { code, stdout, stderr } = await runProgram(['--help']);
    expect({ code, stderr }).toEqual({ code: 0, stderr: '' });
    for (const command of ['advise', 'calc', 'rules', 'record'])
      expect(stdout).toMatch(new RegExp(`^  ${command}\\b`, 'm'));
    for (const exit of [0, 1, 2, 70, 130]) expect(stdout).toMatch(new RegExp(`^  ${exit} +\\S`, 'm'));
  });

  it('shows help for a command', async () => {
    const [byFlag, byCommand] = [
      await runProgram(['advise', '--help']),
      await runProgram(['help', 'advise']),
    ];
    expect(byFlag).toEqual(byCommand);
    expect(byFlag.code).toBe(0);
    for (const option of [
      '--json',
      '--top <n>',
      '--save <dir>',
      '--house-rules <files...>',
      '--edition <year>',
    ])
      expect(byFlag.stdout).toContain(option);
  });

  it.each(['', 'record', 'rules'])(
    'keeps the help of %j within 80 columns, each argument named once',
    async (name) => {
      const { stdout } = await runProgram([...(name === '' ? [] : [name]), '--help']);
      expect(stdout.split('\n').filter((line) => line.length > 80)).toEqual([]);
      expect(stdout).toMatch(/^Usage: cladwright (?:\w+ )?\[options\] \[command\]$/m);
    },
  );

  it('names every calculator in the help of calc', async () => {
    const { stdout } = await runProgram(['calc', '--help']);
    for (const name of ['thermal', 'condensation', 'energy-code', 'pull-through', 'buck'])
      expect(stdout).toContain(name);
  });
});

describe('wrong usage ends with 2, one message and no output', () => {
  it.each([
    [
      'an unknown command',
      ['advis'],
      /command: "advis" is not accepted\. Give one of advise, calc, rules, record, batch, matrix, changes\. Did you mean "advise"\?/,
    ],
    [
      'an unknown command with options',
      ['advis', '--json', 'a.json'],
      /command: "advis".*Did you mean "advise"/,
    ],
    ['an unknown option of the program', ['--plian'], /option: "--plian".*Did you mean "--plain"\?/],
    ['an unknown command of rules', ['rules', 'chek'], /rules command: "chek".*Did you mean "check"\?/],
    ['rules alone', ['rules'], /rules: \(nothing\).*check, list, explain/],
    ['a word after rules check', ['rules', 'check', 'now'], /check: "now"/],
    ['an option of another command', ['rules', 'check', '--json'], /option: "--json"/],
    ['record alone', ['record'], /record: \(nothing\)/],
    ['record show without a file', ['record', 'show'], /FILE: \(nothing\)/],
    ['record check without a file', ['record', 'check'], /FILE: \(nothing\)/],
    ['record check of a missing file', ['record', 'check', 'none.json'], /"none\.json".*no such file/],
    [
      'record check of a folder without records',
      ['record', 'check', 'scenarios'],
      /no record in that folder/,
    ],
    ['record compare with one file', ['record', 'compare', 'scenarios/marine-new.json'], /B: \(nothing\)/],
    ['record accept without a file', ['record', 'accept'], /FILE: \(nothing\)/],
    [
      'record accept on no day',
      ['record', 'accept', 'a.json', '--date', '2026-02-31x'],
      /--date: "2026-02-31x"/,
    ],
    ['record supersede with one file', ['record', 'supersede', 'a.json'], /NEW: \(nothing\)/],
    ['record show of a missing file', ['record', 'show', 'none.json'], /"none\.json".*no such file/],
    ['help for an unknown command', ['help', 'advis'], /command: "advis"/],
    ['an empty folder for the record', ['--save', ''], /--save: ""/],
  ])('%s', async (_, args, message) => {
    const ended = await runProgram(args);
    expect(ended.stderr).toMatch(message);
    expect({ code: ended.code, stdout: ended.stdout }).toEqual({ code: 2, stdout: '' });
    expect(ended.stderr.trim().split('\n')).toHaveLength(1);
  });
});
