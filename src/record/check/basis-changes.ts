import type { Advice } from '../../advice/advice-schema.ts';
import type { Basis } from '../record-schema.ts';

export type PackChange = {
  readonly name: string;
  readonly change: 'changed' | 'gone' | 'new';
  readonly version_then: string | null;
  readonly version_now: string | null;
};

export type PieceChange = { readonly name: string; readonly change: 'changed' | 'gone' | 'new' };

/** What stands otherwise today than when a record was written. */
export type BasisChanges = {
  /** Null where the version is the same. */
  readonly tool_version: { readonly then: string; readonly now: string } | null;
  /** The program's source changed; null when the record doesn't say what it was. */
  readonly program: boolean | null;
  readonly packs: readonly PackChange[];
  /** Null when the record only knows whole packs. */
  readonly rules: readonly PieceChange[] | null;
  readonly tables: readonly PieceChange[] | null;
  readonly catalogue: readonly PieceChange[] | null;
  readonly prices: readonly PieceChange[] | null;
};

type Side = { readonly advice: Pick<Advice, 'rules' | 'tool_version'>; readonly basis: Basis | undefined };

/** Compares what a record rests on with what an answer rests on today. */
export function basisChanges(then: Side, now: Side): BasisChanges {
  const [before, after] = [then.basis, now.basis];
  const pieces = (key: 'rules' | 'tables' | 'catalogue' | 'prices') =>
    before && after ? pieceChanges(before[key], after[key]) : null;
  const [was, is] = [then.advice.tool_version, now.advice.tool_version];
  return {
    tool_version: was === is ? null : { then: was, now: is },
    program: before && after ? before.program !== after.program : null,
    packs: packChanges(then.advice.rules.packs, now.advice.rules.packs),
    rules: pieces('rules'),
    tables: pieces('tables'),
    catalogue: pieces('catalogue'),
    prices: pieces('prices'),
  };
}

/** Whether everything that a record names is the same today. False too where it doesn't name enough to tell. */
export function isSameBasis(changes: BasisChanges): boolean {
  const { tool_version, program, packs, rules, tables, catalogue, prices } = changes;
  return (
    tool_version === null &&
    program === false &&
    [packs, rules, tables, catalogue, prices].every((list) => list !== null && list.length === 0)
  );
}

function packChanges(then: Advice['rules']['packs'], now: Advice['rules']['packs']): PackChange[] {
  const [before, after] = [byName(then), byName(now)];
  return names(before, after).flatMap((name): PackChange[] => {
    const [was, is] = [before.get(name), after.get(name)];
    if (was?.sha256 === is?.sha256) return [];
    const change = !was ? 'new' : !is ? 'gone' : 'changed';
    return [{ name, change, version_then: was?.version ?? null, version_now: is?.version ?? null }];
  });
}

function byName(packs: Advice['rules']['packs']): Map<string, Advice['rules']['packs'][number]> {
  return new Map(packs.map((pack) => [pack.name, pack]));
}

function pieceChanges(
  then: Readonly<Record<string, string>>,
  now: Readonly<Record<string, string>>,
): PieceChange[] {
  const [before, after] = [new Map(Object.entries(then)), new Map(Object.entries(now))];
  return names(before, after).flatMap((name): PieceChange[] => {
    const [was, is] = [before.get(name), after.get(name)];
    if (was === is) return [];
    return [{ name, change: was === undefined ? 'new' : is === undefined ? 'gone' : 'changed' }];
  });
}

function names(a: ReadonlyMap<string, unknown>, b: ReadonlyMap<string, unknown>): string[] {
  return [...new Set([...a.keys(), ...b.keys()])].sort();
}
