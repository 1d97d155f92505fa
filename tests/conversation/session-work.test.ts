import { describe, expect, it, vi } from 'vitest';
import { Refusal } from '../../src/base/refusal.ts';
import { type Services, type Session, startSession } from '../../src/conversation/session.ts';
import type { Outlook } from '../../src/conversation/state.ts';
import { fakeServices, sampleImpression } from './fake-services.ts';

async function saying(session: Session, ...lines: string[]): Promise<void> {
  await session.begin();
  for (const text of lines) await session.tell({ kind: 'said', text });
}

/** Work that ends when it is let go, and remembers whether anybody still waits for it. */
function heldUp() {
  let letGo: () => void = () => {};
  const held = new Promise<void>((resolve) => {
    letGo = resolve;
  });
  const signals: AbortSignal[] = [];
  return {
    letGo: () => letGo(),
    signals,
    async wait(signal?: AbortSignal) {
      if (signal) signals.push(signal);
      await held;
    },
  };
}

const watched = (change: Partial<Services>, onFault: (error: unknown) => void = () => {}) =>
  startSession({ services: fakeServices(change), draftStore: null, watchOutlook: { onFault } });

/** Outlooks that a session comes to know, in order. */
function outlooksOf(session: Session): Outlook[] {
  const seen: Outlook[] = [];
  session.subscribe(({ outlook }) => {
    if (outlook && seen.at(-1) !== outlook) seen.push(outlook);
  });
  return seen;
}

describe('long work', () => {
  it('is stopped at once, whatever it is doing, and told so by its signal', async () => {
    const held = heldUp();
    const services = fakeServices();
    const session = startSession({
      services: {
        ...services,
        async advise(scenario, how) {
          await held.wait(how?.signal);
          return services.advise(scenario);
        },
      },
      draftStore: null,
    });
    await saying(session, 'zone 5B');
    expect(session.stop()).toBe(false);
    const answering = session.tell({ kind: 'said', text: 'done' });
    await vi.waitFor(() => expect(held.signals).toHaveLength(1));
    expect(session.state().stage).toBe('advising');
    expect(session.stop()).toBe(true);
    await answering;
    expect(held.signals[0]?.aborted).toBe(true);
    expect(session.state().stage).toBe('asking');
    expect(session.state().advice).toBeNull();
    // The same work can be asked for again.
    held.letGo();
    await session.tell({ kind: 'said', text: 'done' });
    expect(session.state().stage).toBe('told');
  });

  it('tells how far it is, and no more once it is done', async () => {
    const services = fakeServices();
    const session = startSession({
      services: {
        ...services,
        async advise(scenario, how) {
          how?.onProgress({ walls: 18_000, times: 3 });
          return services.advise(scenario);
        },
      },
      draftStore: null,
    });
    const seen: unknown[] = [];
    session.subscribe(() => seen.push(session.progress()));
    await saying(session, 'zone 5B', 'done');
    expect(seen).toContainEqual({ walls: 18_000, times: 3 });
    expect(session.progress()).toBeNull();
  });

  it('that is refused says why, and the talk goes on where it was', async () => {
    const refusal = new Refusal({ field: 'budget_usd_per_ft2', value: '24', accepted: 'Give more.' });
    const session = startSession({
      services: fakeServices({ firstImpression: () => Promise.reject(refusal) }),
      draftStore: null,
    });
    await saying(session, 'zone 5B', 'new', 'what if the budget were 24 a foot');
    expect(JSON.stringify(session.state().turns.at(-1))).toContain('Give more.');
    expect(session.state().stage).toBe('asking');
  });
});

describe('the impression beside the questions', () => {
  it('follows the answers, first the walls, then what still matters', async () => {
    const session = watched({ fieldsThatMatter: async () => ['finish'] });
    const seen = outlooksOf(session);
    await saying(session, 'zone 5B');
    await vi.waitFor(() => expect(seen).toHaveLength(2));
    expect(seen.map(({ matters }) => matters)).toEqual([null, ['finish']]);
    expect(seen[0]?.answers).toBe(session.state().answers);
  });

  it('never holds a line up, and is given up for older answers', async () => {
    const held = heldUp();
    const session = watched({
      async firstImpression(scenario, signal) {
        await held.wait(signal);
        return sampleImpression(scenario);
      },
    });
    const seen = outlooksOf(session);
    await saying(session, 'zone 5B', 'new', '2x6 at 16', 'osb');
    expect(session.state().answers.sheathing).toBe('osb');
    await vi.waitFor(() => expect(held.signals.at(-1)?.aborted).toBe(false));
    expect(held.signals.slice(0, -1).every(({ aborted }) => aborted)).toBe(true);
    held.letGo();
    await vi.waitFor(() => expect(seen.length).toBeGreaterThan(0));
    expect(seen[0]?.answers).toBe(session.state().answers);
  });

  it('gives way to the answer', async () => {
    const held = heldUp();
    const session = watched({
      async fieldsThatMatter(_scenario, signal) {
        await held.wait(signal);
        return [];
      },
    });
    await saying(session, 'zone 5B');
    await vi.waitFor(() => expect(held.signals).toHaveLength(1));
    await session.tell({ kind: 'said', text: 'done' });
    expect(held.signals[0]?.aborted).toBe(true);
    expect(session.state().stage).toBe('told');
  });

  it('is none without the place, and none for answers that no method covers', async () => {
    const firstImpression = vi.fn(() =>
      Promise.reject(new Refusal({ field: 'framing.depth_in', value: '3', accepted: 'Give 3.5.' })),
    );
    const onFault = vi.fn();
    const session = watched({ firstImpression }, onFault);
    await saying(session, 'new');
    expect(firstImpression).not.toHaveBeenCalled();
    await session.tell({ kind: 'said', text: 'zone 5B' });
    await vi.waitFor(() => expect(firstImpression).toHaveBeenCalledTimes(1));
    await session.idle();
    expect(onFault).not.toHaveBeenCalled();
    expect(session.state().outlook).toBeNull();
  });

  it('hands a fault of the program on', async () => {
    const onFault = vi.fn();
    const session = watched({ firstImpression: () => Promise.reject(new TypeError('a fault')) }, onFault);
    await saying(session, 'zone 5B');
    await vi.waitFor(() => expect(onFault).toHaveBeenCalledTimes(1));
  });
});
