import { inRange } from '../../base/refusal.ts';

/** A lined reveal that ends at a window frame set out past the framing. Resistances in h·ft²·°F/Btu. */
export type BuckCorner = {
  /** Of the buck across the reveal, 0.5 to 2 in. */
  readonly buck_thickness_in: number;
  /** Wood from the inner edge of the window frame to the outside: the frame covers it, so no room air warms it. */
  readonly covered_in: number;
  /** Depth of the reveal from the window frame to the room. */
  readonly reveal_in: number;
  /** Of the buck's wood across its grain, per inch. */
  readonly wood_r_per_in: number;
  /** Of the lining on the reveal. */
  readonly lining_r: number;
  /** From the outer edge of the wood to outdoor air: the film, and insulation where some lies before it. */
  readonly outside_r: number;
  /** Inside surface film; for mould the larger one of a corner. */
  readonly inside_film_r: number;
};

/**
 * Temperature factor of the reveal where it meets the window frame: the coldest inside corner of a buck. 1 is as warm
 * as the room, 0 as cold as outdoors.
 *
 * The buck is taken as a fin: it draws heat from the room along the reveal (through film, lining and half its own
 * thickness) and gives it off through the covered length to the outside. What flows between the buck and the
 * insulation or the studs behind it is left out. With k the wood's conductivity, t its thickness, U the transmittance
 * from the room into it, m² = U/(k t): the fin takes B = k m tanh(m · reveal), the way out is A = 1/(covered/k +
 * outside), both per area of the buck's section; the wood at the frame is at B/(A + B), the surface at
 * 1 − (1 − B/(A + B)) · film · U.
 *
 * An estimate, on the cautious side: against two-dimensional solutions of the same idealised section it came out from
 * 0.05 below to 0.01 above (buck 3/4 and 1-1/2 in., insulation 1-1/2 to 7 in., studs 3-1/2 and 5-1/2 in.). The window
 * frame and the edge of the glass, colder still, are not in it. A two-dimensional calculation (ISO 10211) of the real
 * detail decides.
 *
 * @throws Refusal outside buck thickness 0.5 to 2 in., covered length 0 to 12 in., reveal 0 to 24 in.
 *
 * Source: straight fin with an insulated tip, heat-transfer textbooks; temperature factor of ISO 13788:2012, clause 5.
 */
export function cornerTemperatureFactor(corner: BuckCorner): number {
  const thickness = inRange(
    corner.buck_thickness_in,
    'buck_thickness_in',
    0.5,
    2,
    'a buck thickness in inches',
  );
  const covered = inRange(corner.covered_in, 'covered_in', 0, 12, 'a covered length in inches');
  const reveal = inRange(corner.reveal_in, 'reveal_in', 0, 24, 'a reveal in inches');
  const perInch = inRange(corner.wood_r_per_in, 'wood_r_per_in', 0.5, 2, 'an R-value per inch');
  const lining = inRange(corner.lining_r, 'lining_r', 0, 20, 'an R-value');
  const outside = inRange(corner.outside_r, 'outside_r', 0.05, 60, 'an R-value');
  const film = inRange(corner.inside_film_r, 'inside_film_r', 0.1, 5, 'an R-value');
  const k = 1 / perInch;
  const intoWood = 1 / (film + lining + (thickness / 2) * perInch);
  const m = Math.sqrt(intoWood / (k * thickness));
  const fromRoom = k * m * Math.tanh(m * reveal);
  const toOutside = 1 / (covered * perInch + outside);
  const wood = fromRoom / (toOutside + fromRoom);
  return 1 - (1 - wood) * film * intoWood;
}
