import { join } from 'node:path';
import { Worker } from 'node:worker_threads';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { advise } from '../../src/advice/advise.ts';
import type { Scenario } from '../../src/brief/scenario.ts';
import type { Job, Reply } from '../../src/cli/advisor-messages.ts';
import { loadKnowledge } from '../../src/cli/knowledge.ts';
import { TOOL_VERSION } from '../../src/cli/version.ts';
import { builtFolder } from './built-program.ts';

const SCENARIO: Scenario = {
  schema: 'cladwright-scenario/1',
  place: { climate_zone: '5B' },
  project: 'new',
  framing: { material: 'wood', depth_in: 5.5, spacing_in: 16 },
  sheathing: 'osb',
  cavity_insulation_r: 21,
  windows: [],
  finish: 'stucco-look',
  budget_usd_per_ft2: 30,
  crew_skill: 'general',
};

let worker: Worker;
const replies: Reply[] = [];
beforeAll(async () => {
  worker = new Worker(join(await builtFolder(), 'advisor-worker.js'), { workerData: [] });
  worker.on('message', (reply: Reply) => replies.push(reply));
}, 60_000);
afterAll(() => worker.terminate());

let lastId = 0;
function send(job: Job): number {
  lastId += 1;
  worker.postMessage({ id: lastId, job });
  return lastId;
}

async function ended(id: number): Promise<Reply> {
  for (;;) {
    const reply = replies.find((one) => one.id === id && one.kind !== 'progress');
    if (reply) return reply;
    await new Promise((resolve) => setTimeout(resolve, 20));
  }
}

describe('the advisor in its own thread', { timeout: 120_000 }, () => {
  it('gives the very answer that this thread gives, and tells how far it is', async () => {
    const id = send({ kind: 'advise', scenario: SCENARIO });
    const reply = await ended(id);
    const here = await advise(SCENARIO, await loadKnowledge({ housePacks: [] }), {
      top: 3,
      toolVersion: TOOL_VERSION,
    });
    expect(reply).toEqual({ id, kind: 'done', result: here });
    expect(replies.some((one) => one.id === id && one.kind === 'progress')).toBe(true);
  });

  it('has the first choice of the answer as its impression', async () => {
    const [advised, seen] = [
      await ended(send({ kind: 'advise', scenario: SCENARIO })),
      await ended(send({ kind: 'firstImpression', scenario: SCENARIO })),
    ];
    if (advised.kind !== 'done' || seen.kind !== 'done') throw new Error('both are answered');
    const { ranked, considered } = advised.result as Awaited<ReturnType<typeof advise>>;
    expect(seen.result).toMatchObject({
      drawn: considered.candidates,
      admitted: considered.admitted,
      first: { title: ranked[0]?.title },
    });
  });

  it('refuses what the methods do not cover, by field', async () => {
    const place = { state: 'CO', county: 'Nowhere' };
    const reply = await ended(send({ kind: 'firstImpression', scenario: { ...SCENARIO, place } }));
    expect(reply).toMatchObject({ kind: 'refused', issues: [{ field: expect.stringContaining('place') }] });
  });

  it('gives work up that nobody waits for, and goes on with the next', async () => {
    const long = send({ kind: 'fieldsThatMatter', scenario: { ...SCENARIO, project: 'unknown' } });
    worker.postMessage({ id: long, job: null });
    const next = send({ kind: 'firstImpression', scenario: SCENARIO });
    expect(await ended(long)).toEqual({ id: long, kind: 'stopped' });
    expect(await ended(next)).toMatchObject({ kind: 'done' });
  });
});
