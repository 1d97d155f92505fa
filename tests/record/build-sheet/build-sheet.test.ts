import { describe, expect, it } from 'vitest';
import { buildRecord } from '../../../src/record/build-record.ts';
import { buildSheet } from '../../../src/record/build-sheet/build-sheet.ts';
import { CREATED, EMPTY_ADVICE, FALLBACK_ADVICE, FULL_ADVICE, SCENARIO } from '../fixture-advice.ts';
import { HOSTILE_NAMES } from '../hostile-names.ts';
import { checkHtml } from '../html-check.ts';

const recordOf = (advice = FULL_ADVICE, name = SCENARIO.name ?? '') =>
  buildRecord({ scenario: { ...SCENARIO, name }, advice, created: CREATED, revision: 1 });

describe('buildSheet', () => {
  const sheet = buildSheet(recordOf());

  it('has order of work, hold points, fasteners, take-off, tools, pictures and crew cautions', () => {
    for (const words of [
      '## Order of work',
      '**Hold: Nobody drives a long screw before the services are marked.**',
      'Slope the sill of the buck outward.',
      '## Fasteners',
      '## What to buy',
      '### Tools',
      '### Photograph',
      'Falls from scaffolds kill: guard rails, ties, daily checks',
    ]) {
      expect(sheet?.markdown).toContain(words);
    }
    checkHtml(sheet?.html ?? '');
  });

  it('says that nobody may build from it before those who must have signed', () => {
    expect(sheet?.markdown).toContain('Not to be built from yet: the record is proposed, and owner');
    const signed = { name: 'A. Sample', date: '2026-04-01' };
    const accepted = {
      ...recordOf(),
      status: 'accepted' as const,
      sign_off: { owner: signed, builder: signed, designer: signed },
    };
    expect(buildSheet(accepted)?.markdown).toContain('**Accepted. Where the wall found on site differs');
  });

  it('asks for pictures of lath and coats only where the wall has them', () => {
    expect(sheet?.markdown).toContain('lath laps and ties');
    expect(sheet?.markdown).toContain('each coat with date and weather');
    const panelled = FULL_ADVICE.ranked.map((wall) => ({
      ...wall,
      layers: wall.layers
        .filter(({ role }) => role !== 'drainage')
        .map((layer) =>
          layer.role === 'finish' ? { ...layer, label: 'textured fibre-cement panel' } : layer,
        ),
    }));
    const markdown = buildSheet(recordOf({ ...FULL_ADVICE, ranked: panelled }))?.markdown;
    expect(markdown).toContain('### Photograph');
    expect(markdown).not.toMatch(/lath laps|each coat with/);
  });

  it('sends nobody to an opening where the wall has none', () => {
    const bare = FULL_ADVICE.ranked.map((wall) => ({
      ...wall,
      openings: [],
      buck: { ...wall.buck, verdict: null, flashing_sequence: [] },
    }));
    expect(sheet?.markdown).toContain('each opening: buck with its screws');
    const markdown = buildSheet(recordOf({ ...FULL_ADVICE, ranked: bare }))?.markdown;
    expect(markdown).toContain('### Photograph');
    expect(markdown).not.toMatch(/each opening|head flashings open/);
  });

  it('holds glued boards by their glue, not by fasteners or lath', () => {
    const glued = FULL_ADVICE.ranked.map((wall) => ({
      ...wall,
      fastening: { ...wall.fastening, support: 'adhered' },
      crew: {
        ...wall.crew,
        steps: [
          'drainage barrier by the system',
          'boards glued, rasped flat',
          'base coat and mesh',
          'finish coat',
        ],
      },
    }));
    const markdown = buildSheet(recordOf({ ...FULL_ADVICE, ranked: glued }))?.markdown;
    expect(markdown).toContain('Boards glued, rasped flat. **Hold: barrier dry, sound');
    expect(markdown).toContain('Base coat and mesh. **Hold: boards tight and flat');
    expect(markdown).toContain('the glue on the back of a board');
    expect(markdown).not.toMatch(/every fastener in a stud|lath laps, ties|the fasteners with a tape/);
  });

  it('is that of the fallback where nothing passes as asked, and none where nothing passes at all', () => {
    expect(buildSheet(recordOf(FALLBACK_ADVICE))?.markdown).toContain('Stucco-texture fibre-cement panels');
    expect(buildSheet(recordOf(EMPTY_ADVICE))).toBeNull();
  });

  it.each(HOSTILE_NAMES)('is harmless with the name %j', (name) => {
    const tags = checkHtml(buildSheet(recordOf(FULL_ADVICE, name))?.html ?? '').map(({ tag }) => tag);
    for (const tag of ['script', 'img', 'b']) expect(tags).not.toContain(tag);
  });
});
