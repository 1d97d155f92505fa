import { readFile } from 'node:fs/promises';
import { describe, expect, it } from 'vitest';
import { interruptsAreTaken, letInterruptsIn, takingInterrupts } from '../../src/cli/interrupts.ts';

function keepTheThread(ms: number): void {
  const end = Date.now() + ms;
  while (Date.now() < end);
}

describe('interrupts', () => {
  it('are handled before the result, though they came while the thread was busy', async () => {
    let isHandled = false;
    process.once('SIGUSR2', () => {
      isHandled = true;
    });
    // Begins inside a callback of the event loop, as a calculation that has just read a file does.
    await readFile(new URL(import.meta.url));
    process.kill(process.pid, 'SIGUSR2');
    keepTheThread(30);
    expect(isHandled).toBe(false);
    await letInterruptsIn();
    expect(isHandled).toBe(true);
  });

  it('are taken while the work goes on, and given back when it fails', async () => {
    expect(interruptsAreTaken()).toBe(false);
    const failing = takingInterrupts(async () => {
      expect(interruptsAreTaken()).toBe(true);
      throw new Error('as planned');
    });
    await expect(failing).rejects.toThrow('as planned');
    expect(interruptsAreTaken()).toBe(false);
  });
});
