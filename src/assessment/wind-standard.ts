import type { CodeEdition } from '../base/code-editions.ts';
import type { WindStandard } from '../calculators/wind.ts';

type Reference = { readonly standard: WindStandard; readonly how_sure: string };

/**
 * The edition of the wind standard that each edition of the codes refers to. A new edition gets an entry of its own:
 * which standard it refers to has to be looked up, and is never the one before by default.
 */
const REFERENCES: Readonly<Record<CodeEdition, Reference>> = {
  '2018': { standard: 'ASCE 7-16', how_sure: 'from memory' },
  '2021': { standard: 'ASCE 7-16', how_sure: 'from memory' },
  '2024': { standard: 'ASCE 7-22', how_sure: 'from memory' },
};

/** The wind standard that a code edition refers to. */
export function windStandardOf(edition: CodeEdition): WindStandard {
  return REFERENCES[edition].standard;
}

/** "The 2021 codes refer to ASCE 7-16 (from memory)." */
export function whyThisWindStandard(edition: CodeEdition): string {
  const { standard, how_sure } = REFERENCES[edition];
  return `The ${edition} codes refer to ${standard} (${how_sure}).`;
}
