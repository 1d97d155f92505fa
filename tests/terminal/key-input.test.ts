import { describe, expect, it } from 'vitest';
import { type PressedKey, readChunk } from '../../src/terminal/key-input.ts';

const NONE: PressedKey = {
  upArrow: false,
  downArrow: false,
  leftArrow: false,
  rightArrow: false,
  home: false,
  end: false,
  return: false,
  escape: false,
  ctrl: false,
  tab: false,
  backspace: false,
  delete: false,
  meta: false,
};

const kinds = (input: string, key: Partial<PressedKey> = {}, isPasting = false) =>
  readChunk(input, { ...NONE, ...key }, isPasting).actions.map((action) =>
    action.kind === 'text' ? action.text : `<${action.kind}>`,
  );

describe('what a chunk from the terminal asks for', () => {
  it('text is text, however much comes at once', () => {
    expect(kinds('2x6 at 16')).toEqual(['2x6 at 16']);
  });

  it('enter alone sends the line', () => {
    expect(kinds('\r', { return: true })).toEqual(['<submit>']);
    expect(kinds('\n')).toEqual(['<submit>']);
  });

  it('text with one line end at its end was typed fast and is sent', () => {
    expect(kinds('plywood\r')).toEqual(['plywood', '<submit>']);
  });

  it.each([
    ['OSB\rR-21', 'OSB; R-21'],
    ['OSB\r\nR-21\r\n', 'OSB; R-21 '],
    ['OSB\nR-21\n', 'OSB; R-21 '],
    ['OSB\r\n', 'OSB '],
  ])('several line ends, or the pair, are a paste and never send (%j)', (chunk, text) => {
    expect(kinds(chunk)).toEqual([text]);
  });

  it('between the marks of a paste everything is text', () => {
    const begun = readChunk('[200~', NONE, false);
    expect(begun).toEqual({ actions: [], isPasting: true });
    expect(kinds('plywood\r', {}, true)).toEqual(['plywood ']);
    expect(kinds('\r', { return: true }, true)).toEqual([' ']);
    expect(kinds('', { escape: true }, true)).toEqual([]);
    expect(readChunk('[201~', NONE, true)).toEqual({ actions: [], isPasting: false });
  });

  it('both rub-out keys rub out, several in one chunk too', () => {
    expect(kinds('', { delete: true })).toEqual(['<erase-back>']);
    expect(kinds('', { backspace: true })).toEqual(['<erase-back>']);
    expect(kinds('ab\u007f\u007f')).toEqual(['ab', '<erase-back>', '<erase-back>']);
  });

  it('Ctrl-C interrupts, alone, in a fast chunk and in a paste that never ended', () => {
    expect(kinds('c', { ctrl: true })).toEqual(['<interrupt>']);
    expect(kinds('ab\u0003')).toEqual(['ab', '<interrupt>']);
    expect(kinds('c', { ctrl: true }, true)).toEqual(['<interrupt>']);
  });

  it('keys that come together faster than they are read do what each does alone', () => {
    expect(kinds('ab\u0015cd\u0001ef\u0005\r')).toEqual([
      'ab',
      '<erase-to-start>',
      'cd',
      '<start>',
      'ef',
      '<end>',
      '<submit>',
    ]);
    expect(kinds('one two\u0017\u000b')).toEqual(['one two', '<erase-word>', '<erase-to-end>']);
    expect(kinds('ab\u001acd')).toEqual(['ab', '<suspend>', 'cd']);
  });

  it('escape goes back, although it also counts as meta', () => {
    expect(kinds('', { escape: true, meta: true })).toEqual(['<back>']);
  });

  it('arrows, home, end and the usual control keys move and rub out', () => {
    expect(kinds('', { upArrow: true })).toEqual(['<up>']);
    expect(kinds('', { downArrow: true })).toEqual(['<down>']);
    expect(kinds('', { leftArrow: true })).toEqual(['<left>']);
    expect(kinds('', { rightArrow: true })).toEqual(['<right>']);
    expect(kinds('', { home: true })).toEqual(['<start>']);
    expect(kinds('e', { ctrl: true })).toEqual(['<end>']);
    expect(kinds('u', { ctrl: true })).toEqual(['<erase-to-start>']);
    expect(kinds('w', { ctrl: true })).toEqual(['<erase-word>']);
  });

  it('keys that mean nothing here do nothing', () => {
    expect(kinds('x', { meta: true })).toEqual([]);
    expect(kinds('l', { ctrl: true })).toEqual([]);
    expect(kinds('\t', { tab: true })).toEqual([]);
  });
});
