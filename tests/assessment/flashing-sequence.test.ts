import { describe, expect, it } from 'vitest';
import {
  type FlashingSteps,
  loadFlashingSteps,
  OPENING_TRAITS,
  type OpeningTraits,
  PHASES,
} from '../../src/assembly/flashing-steps.ts';
import { flashingSequence } from '../../src/assessment/flashing-sequence.ts';

const STEPS = loadFlashingSteps();

function everyOpening(): OpeningTraits[] {
  const { support, window, project, barrier, ground, foam, finish, furring } = OPENING_TRAITS;
  return support.flatMap((s) =>
    window.flatMap((w) =>
      project.flatMap((p) =>
        barrier.flatMap((b) =>
          ground.flatMap((g) =>
            foam.flatMap((f) =>
              finish.flatMap((x) =>
                furring.map((y) => ({
                  support: s,
                  window: w,
                  project: p,
                  barrier: b,
                  ground: g,
                  foam: f,
                  finish: x,
                  furring: y,
                })),
              ),
            ),
          ),
        ),
      ),
    ),
  );
}

/** The step of the data that a line of the sequence is. */
function stepOf(line: string): FlashingSteps['steps'][number] {
  const found = STEPS.steps.find(({ text, hold }) => line === (hold ? `${text} HOLD: ${hold}` : text));
  if (!found) throw new Error(`no such step: ${line}`);
  return found;
}

const opening: OpeningTraits = {
  support: 'bears-on-sill',
  window: 'flanged',
  project: 'new',
  barrier: 'sheet',
  ground: 'sheathing',
  foam: 'other',
  finish: 'plaster',
  furring: 'none',
};
const linesOf = (change: Partial<OpeningTraits>) => flashingSequence({ ...opening, ...change }).steps;
const indexOf = (lines: readonly string[], words: RegExp) => lines.findIndex((line) => words.test(line));

describe('for every buck, window, project, barrier, board and finish', () => {
  const all = everyOpening().map((traits) => {
    const sequence = flashingSequence(traits);
    return { traits, sequence, phases: sequence.steps.map((line) => stepOf(line).phase) };
  });

  it('the work is gone through once, in order', () => {
    for (const { traits, phases } of all) {
      const order = phases.map((phase) => PHASES.indexOf(phase));
      expect(order).toEqual([...order].sort((a, b) => a - b));
      for (const phase of ['barrier', 'pan', 'window', 'flange', 'head', 'finish', 'inside'] as const)
        expect(phases.filter((p) => p === phase)).toHaveLength(1);
      expect(phases).toContain('skin');
      expect(phases.includes('prepare')).toBe(traits.project === 'retrofit');
    }
  });
  it('boards go up after the skin, or before it where there is no buck', () => {
    for (const { traits, phases } of all) {
      const noBuck = traits.support === 'flange-over-insulation';
      expect(phases.includes('insulation')).toBe(!noBuck);
      expect(phases.includes('insulation-first')).toBe(noBuck);
    }
  });
  it('the bottom drains, and the work stops for a look before anything is covered', () => {
    for (const { sequence } of all) {
      expect(sequence.steps.join(' ')).toMatch(/so that the pan drains/);
      expect(sequence.holds.length).toBeGreaterThanOrEqual(4);
      expect(sequence.holds.join(' ')).toMatch(/Flood the pan/);
      expect(sequence.replace_later).toHaveLength(1);
      expect(sequence.compatibility.length).toBeGreaterThanOrEqual(3);
    }
  });
});

describe('the flashing sequence', () => {
  it('covers the buck and joins the barrier as one skin, sill to head, before pan, boards and window', () => {
    const lines = linesOf({});
    const skin = indexOf(lines, /one continuous skin: sill, then jambs, then head/);
    expect(skin).toBeGreaterThan(indexOf(lines, /^Buck set/));
    expect(skin).toBeLessThan(indexOf(lines, /back dam/));
    expect(indexOf(lines, /back dam/)).toBeLessThan(indexOf(lines, /^Insulation boards/));
    expect(indexOf(lines, /^Insulation boards/)).toBeLessThan(
      indexOf(lines, /^Window on two setting blocks/),
    );
    expect(indexOf(lines, /^Inside, last/)).toBe(lines.length - 1);
  });
  it('asks for screws in framing and joined corners where the buck hangs on the face', () => {
    expect(linesOf({ support: 'face-fastened' }).join(' ')).toMatch(/screwed to each other at the corners/);
  });
  it('laps a sheet, sticks to an adhered barrier, runs into a fluid one', () => {
    expect(linesOf({}).join(' ')).toMatch(/flap comes down over it/);
    expect(linesOf({ barrier: 'adhered' }).join(' ')).toMatch(/Cut edges of the membrane/);
    expect(linesOf({ barrier: 'fluid' }).join(' ')).toMatch(/without a joint/);
  });
  it('speaks of no sheathing where the studs are open', () => {
    for (const support of OPENING_TRAITS.support) {
      const lines = linesOf({ support, ground: 'open-studs' }).join(' ');
      expect(lines).toMatch(/Barrier sheets on the open studs/);
      expect(lines).not.toMatch(/sheathing/);
    }
  });
  it('has no flange to flash on a window without one, and a threshold to bear under a door', () => {
    expect(linesOf({ window: 'flangeless' }).join(' ')).not.toMatch(/flange/);
    expect(linesOf({ window: 'door' }).join(' ')).toMatch(/no threshold rests on insulation/);
  });
  it('warns of solvents where the boards are polystyrene only', () => {
    const notes = (foam: OpeningTraits['foam']) =>
      flashingSequence({ ...opening, foam }).compatibility.join(' ');
    expect(notes('polystyrene')).toMatch(/solvent/);
    expect(notes('other')).not.toMatch(/solvent/);
  });
  it('uses every step and note of its data somewhere', () => {
    const said = new Set(
      everyOpening().flatMap((traits) => {
        const { steps, replace_later, compatibility } = flashingSequence(traits);
        return [...steps.map((line) => stepOf(line).text), ...replace_later, ...compatibility];
      }),
    );
    const all = [...STEPS.steps, ...STEPS.replace_later, ...STEPS.compatibility];
    expect(all.filter(({ text }) => !said.has(text)).map(({ id }) => id)).toEqual([]);
  });
});
