import fc from 'fast-check';
import type { CoverProblem } from '../../src/firm/set-cover.ts';

/** Small problems, dense and sparse, with empty, equal and dominated columns and rows that nothing covers. */
export const problems: fc.Arbitrary<CoverProblem> = fc
  .record({ rows: fc.integer({ min: 0, max: 12 }), columns: fc.integer({ min: 0, max: 11 }) })
  .chain(({ rows, columns }) =>
    fc.record({
      rows: fc.constant(rows),
      columns: fc.array(
        rows === 0
          ? fc.constant<number[]>([])
          : fc.uniqueArray(fc.integer({ min: 0, max: rows - 1 }), { maxLength: 6 }),
        { minLength: columns, maxLength: columns },
      ),
    }),
  );
