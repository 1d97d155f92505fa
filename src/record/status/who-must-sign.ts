import type { Advice } from '../../advice/advice-schema.ts';
import { decidedWall } from '../decided-wall.ts';
import type { SIGNERS } from '../record-schema.ts';

export type Signer = (typeof SIGNERS)[number];

/** One line of the sign-off: whether a record counts as accepted without it, and why. */
export type SigningDuty = { readonly role: Signer; readonly must: boolean; readonly why: string };

/**
 * Who must sign a decision. Owner and builder always; a licensed designer wherever the answer left something to one:
 * no table for the fastening, an engineer for a buck, a caution that only a professional can settle.
 *
 * Common practice, no source; local law and the building department may ask for more.
 */
export function whoMustSign(advice: Advice): readonly SigningDuty[] {
  const open = leftToDesigner(advice);
  return [
    { role: 'owner', must: true, why: 'pays for it and lives with it' },
    { role: 'builder', must: true, why: 'builds it as it stands here' },
    open.length > 0
      ? {
          role: 'designer',
          must: true,
          why: `licensed, for what this answer leaves open: ${open.join('; ')}`,
        }
      : {
          role: 'designer',
          must: false,
          why: 'where the building department, the law or the owner asks for a licensed designer',
        },
  ];
}

function leftToDesigner(advice: Advice): string[] {
  const wall = decidedWall(advice);
  if (!wall) return [];
  const windows = wall.openings.filter(({ verdict }) => verdict !== 'fits').map(({ window }) => window);
  return [
    wall.fastening_schedule.verdict === 'design-required' || wall.fastening.table_verdict !== 'permitted'
      ? 'the fastening of the cladding'
      : null,
    wall.buck.verdict === 'engineer' || windows.length > 0
      ? `what carries the windows${windows.length > 0 ? ` (${windows.join(', ')})` : ''}`
      : null,
    wall.cautions.some(({ kind }) => kind === 'professional')
      ? 'what the cautions leave to a professional'
      : null,
  ].filter((what) => what !== null);
}
