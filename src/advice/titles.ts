import type { Candidate } from '../assembly/candidates.ts';
import type { InsulationBuild } from '../assembly/insulation-builds.ts';

/** Inches as a builder writes them: 3, 2-1/2, 1-9/16 only where sixteenths fit, else decimals. */
export function inches(value_in: number): string {
  const sixteenths = Math.round(value_in * 16);
  if (Math.abs(sixteenths / 16 - value_in) > 1e-6) return `${Number(value_in.toFixed(2))}`;
  const whole = Math.floor(sixteenths / 16);
  let top = sixteenths % 16;
  if (top === 0) return `${whole}`;
  let bottom = 16;
  while (top % 2 === 0) {
    top /= 2;
    bottom /= 2;
  }
  return whole > 0 ? `${whole}-${top}/${bottom}` : `${top}/${bottom}`;
}

/** "3 in. mineral wool board (two layers of 1-1/2 in.)" */
export function buildTitle({ insulation, boards_in, thickness_in }: InsulationBuild): string {
  const words = ['no', 'one', 'two', 'three'];
  const layers =
    boards_in.length > 1
      ? ` (${words[boards_in.length] ?? boards_in.length} layers of ${inches(boards_in[0] ?? 0)} in.)`
      : '';
  return `${inches(thickness_in)} in. ${insulation.label}${layers}`;
}

/** "three-coat cement stucco on … over 3 in. mineral wool board (two layers of 1-1/2 in.)" */
export function wallTitle(candidate: Candidate): string {
  const title = `${candidate.cladding.label} over ${buildTitle(candidate.build)}`;
  return title.charAt(0).toUpperCase() + title.slice(1);
}
