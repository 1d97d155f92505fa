import { describe, expect, it } from 'vitest';
import { explainRule } from '../../src/rulebook/explain-rule.ts';
import { listRules } from '../../src/rulebook/list-rules.ts';
import { rawRule, refusalOf, rulebookOf } from './invented-rules.ts';

describe('listing rules', () => {
  it('gives a row for each, sorted by id, with a citation that says what it is worth', async () => {
    const rulebook = await rulebookOf([
      rawRule({
        id: 'z.last',
        editions: ['2021'],
        citation: { text: 'Code X, section 1', provenance: 'memory' },
      }),
      rawRule({ id: 'a.first', verdict: 'prefer' }),
    ]);
    expect(listRules(rulebook)).toEqual([
      {
        id: 'a.first',
        title: 'Weight the screws can carry',
        concern: 'structure',
        pack: 'test-pack',
        house: false,
        verdict: 'prefer',
        editions: ['2018', '2021', '2024'],
        citation: 'invented for a test',
        provenance: 'proposal',
      },
      expect.objectContaining({
        id: 'z.last',
        editions: ['2021'],
        citation: 'Code X, section 1 (from memory, not verified)',
        provenance: 'memory',
      }),
    ]);
  });
});

describe('explaining a rule', () => {
  it('tells conditions in words, with every digit of a limit', async () => {
    const rulebook = await rulebookOf([
      rawRule({
        applies_when: {
          all: [
            { fact: 'wall.is_new', operator: 'equal', value: true },
            { fact: 'wall.is_vented', operator: 'equal', value: false },
            { fact: 'wall.retarder', operator: 'in', value: ['class-i', 'class-ii'] },
          ],
        },
        conditions: {
          any: [
            { fact: 'wall.u_factor', operator: 'greaterThan', value: 0.0605 },
            { fact: 'wall.weight_psf', operator: 'greaterThanInclusive', value: { fact: 'wall.limit_psf' } },
            { not: { all: [{ fact: 'wall.layers', operator: 'lessThanInclusive', value: 2 }] } },
          ],
        },
        examples: {
          fires: [
            {
              name: 'too heavy for its screws',
              facts: {
                'wall.is_new': true,
                'wall.is_vented': false,
                'wall.retarder': 'class-i',
                'wall.u_factor': 0.05,
                'wall.weight_psf': 11,
                'wall.limit_psf': 11,
                'wall.layers': 1,
              },
            },
          ],
          silent: [{ name: 'nothing known', facts: {} }],
        },
      }),
    ]);
    expect(explainRule(rulebook, 'weight.too-heavy').split('\n')).toEqual([
      'weight.too-heavy: Weight the screws can carry',
      'structure, pack test-pack, editions 2018, 2021, 2024',
      '',
      'Applies when',
      '  - all of these:',
      '    - the wall is new',
      '    - not: the cladding is vented',
      '    - the class of the vapour retarder is class I or class II',
      '',
      'Fires (forbid: the wall is ruled out) when',
      '  - at least one of these:',
      "    - the wall's U-factor is more than 0.0605 Btu/(h·ft²·°F)",
      '    - the weight of the cladding is at least the most the screws carry',
      '    - it is not so that',
      '      - the number of layers is at most 2',
      '',
      'Says',
      '  The cladding weighs [the weight of the cladding], more than 10 psf.',
      'What to do',
      '  Choose a lighter cladding.',
      '',
      'Source',
      '  invented for a test',
      '  a proposal of this program, in no published document',
      '',
      'Examples',
      '  - fires: too heavy for its screws (wall.is_new yes, wall.is_vented no, wall.retarder class I, wall.u_factor 0.050 Btu/(h·ft²·°F), wall.weight_psf 11.0 psf, wall.limit_psf 11.0 psf, wall.layers 1)',
      '  - does not fire: nothing known ()',
    ]);
  });

  it('refuses an unknown id with the nearest ones', async () => {
    const rulebook = await rulebookOf([rawRule(), rawRule({ id: 'fire.foam-height' })]);
    const explain = async (id: string) => explainRule(rulebook, id);
    expect(await refusalOf(explain('weight.to-heavy'))).toContain('Did you mean "weight.too-heavy"?');
    expect(await refusalOf(explain('foam'))).toContain('"fire.foam-height"');
    expect(await refusalOf(explain('zzzzzz'))).not.toContain('Did you mean');
    expect(await refusalOf(explain('constructor'))).toContain('rule id: "constructor"');
  });
});
