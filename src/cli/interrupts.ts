let isTaken = false;

/** Whether a part of the program sees to interrupts by itself just now. */
export function interruptsAreTaken(): boolean {
  return isTaken;
}

/** What an interrupt does while lines are talked: it stops work, and where there is none it says a last word. */
export type OnInterrupt = {
  /** False: there was nothing to stop. */
  readonly stop: () => boolean;
  readonly lastWords: () => string;
};

let onInterrupt: OnInterrupt | null = null;

/** Stops the work under way on an interrupt, if there is any that may be stopped. False: nothing was stopped. */
export function interruptStopsWork(): boolean {
  return onInterrupt?.stop() ?? false;
}

/** What is to be said before an interrupt ends the program; empty where nothing is. */
export function lastWordsOnInterrupt(): string {
  return onInterrupt?.lastWords() ?? '';
}

/** Lets an interrupt stop work instead of ending the program, until the returned function is called. */
export function stoppingOnInterrupt(handled: OnInterrupt): () => void {
  onInterrupt = handled;
  return () => {
    onInterrupt = null;
  };
}

/**
 * Leaves interrupts to `run` while it works: the terminal UI has a terminal to put right and a draft to finish before
 * the program may end.
 */
export async function takingInterrupts<T>(run: () => Promise<T>): Promise<T> {
  isTaken = true;
  try {
    return await run();
  } finally {
    isTaken = false;
  }
}

/**
 * Lets an interrupt in that came while the answer was being worked out: the calculation keeps the thread to itself,
 * so that the signal would otherwise wait until after the result is written.
 */
export async function letInterruptsIn(): Promise<void> {
  // The first turn may end in the round of the event loop that began before the signal came.
  await new Promise((resolve) => setImmediate(resolve));
  await new Promise((resolve) => setImmediate(resolve));
}
