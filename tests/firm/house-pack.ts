import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** A file with one invented house rule: it forbids every wall with this value of a fact. */
export function housePack(fact: string, value: string | number | boolean): string {
  const path = join(mkdtempSync(join(tmpdir(), 'cladwright-house-')), 'house.rules.json');
  const other = typeof value === 'boolean' ? !value : typeof value === 'number' ? value + 1 : `${value}-not`;
  const pack = {
    schema: 'cladwright-rules/1',
    pack: 'house-of-a-test',
    version: '1.0.0',
    concern: 'buildability',
    rules: [
      {
        id: 'house.none-of-it',
        title: 'The firm builds none of it',
        editions: ['2018', '2021', '2024'],
        conditions: { all: [{ fact, operator: 'equal', value }] },
        verdict: 'forbid',
        reason: 'The firm of this test builds none of it.',
        remedy: 'Another wall.',
        citation: { text: 'invented for a test', provenance: 'proposal' },
        examples: {
          fires: [{ name: 'such a wall', facts: { [fact]: value } }],
          silent: [{ name: 'another', facts: { [fact]: other } }],
        },
      },
    ],
  };
  writeFileSync(path, JSON.stringify(pack));
  return path;
}
