import { type Provenance, provenanceText } from '../base/provenance.ts';
import { type EnergyCompliance, optionsInWords } from '../calculators/energy-code.ts';
import type { ReportPack } from './firm-schema.ts';

/** What stands on top of every report, as on every record. */
export const REPORT_NOTICE =
  'A proposal worked out by a program, not a design. Local code, the building official and the licensed professional decide. Prices are rough ranges from memory.';

/** "20 packs as shipped; of the firm's own: house-lantern 1.2.0" */
export function packsText(packs: readonly ReportPack[]): string {
  const own = packs.filter(({ house }) => house).map(({ name, version }) => `${name} ${version}`);
  return `${packs.length - own.length} packs as shipped; of the firm’s own: ${own.length > 0 ? own.join(', ') : 'none'}`;
}

/** A figure of the code with how sure it is: "0.045 (from memory, not verified)". */
export function surely(figure: string, provenance: Provenance | null | undefined): string {
  return provenance ? `${figure} (${provenanceText(provenance)})` : figure;
}

/** The R-value options in words, those that are as sure told together: "R-30 (two sources agree) or R-20 + R-5 continuous (from memory, not verified)". */
export function optionsSurely({ requirement: { options, provenance } }: EnergyCompliance): string {
  const kinds = [...new Set(options.map((_, at) => provenance.options[at]))];
  const told = kinds.map((kind) =>
    surely(optionsInWords(options.filter((_, at) => provenance.options[at] === kind)), kind),
  );
  return told.length > 0 ? told.join(' or ') : 'none';
}
