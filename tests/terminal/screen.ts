import { EventEmitter } from 'node:events';
import xterm from '@xterm/headless';

/** A keyboard that is a terminal, as far as Ink can tell. */
export class FakeKeyboard extends EventEmitter {
  readonly isTTY = true;
  isRaw = false;
  #chunks: string[] = [];

  /** One chunk from the terminal. */
  press(chunk: string): void {
    this.#chunks.push(chunk);
    this.emit('readable');
  }
  read(): string | null {
    return this.#chunks.shift() ?? null;
  }
  setRawMode(isRaw: boolean): this {
    this.isRaw = isRaw;
    return this;
  }
  setEncoding(): this {
    return this;
  }
  ref(): this {
    return this;
  }
  unref(): this {
    return this;
  }
}

/** A screen with scroll-back, as a terminal emulator would show it. */
export class FakeScreen extends EventEmitter {
  readonly isTTY = true;
  readonly writable = true;
  columns: number;
  rows: number;
  /** Everything that was written, codes and all. */
  written = '';
  readonly #terminal: xterm.Terminal;

  constructor(columns: number, rows: number) {
    super();
    this.columns = columns;
    this.rows = rows;
    this.#terminal = new xterm.Terminal({ cols: columns, rows, scrollback: 5000, allowProposedApi: true });
  }

  write(text: string, done?: () => void): boolean {
    this.written += text;
    // The line discipline of a terminal sends the carriage back on each line end.
    this.#terminal.write(text.replace(/\r?\n/g, '\r\n'), done);
    return true;
  }

  resize(columns: number, rows: number): void {
    this.columns = columns;
    this.rows = rows;
    this.#terminal.resize(columns, rows);
    this.emit('resize');
  }

  /** The rows on the screen. */
  async view(): Promise<string[]> {
    await this.#settled();
    const { active } = this.#terminal.buffer;
    return this.#rows(active.baseY, active.baseY + this.rows);
  }

  /** Screen and scroll-back. */
  async everything(): Promise<string[]> {
    await this.#settled();
    return this.#rows(0, this.#terminal.buffer.active.length);
  }

  /** Column and row of the cursor on the screen. */
  async cursor(): Promise<{ x: number; y: number }> {
    await this.#settled();
    const { cursorX, cursorY } = this.#terminal.buffer.active;
    return { x: cursorX, y: cursorY };
  }

  #rows(from: number, to: number): string[] {
    const { active } = this.#terminal.buffer;
    return Array.from(
      { length: to - from },
      (_, i) => active.getLine(from + i)?.translateToString(true) ?? '',
    );
  }

  #settled(): Promise<void> {
    return new Promise((resolve) => this.#terminal.write('', resolve));
  }
}

/** Waits until something holds; fails with what was last seen. */
export async function until(
  what: string,
  holds: () => boolean | Promise<boolean>,
  within_ms = 10_000,
): Promise<void> {
  const end = Date.now() + within_ms;
  while (!(await holds())) {
    if (Date.now() > end) throw new Error(`waited in vain until ${what}`);
    await new Promise((resolve) => setTimeout(resolve, 10));
  }
}
