import { isOpen } from '../assembly/barrier-label.ts';
import type { Candidate } from '../assembly/candidates.ts';
import type { Buck, Cladding } from '../assembly/catalogue-schema.ts';
import {
  type FlashingSteps,
  loadFlashingSteps,
  type OpeningTraits,
  type When,
} from '../assembly/flashing-steps.ts';
import type { Brief, BriefWindow } from '../brief/brief.ts';

export type FlashingSequence = {
  /** Each a sentence or two, in the order of the work; what must be looked at is in it, after "HOLD:". */
  readonly steps: readonly string[];
  /** Inspection points alone. */
  readonly holds: readonly string[];
  /** The choice that lets the window be replaced later. */
  readonly replace_later: readonly string[];
  /** What must not touch what. */
  readonly compatibility: readonly string[];
};

/** The order in which one opening is flashed: the steps whose conditions its traits meet. */
export function flashingSequence(
  traits: OpeningTraits,
  catalogue: FlashingSteps = loadFlashingSteps(),
): FlashingSequence {
  const holds = (entry: { readonly when: When }) => applies(entry.when, traits);
  const steps = catalogue.steps.filter(holds);
  return {
    steps: steps.map(({ text, hold }) => (hold ? `${text} HOLD: ${hold}` : text)),
    holds: steps.flatMap(({ hold }) => (hold ? [hold] : [])),
    replace_later: catalogue.replace_later.filter(holds).map(({ text }) => text),
    compatibility: catalogue.compatibility.filter(holds).map(({ text }) => text),
  };
}

function applies(when: When, traits: OpeningTraits): boolean {
  return (
    (when.support?.includes(traits.support) ?? true) &&
    (when.window?.includes(traits.window) ?? true) &&
    (when.project?.includes(traits.project) ?? true) &&
    (when.barrier?.includes(traits.barrier) ?? true) &&
    (when.ground?.includes(traits.ground) ?? true) &&
    (when.foam?.includes(traits.foam) ?? true) &&
    (when.finish?.includes(traits.finish) ?? true) &&
    (when.furring?.includes(traits.furring) ?? true)
  );
}

/** What the flashing of one window depends on, with the buck that carries it. */
export function openingTraits(
  { barrier, build, cladding, seat, sheathing }: Candidate,
  buck: Buck,
  window: BriefWindow,
  project: Brief['project'],
): OpeningTraits {
  return {
    support: buck.support,
    window: window.operation === 'door' ? 'door' : window.mounting,
    project,
    barrier: barrier.kind,
    ground: isOpen(sheathing) ? 'open-studs' : 'sheathing',
    foam: isPolystyrene(build.insulation.id) ? 'polystyrene' : 'other',
    finish: isPlastered(cladding) ? 'plaster' : 'boards',
    furring:
      seat.place.at === 'furring-face'
        ? 'in-line-with-flange'
        : seat.behind_furring_in > 0
          ? 'outside-flange'
          : 'none',
  };
}

function isPolystyrene(id: Candidate['build']['insulation']['id']): boolean {
  return id === 'xps' || id === 'eps' || id === 'graphite-eps';
}

/** Finishes that end at a casing bead: plaster, thin veneer in mortar, insulated finish. */
export function isPlastered({ crew }: Cladding): boolean {
  return crew.needs_plasterer;
}
