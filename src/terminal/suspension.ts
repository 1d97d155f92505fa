export type SuspensionPorts = {
  /** Takes the live region off the screen and puts the terminal in order for the shell. */
  takeDown(): Promise<void>;
  /** Takes the terminal again and draws the live region anew, below whatever the shell has written. */
  putUp(): void;
  /** Stops the job; comes back at once, the stop follows. */
  stop(): void;
};

/**
 * Putting the program to sleep and waking it: by Ctrl-Z, which arrives as a key while the terminal is read raw, or by
 * the signal from elsewhere. Each time the terminal is restored before the shell has it and taken again afterwards.
 */
export class Suspension {
  readonly #ports: SuspensionPorts;
  #isAsleep = false;

  constructor(ports: SuspensionPorts) {
    this.#ports = ports;
  }

  /** Heeds the signals of the shell until the returned function is called. */
  watch(): () => void {
    process.on('SIGTSTP', this.#asked);
    process.on('SIGCONT', this.#woken);
    return () => {
      process.off('SIGTSTP', this.#asked);
      process.off('SIGCONT', this.#woken);
    };
  }

  async begin(): Promise<void> {
    if (this.#isAsleep) return;
    this.#isAsleep = true;
    await this.#ports.takeDown();
    // With our own listener the signal would not stop anything.
    process.off('SIGTSTP', this.#asked);
    this.#ports.stop();
  }

  readonly #asked = (): void => {
    void this.begin();
  };

  readonly #woken = (): void => {
    process.off('SIGTSTP', this.#asked);
    process.on('SIGTSTP', this.#asked);
    this.#isAsleep = false;
    this.#ports.putUp();
  };
}
