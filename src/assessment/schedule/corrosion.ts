import type { Brief } from '../../brief/brief.ts';
import type { ScheduleStep } from './schedule-schema.ts';

type Corrosion = ScheduleStep['corrosion'];

/** What the metal touches or stands in. */
export type Surroundings = 'plaster' | 'treated-wood' | 'boards' | 'glue';

const CLASSES: Readonly<Record<Surroundings, Omit<Corrosion, 'coastal'>>> = {
  plaster: {
    class: 'corrosion-resistant: hot-dip galvanized or stainless',
    why: 'Head, washer and lath lie in cement plaster that gets wet (IRC R703.7 and ASTM C1063 ask for corrosion-resistant lath and fasteners, from memory). Lath, ties and screws of one metal.',
  },
  'treated-wood': {
    class: 'hot-dip galvanized, stainless steel, silicon bronze or copper',
    why: 'Furring and bucks may be preservative treated and stand in the drained space (IRC R317.3, wording of the 2006 and 2009 editions seen on two pages): treated wood eats plain steel and thin zinc.',
  },
  boards: {
    class: 'corrosion-resistant: galvanized or coated for outdoor use',
    why: 'Stays in the wall behind the cladding, where it can get damp (common practice, no source).',
  },
  glue: { class: 'no metal', why: 'Glued.' },
};

/** From here the residential code sends hurricane-prone regions to an engineered design (from memory). */
const HURRICANE_MPH = 130;

/**
 * Corrosion class of a line's metal. A coast isn't asked for: where exposure D or a hurricane wind speed points to
 * one, the line asks, and never decides by itself.
 */
export function corrosion(surroundings: Surroundings, brief: Brief): Corrosion {
  return { ...CLASSES[surroundings], coastal: surroundings === 'glue' ? null : coastalQuestion(brief) };
}

function coastalQuestion({ exposure, basic_wind_speed_mph }: Brief): string | null {
  const signs = [
    ...(exposure === 'D' ? ['exposure D'] : []),
    ...(basic_wind_speed_mph >= HURRICANE_MPH ? [`a design wind of ${basic_wind_speed_mph} mph`] : []),
  ];
  if (signs.length === 0) return null;
  return `Coastal: ask. Found: ${signs.join(' and ')}, which may mean a shore. Within reach of salt air take stainless steel for fastener, washer, lath and ties (federal flood-insurance guidance recommends stainless or hot-dip galvanized metal on the coast; seen in summary only).`;
}
