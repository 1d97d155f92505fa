import { memberOf } from './stream-member.ts';

/** Sequences of keys that the line knows, and the marks of a paste. */
const KNOWN = /^\u001b\[(?:(?:1;\d+)?[ABCDFH]|(?:[1-8]|20[01])(?:;\d+)?~)$/;
const CONTROL_SEQUENCE = /\u001b\[[0-?]*[ -/]*[@-~]/g;

/**
 * What came from the terminal without control sequences that no key of the line sends: function keys held with others, and
 * the colours of pasted text. Ink ends with a fault on some of them, and the rest would come out as letters.
 */
export function withoutStrangeKeys(chunk: string): string {
  return chunk.replace(CONTROL_SEQUENCE, (sequence) => (KNOWN.test(sequence) ? sequence : ''));
}

/** The same terminal, read without the keys that nobody knows. */
export function knownKeysOf(stdin: NodeJS.ReadStream): NodeJS.ReadStream {
  return new Proxy(stdin, {
    get(terminal, name) {
      if (name !== 'read') return memberOf(terminal, name);
      return (size?: number): unknown => {
        const chunk: unknown = terminal.read(size);
        return typeof chunk === 'string' ? withoutStrangeKeys(chunk) : chunk;
      };
    },
  });
}
