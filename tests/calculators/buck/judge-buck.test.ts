import { describe, expect, it } from 'vitest';
import type { BuckContext, BuckOption, BuckWindow } from '../../../src/calculators/buck/buck-types.ts';
import { judgeBuck } from '../../../src/calculators/buck/judge-buck.ts';
import { TABLES } from './tables.ts';

const option: BuckOption = {
  support: 'bears-on-sill',
  member: { nominal: '2x4', specific_gravity: 0.42 },
  screw: { diameter_in: 0.19, root_diameter_in: 0.152, length_in: 6, bending_yield_psi: 80_000 },
  screw_spacing_in: 12,
};
const window: BuckWindow = {
  width_in: 36,
  height_in: 60,
  weight_lb: 110,
  mounting: 'flanged',
  operation: 'casement',
  glazing: 'triple',
};
const context: BuckContext = {
  projection_in: 3,
  outward_wind_psf: 25,
  framing_gravity: 0.42,
  framing_depth_in: 5.5,
};
const judge = (o: Partial<BuckOption> = {}, w: Partial<BuckWindow> = {}, c: Partial<BuckContext> = {}) =>
  judgeBuck({ ...option, ...o }, { ...window, ...w }, { ...context, ...c }, TABLES);

const bare: Partial<BuckOption> = {
  support: 'flange-over-insulation',
  member: null,
  screw: null,
  screw_spacing_in: null,
};

describe('judgeBuck', () => {
  it('gives verdict, uses, screws, length and a sentence', () => {
    expect(judge()).toMatchObject({ verdict: 'fits', screws_per_side: 6, min_screw_length_in: 3 });
  });
  it('names a member in words, not by the key that it is given by', () => {
    const double = { member: { nominal: 'plywood-3/4-double', specific_gravity: 0.5 } };
    expect(judge(double).why).toContain(
      'The buck of double 3/4 in. plywood bearing on the rough sill carries',
    );
    expect(judge(double, {}, { projection_in: 9 }).why).toContain('this double 3/4 in. plywood buck');
    expect(judge().why).toContain('The buck of 1-1/2 in. lumber bearing on the rough sill carries');
  });
  it('counts a piece as it is cut, where that is said', () => {
    const flat = (thickness_in?: number) =>
      judge(
        {
          support: 'face-fastened',
          member: { nominal: '2x4', specific_gravity: 0.42, ...(thickness_in && { thickness_in }) },
        },
        {},
        { projection_in: 1 },
      );
    // 1 in. of board and 7/16 in. of sheathing in front of 1-1/2 in. in the framing, against 1-1/2 in. of board.
    expect(flat(1).min_screw_length_in).toBe(1 + 0.4375 + 1.5);
    expect(flat().min_screw_length_in).toBe(1.5 + 0.4375 + 1.5);
  });
  it('leaves steel framing and steel brackets to an engineer, without figures', () => {
    expect(judge({}, {}, { framing_gravity: null })).toMatchObject({
      verdict: 'engineer',
      screws_per_side: null,
    });
    expect(judge({ ...bare, support: 'steel-bracket' }).verdict).toBe('engineer');
  });
  it('never passes a wood buck whose member or screws are unknown', () => {
    expect(judge({ member: null }).verdict).toBe('engineer');
    expect(judge({ screw: null }).verdict).toBe('engineer');
  });
  it('says that a wall without depth cannot hold a sill piece down, instead of breaking off', () => {
    expect(judge({}, {}, { framing_depth_in: 1.5 })).toMatchObject({
      verdict: 'does-not-fit',
      screws_per_side: 6,
    });
  });
  it('keeps to a tighter reach when the option has one', () => {
    expect(judge({ max_projection_in: 2.5 }).why).toContain('reaches 2-1/2 in.');
  });

  describe('a unit of 20 ft² or 150 lb', () => {
    const LARGE: Partial<BuckWindow> = { width_in: 72, height_in: 96, weight_lb: 430, operation: 'fixed' };
    const laminated: Partial<BuckOption> = { member: { nominal: 'LVL-1-3/4', specific_gravity: 0.5 } };
    // 430/2 lb 4 in. from the jamb: 860 lb·in. on a strip of 2-1/4 in.; 2x 645, laminated 1-3/4 in. 930.
    it('stands on its blocks: a 2x sill is an engineer’s, a thicker one carries', () => {
      const thin = judge({ member: { nominal: '2x6', specific_gravity: 0.42 } }, LARGE);
      expect(thin.verdict).toBe('engineer');
      expect(thin.why).toMatch(/load of the setting blocks .* thicker or laminated sill piece/);
      expect(thin.utilisation.gravity).toBeCloseTo(860 / 645.469, 3);
      const thick = judge(laminated, LARGE);
      expect(thick.verdict).toBe('fits');
      expect(thick.utilisation.gravity).toBeCloseTo(860 / 930.23, 3);
    });
    // The same strip as deep as the window stands out, 3 in.: 645.469 x 3/2.25 = 860.63 lb·in., or 430.3 lb of window.
    it('does not fit once all of the sill outside the framing could not bring its blocks to the jambs', () => {
      const at = (weight_lb: number) =>
        judge(
          { member: { nominal: '2x6', specific_gravity: 0.42 } },
          { ...LARGE, weight_lb },
          { projection_in: 3 },
        );
      expect(at(430).verdict).toBe('engineer');
      expect(at(431).verdict).toBe('does-not-fit');
      expect(at(431).why).toMatch(/even if all 3 in\. of it bend together/);
    });
    it('brings its blocks onto the rough sill where its frame reaches back over it', () => {
      const near = judge({ member: { nominal: '2x6', specific_gravity: 0.42 } }, LARGE, {
        projection_in: 2.25,
      });
      expect(near.verdict).toBe('fits');
    });
    it('asks nothing of the sill strip of a smaller unit, which hangs on its flange or jambs, nor of a door', () => {
      expect(judge({}, { weight_lb: 149, width_in: 36, height_in: 60 }).verdict).toBe('fits');
      const door = judge(
        { member: { nominal: '2x6', specific_gravity: 0.42 } },
        { ...LARGE, operation: 'door' },
      );
      expect(door.verdict).toBe('engineer');
      expect(door.why).toMatch(/walked on/);
      expect(door.utilisation.gravity).toBeLessThan(860 / 645.469);
    });
  });

  describe('flange over insulation', () => {
    const screwed: Partial<BuckOption> = {
      ...bare,
      screw: { diameter_in: 0.19, root_diameter_in: 0.152, length_in: 3.5, bending_yield_psi: 80_000 },
      screw_spacing_in: 12,
    };
    it('counts the screws through 1-1/2 in. of board under a small flanged window', () => {
      const answer = judge(screwed, {}, { projection_in: 1.5 });
      expect(answer).toMatchObject({ verdict: 'fits', screws_per_side: 6 });
      expect(answer.min_screw_length_in).toBeCloseTo(1.5 + 0.4375 + 1.5, 9);
      expect(answer.utilisation.bearing).toBeNull();
      expect(answer.utilisation.gravity).toBeGreaterThan(0.4);
      expect(answer.why).toContain('Window associations ask for a support element');
    });
    it('does not pass one whose screws are not known, nor one that they do not hold', () => {
      expect(judge(bare, {}, { projection_in: 1.5 })).toMatchObject({
        verdict: 'engineer',
        screws_per_side: null,
      });
      const sparse = judge({ ...screwed, screw_spacing_in: 48 }, { weight_lb: 149 }, { projection_in: 1.5 });
      expect(sparse.verdict).toBe('does-not-fit');
      expect(sparse.why).toMatch(/give the window a buck/);
      expect(
        judge(
          {
            ...screwed,
            screw: { diameter_in: 0.19, root_diameter_in: 0.152, bending_yield_psi: 80_000, length_in: 3 },
          },
          {},
          { projection_in: 1.5 },
        ).why,
      ).toMatch(/too short: use at least 3.44/);
    });
    it.each([
      ['further out', {}, { projection_in: 1.6 }, 'reaches 1-1/2 in.'],
      ['flangeless', { mounting: 'flangeless' as const }, { projection_in: 1 }, 'this window has none'],
      ['not known to be flanged', { mounting: null }, { projection_in: 1 }, 'not known'],
      ['large', { width_in: 48 }, { projection_in: 1 }, 'too large'],
      ['heavy', { weight_lb: 150 }, { projection_in: 1 }, 'too large'],
    ])('does not hold one that is %s', (_, w, c, why) => {
      const answer = judge(bare, w, c);
      expect(answer.verdict).toBe('does-not-fit');
      expect(answer.why).toContain(why);
    });
  });
});
