import { describe, expect, it } from 'vitest';
import { loadRulebook } from '../../src/rulebook/load-rulebook.ts';
import { findRulesDir } from '../../src/rulebook/rules-dir.ts';

/*
 * Figures of practice that stand in words, held against where they were published. A rule that loses or changes one of them
 * no longer says what its citation says.
 */

const rulebook = await loadRulebook(findRulesDir());

function said(id: string): string {
  const rule = rulebook.find(id)?.rule;
  if (!rule) throw new Error(`no rule ${id}`);
  return `${rule.reason} ${rule.remedy}`;
}

describe('figures of plaster, lath and panel practice', () => {
  it.each([
    [
      'stucco-practice.coats',
      ['3/8 in. scratch', '3/8 in. brown', '1/8 in. finish', '7/8 in.'],
      'IBC 2021 Table 1404.2; ASTM C926 as quoted',
    ],
    [
      'stucco-practice.curing',
      ['48 hours before brown', '7 days', '48 hours of them moist'],
      'ASTM C926 as quoted on two trade pages',
    ],
    [
      'stucco-practice.one-coat-is-not-three-coat',
      ['3/8 to 1/2 in.', '7/8 in.'],
      'an inspectors’ training page and a contractor’s page',
    ],
    ['stucco-practice.not-below-40-degrees', ['40 °F'], 'trade pages on cold-weather plastering'],
    [
      'stucco-practice.control-joints',
      ['144 ft²', '18 ft', '2-1/2 times'],
      'ASTM C1063 as quoted; a municipal checklist',
    ],
    [
      'stucco-practice.lath-laps',
      ['1/2 in.', '1 in. and 2 in.', 'every 9 in.'],
      'ASTM C1063 from memory; ties from two sources',
    ],
    [
      'stucco-practice.furring-under-lath',
      ['1x2 wood', '3/4 in. metal'],
      'a city amendment citing ASTM C1063-18b',
    ],
    ['stucco-practice.lath-fasteners', ['7 in.'], 'ASTM C1063-18b as adopted by a city'],
    ['stucco-practice.lath-fasteners-2018', ['6 in.'], 'IRC 2018 R703.7.1'],
    ['stucco-practice.beads-and-joints', ['3/8 in. joint'], 'a municipal stucco checklist'],
    [
      'ground-and-termite.weep-screed',
      ['26 gauge', '3-1/2 in. flange', '4 in. above earth', '2 in. above paving'],
      'IRC R703.7.2.1; a municipal checklist',
    ],
    [
      'ground-and-termite.clear-of-the-ground',
      ['6 in.', '4 in. over earth', '2 in. over paving'],
      'IRC 2018 R703.9 and R317.1; veneer and fibre cement from memory',
    ],
    [
      'rain.barrier-laps',
      ['2 in. at horizontal laps', '6 in. at vertical joints'],
      'IRC R703.2 in a municipal checklist',
    ],
    ['rain.stucco-drainage-space', ['3/16 in.', '90 %'], 'IRC 2021 R703.7.3.2, IBC 2021 2510.6.2'],
    ['fire.foam-label', ['75 or less', '450 or less', '4 in.'], 'IBC 2603.3 and 2603.5.4'],
    ['fire.thermal-barrier', ['1/2 in. of gypsum'], 'IRC R316.4, IBC 2603.4'],
    [
      'fire.close-to-the-lot-line',
      ['Under 5 ft', '3 ft in a sprinklered house', 'one hour from both sides'],
      'IRC Tables R302.1(1) and (2)',
    ],
    ['fire.windows-too-close', ['From 3 to 5 ft a quarter'], 'IRC Table R302.1(1)'],
    [
      'openings.wind-borne-debris',
      ['from 140 mph on', 'from 130 mph on within a mile'],
      'wind-borne debris region of IBC chapter 2, told on two public pages',
    ],
    ['buildability.fibre-cement-panel-joints', ['over framing', '1/8 in.'], 'IRC 2018 R703.10.1'],
    ['buildability.fibre-cement-lap-width', ['12 in. wide', '1-1/4 in.'], 'IRC R703.10.2 from memory'],
  ])('%s says %j (%s)', (id, figures) => {
    const text = said(id);
    for (const figure of figures) expect(text).toContain(figure);
  });

  it('what is from memory says so where the rule is cited', async () => {
    const { listRules } = await import('../../src/rulebook/list-rules.ts');
    for (const { provenance, citation } of listRules(rulebook)) {
      if (provenance === 'memory') expect(citation).toMatch(/from memory|recalled/);
      if (provenance === 'common-practice') expect(citation.toLowerCase()).toContain('no source');
    }
  });
});

describe('named limits that the codes print', () => {
  it.each([
    ['foam-thickness', 4, 'IBC 2603.4.1.4 and 2603.5.4'],
    ['tall-wall', 40, 'IBC 1405.1.1, 1402.5'],
    ['rated-wall-distance', 5, 'IRC Table R302.1(1)'],
    ['opening-distance', 3, 'IRC Table R302.1(1)'],
    ['drainage-gap', 3 / 16, 'IRC 2021 R703.7.3.2, IBC 2021 2510.6.2'],
    ['stud-gravity', 0.42, 'notes of IBC Table 2603.13.2'],
    ['foam-strength', 15, 'notes of IBC Table 2603.13.2'],
    ['stud-spacing', 24, 'IBC Table 2603.13.2, ASTM C1063'],
    ['lath-fastener-spacing-2018', 6, 'IRC 2018 R703.7.1'],
    ['lath-fastener-spacing', 7, 'ASTM C1063-18b'],
    ['plaster-panel-area', 144, 'ASTM C1063 as quoted'],
    ['class-i-permeance', 0.1, 'IRC R702.7: Class I is 0.1 perm or less'],
    ['fall-height', 6, 'OSHA 1926.501, from memory'],
  ])('%s is %f (%s)', (id, value) => {
    expect(rulebook.limits.find(id)?.value).toBe(value);
  });
});
