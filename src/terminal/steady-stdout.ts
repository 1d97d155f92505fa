import { memberOf } from './stream-member.ts';

/** What Ink is told about the window's height: always enough. */
const ENOUGH_ROWS = 100_000;

type Listener = Parameters<NodeJS.WriteStream['on']>[1];

/**
 * The terminal as Ink may see it. Ink clears the screen with the user's scroll-back whenever it believes that its last
 * frame was as tall as the window, and on a resize it redraws the old, too tall frame before ours is ready. So the
 * height is kept from it and resizes are not passed on: the live region keeps itself below the window's height and is
 * drawn anew by the view, which listens to the real terminal.
 *
 * @param onWrite  called before each write of Ink's
 */
export function steadyStdout(stdout: NodeJS.WriteStream, onWrite: () => void = () => {}): NodeJS.WriteStream {
  return new Proxy(stdout, {
    get(target, key) {
      if (key === 'rows') return ENOUGH_ROWS;
      if (key === 'on' || key === 'off') {
        return (event: string, listener: Listener) => {
          if (event !== 'resize') target[key](event, listener);
          return target;
        };
      }
      if (key !== 'write') return memberOf(target, key);
      return (...args: unknown[]) => {
        onWrite();
        return Reflect.apply(target.write, target, args);
      };
    },
  });
}
