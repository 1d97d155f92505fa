import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { revisionName, revisionOf, safeName } from '../../src/record/safe-name.ts';

describe('safeName', () => {
  it.each([
    ['Quarry Lane duplex, north wall', 'quarry-lane-duplex-north-wall'],
    ['Müller’s façade, Łódź, straße', 'mullers-facade-lodz-strasse'],
    ['../../etc/passwd', 'etc-passwd'],
    ['C:\\Windows\\system32', 'c-windows-system32'],
    ['<script>alert(1)</script>', 'script-alert-1-script'],
    ['CON', 'con-wall'],
    ['com1', 'com1-wall'],
    ['COM¹', 'com1-wall'],
    ['nul.txt', 'nul-txt'],
    ['\u202egnp.exe', 'gnp-exe'],
    ['a\u0000b\nc', 'a-b-c'],
    ['🏠', 'wall'],
    ['', 'wall'],
    ['...', 'wall'],
    ['--help', 'help'],
    ['Quarry r2', 'quarry-r2-wall'],
    ['r2', 'r2-wall'],
    ['東京の壁', 'wall'],
  ])('makes %j harmless: %s', (given, expected) => {
    expect(safeName(given)).toBe(expected);
  });

  it('is cut to 60 characters without a hyphen at the end', () => {
    expect(safeName('a'.repeat(500))).toBe('a'.repeat(60));
    expect(safeName(`${'a'.repeat(59)} b`)).toBe('a'.repeat(59));
    expect(safeName(`${'a'.repeat(56)} r2`)).toBe(`${'a'.repeat(55)}-wall`);
  });

  it('is always a plain name of 1 to 60 letters, digits and single hyphens', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 200 }), (given) => {
        const name = safeName(given);
        expect(name).toMatch(/^[a-z0-9]+(-[a-z0-9]+)*$/);
        expect(name.length).toBeLessThanOrEqual(60);
        expect(name).not.toMatch(/(^|-)r\d+$/);
      }),
    );
  });
});

describe('revisions', () => {
  it('puts the number behind the name from the second on, and reads it back', () => {
    expect(revisionName('quarry', 1)).toBe('quarry');
    expect(revisionName('quarry', 12)).toBe('quarry-r12');
    expect(revisionOf('quarry.json', 'quarry')).toBe(1);
    expect(revisionOf('quarry-r12.html', 'quarry')).toBe(12);
    expect(revisionOf('QUARRY-R3.MD', 'quarry')).toBe(3);
  });

  it('does not take other files for revisions', () => {
    for (const other of ['quarry-lane.json', 'quarry-r2.txt', 'quarry', 'quarry-r0.json', '.quarry.json']) {
      expect(revisionOf(other, 'quarry')).toBeNull();
    }
  });
});
