import type { Candidate } from '../assembly/candidates.ts';
import type { InsulationBuild } from '../assembly/insulation-builds.ts';
import { capital } from '../base/first-letter.ts';
import { inches } from '../base/inches.ts';

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
  return capital(`${candidate.cladding.label} over ${buildTitle(candidate.build)}`);
}
