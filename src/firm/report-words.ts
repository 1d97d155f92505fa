import { type Provenance, provenanceText } from '../base/provenance.ts';
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
