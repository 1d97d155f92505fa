import { describe, expect, it } from 'vitest';
import { type RevisionFacts, Revisions } from '../../src/record/revisions.ts';

const link = (name: string) => ({ file: `${name}.json`, digest: name });

function made(digest: string, revision: number, more: Partial<RevisionFacts> = {}): RevisionFacts {
  const created = `2026-03-${String(revision).padStart(2, '0')}T08:00:00.000Z`;
  return { digest, revision, created, status: 'accepted', ...more };
}

/** The digest of the last revision for each record, and of what took its place. */
function lasts(...records: RevisionFacts[]) {
  const revisions = new Revisions(records);
  return records.map((record) => {
    const { last, superseder } = revisions.lastOf(record);
    return superseder && 'known' in superseder ? `${last.digest} > ${superseder.known.digest}` : last.digest;
  });
}

describe('Revisions', () => {
  it('follows a chain to its end, also where its beginning is gone', () => {
    const [b, c] = [made('b', 2, { continues: link('a') }), made('c', 3, { continues: link('b') })];
    expect(lasts(c, made('a', 1), b)).toEqual(['c', 'c', 'c']);
    expect(lasts(made('d', 4, { continues: link('a') }), b)).toEqual(['d', 'd']);
  });

  it('takes of two branches the one written last, whatever its number', () => {
    const late = '2026-05-01T08:00:00.000Z';
    const [a, b] = [made('a', 1), made('b', 2, { continues: link('a'), created: late })];
    expect(lasts(a, b, made('c', 3, { continues: link('a') }))).toEqual(['b', 'b', 'b']);
  });

  it('takes an earlier branch for over when the later one is superseded', () => {
    const over = made('c', 3, { continues: link('a'), status: 'superseded', superseded_by: link('y') });
    const y = made('y', 2, { supersedes: link('a') });
    expect(lasts(made('a', 1), made('b', 2, { continues: link('a') }), over, y)).toEqual([
      'c > y',
      'c > y',
      'c > y',
      'y',
    ]);
  });

  it('lets a branch stand that another branch of the same decision was superseded by', () => {
    const [a, b] = [made('a', 1), made('b', 2, { continues: link('a') })];
    const c = made('c', 3, { continues: link('b'), supersedes: link('a') });
    const d = made('d', 4, { continues: link('a'), status: 'superseded', superseded_by: link('c') });
    expect(lasts(a, b, c, d)).toEqual(['c', 'c', 'c', 'c']);
  });

  it('comes to an end where forged digests lead in a circle', () => {
    const a = made('a', 1, { continues: link('b') });
    const b = made('b', 2, { continues: link('a') });
    expect(lasts(a, b)).toHaveLength(2);
    const x = made('x', 1, { status: 'superseded', superseded_by: link('y') });
    const y = made('y', 1, { status: 'superseded', superseded_by: link('x') });
    expect(new Revisions([x, y]).standingFor(x)).toHaveProperty('known');
  });
});
