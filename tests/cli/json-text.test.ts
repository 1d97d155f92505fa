import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Refusal } from '../../src/base/refusal.ts';
import { findJsonFault } from '../../src/cli/json-fault.ts';
import { parseJsonText } from '../../src/cli/json-text.ts';

function refusalOf(text: string): string {
  try {
    parseJsonText(text, 'a.json');
  } catch (error) {
    if (error instanceof Refusal) return error.message;
    throw error;
  }
  return 'accepted';
}

/** What the platform's own parser thinks of the text: the outside check of everything below. */
function isJson(text: string): boolean {
  try {
    JSON.parse(text);
    return true;
  } catch {
    return false;
  }
}

describe('parsing JSON text', () => {
  it.each([
    ['{"a": 1,}', 'line 1, column 9: "}"', 'a key in double quotes'],
    ['[1, 2\n 3]', 'line 2, column 2: "3]"', 'a comma or "]"'],
    ['{"a": tru}', 'column 7: "tru}"', 'a value'],
    ['{"a": 01}', 'column 7: "01}"', 'a value'],
    ["{'a': 1}", `column 2: "'a': 1}"`, 'a key in double quotes'],
    ['{"a": 1} x', 'column 10: "x"', 'one JSON document'],
    ['{"a": 1', 'column 8: the end of the text', 'a comma or "}"'],
    ['{"a": "b', 'column 7', 'a closing double quote'],
    ['"a\nb"', 'column 3', 'in place of a line end'],
    ['"\\x"', 'column 2', 'an escape'],
    ['{"a": 1, "\\u0061": 2}', 'column 10', 'Give each key once'],
    ['// note\n{}', 'line 1, column 1', 'a value'],
  ])('%j is refused at its place', (text, place, accepted) => {
    const message = refusalOf(text);
    expect(message).toContain(`a.json, line `);
    expect(message).toContain(place);
    expect(message).toContain(accepted);
  });

  it('counts columns in characters, not in code units', () => {
    expect(refusalOf('{"🏠": x}')).toContain('column 7');
  });

  it('reads every document as the built-in parser does', () => {
    fc.assert(
      fc.property(fc.json({ maxDepth: 6 }), (text) => {
        fc.pre(findJsonFault(text)?.accepted.startsWith('Give each key once') !== true);
        expect(parseJsonText(text, 'x')).toEqual(JSON.parse(text));
      }),
    );
  });

  it('finds fault exactly where the built-in parser does, whatever is broken', () => {
    const broken = fc
      .tuple(
        fc.json({ maxDepth: 4 }),
        fc.nat(),
        fc.nat(2),
        fc.constantFrom('', '"', '{', ']', ',', ':', '\\', '0', '-', '.', 'e', ' ', '\t', '\n', 'null'),
      )
      .map(([text, at, cut, put]) => {
        const start = at % (text.length + 1);
        return text.slice(0, start) + put + text.slice(start + cut);
      });
    fc.assert(
      fc.property(fc.oneof(broken, fc.string()), (text) => {
        const fault = findJsonFault(text);
        fc.pre(fault?.accepted.startsWith('Give each key once') !== true);
        expect(fault === undefined).toBe(isJson(text));
      }),
      { numRuns: 2000 },
    );
  });

  it('is not exhausted by depth or length', () => {
    expect(refusalOf('['.repeat(500_000))).toContain('Nest at most 64 levels');
    expect(refusalOf(`"${'a'.repeat(900_000)}`)).toContain('a closing double quote');
    expect(parseJsonText(`${'['.repeat(64)}${']'.repeat(64)}`, 'x')).toBeDefined();
  });
});
