import { inRange, Refusal } from '../../base/refusal.ts';

/** A wall with one framed layer; all resistances in h·ft²·°F/Btu (any one unit will do if kept throughout). */
export type FramedWall = {
  /** Everything in series with the framed layer: both films and all continuous layers. */
  readonly series_r: number;
  /** Insulation between the studs; 0.91 for an empty closed cavity. */
  readonly cavity_r: number;
  readonly framing_r: number;
  /** Share of the wall area that is framing, 0 to 1: studs, plates and headers. */
  readonly framing_fraction: number;
};

/**
 * U-factor of a framed wall by parallel heat-flow paths, Btu/(h·ft²·°F).
 *
 * @throws Refusal for a resistance below zero, a path without resistance, or a fraction outside 0 to 1
 *
 * Source: ASHRAE Handbook Fundamentals, parallel-path method; ASHRAE 90.1 Appendix A for wood framing.
 * Valid for: wood framing. Known limit: takes no account of heat flowing sideways, so that with highly
 * conducting framing or facings the real U-factor is higher; it is the most favourable of the methods.
 */
export function parallelPathU(wall: FramedWall): number {
  checkWall(wall);
  return (
    (1 - wall.framing_fraction) / positive(wall.series_r + wall.cavity_r, 'cavity_r') +
    wall.framing_fraction / positive(wall.series_r + wall.framing_r, 'framing_r')
  );
}

/**
 * U-factor of a framed wall by isothermal planes: the framed layer is averaged by area first, then added in series.
 * Btu/(h·ft²·°F).
 *
 * @throws Refusal as for parallel paths, and for a framed layer with no resistance in one of its parts
 *
 * Source: ASHRAE Handbook Fundamentals, isothermal-planes method (also the lower resistance limit of ISO 6946).
 * Valid for: non-metal framing. Known limit: lets heat flow sideways freely; the least favourable of the methods.
 */
export function isothermalPlanesU(wall: FramedWall): number {
  checkWall(wall);
  return 1 / (wall.series_r + framedLayerR(wall));
}

/** Resistance of the framed layer alone, its parts combined by area. Both parts need a resistance above zero. */
export function framedLayerR(wall: Omit<FramedWall, 'series_r'>): number {
  const cavity_r = positive(wall.cavity_r, 'cavity_r');
  const framing_r = positive(wall.framing_r, 'framing_r');
  return 1 / ((1 - wall.framing_fraction) / cavity_r + wall.framing_fraction / framing_r);
}

/** Refuses resistances below zero and framing fractions outside 0 to 1. */
export function checkWall(wall: FramedWall): void {
  inRange(wall.series_r, 'series_r', 0, 1000, 'h·ft²·°F/Btu');
  inRange(wall.cavity_r, 'cavity_r', 0, 1000, 'h·ft²·°F/Btu');
  inRange(wall.framing_r, 'framing_r', 0, 1000, 'h·ft²·°F/Btu');
  inRange(wall.framing_fraction, 'framing_fraction', 0, 1, 'a share of the wall area');
}

function positive(value: number, field: string): number {
  if (value > 0) return value;
  throw new Refusal({
    field,
    value: String(value),
    accepted: 'Give a resistance above 0 here, for example 0.91 for an empty closed cavity.',
  });
}
