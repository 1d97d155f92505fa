import { describe, expect, it } from 'vitest';
import { type Session, startSession } from '../../src/conversation/session.ts';
import { fakeServices } from './fake-services.ts';
import { memoryStore } from './memory-store.ts';

async function saying(session: Session, ...lines: string[]): Promise<void> {
  await session.begin();
  for (const text of lines) await session.tell({ kind: 'said', text });
}

describe('a session', () => {
  it('keeps the draft before it shows what follows from the answer', async () => {
    const order: string[] = [];
    const store = memoryStore();
    const session = startSession({
      services: fakeServices(),
      draftStore: {
        ...store,
        async save(draft) {
          await new Promise((resolve) => setTimeout(resolve, 5));
          order.push(`kept ${Object.keys(draft.answers).length}`);
          await store.save(draft);
        },
      },
    });
    session.subscribe((state) => order.push(`shown ${Object.keys(state.answers).length}`));
    await saying(session, 'zone 5B', 'new');
    expect(order).toEqual(['shown 0', 'kept 1', 'shown 1', 'kept 2', 'shown 2']);
    expect(store.current()?.answers.project).toBe('new');
  });

  it('takes events one after the other, however fast they come', async () => {
    const session = startSession({ services: fakeServices(), draftStore: null });
    await session.begin();
    await Promise.all(
      ['Boulder, CO', 'new', '2x6 at 16'].map((text) => session.tell({ kind: 'said', text })),
    );
    expect(session.state().answers).toMatchObject({ project: 'new', 'framing.spacing_in': 16 });
  });

  it('goes on, and says so once, when the draft can not be kept', async () => {
    const session = startSession({
      services: fakeServices(),
      draftStore: { ...memoryStore(), save: () => Promise.reject(new Error('No space left.')) },
    });
    await saying(session, 'zone 5B', 'new');
    const remarks = session.state().turns.filter((turn) => JSON.stringify(turn).includes('No space left.'));
    expect(remarks).toHaveLength(1);
    expect(session.state().answers.project).toBe('new');
  });

  it('begins afresh when the kept draft can not even be looked for', async () => {
    const session = startSession({
      services: fakeServices(),
      draftStore: { ...memoryStore(), load: () => Promise.reject(new Error('Permission denied.')) },
    });
    await saying(session, 'zone 5B');
    expect(JSON.stringify(session.state().turns)).toContain('Permission denied.');
    expect(session.state().answers.place).toEqual({ climate_zone: '5B' });
  });

  it('drops the draft once the record is saved', async () => {
    const store = memoryStore();
    const services = fakeServices();
    const session = startSession({ services, draftStore: store });
    await saying(session, 'zone 5B', 'done');
    expect(store.current()).not.toBeNull();
    await session.tell({ kind: 'said', text: 'save' });
    expect(services.saved).toHaveLength(1);
    expect(store.current()).toBeNull();
  });

  it('passes a fault of the program on instead of hiding it', async () => {
    const services = fakeServices({ advise: () => Promise.reject(new TypeError('a fault')) });
    const session = startSession({ services, draftStore: null });
    await saying(session, 'zone 5B');
    await expect(session.tell({ kind: 'said', text: 'done' })).rejects.toThrow('a fault');
  });
});
