export type Position = { readonly lat_deg: number; readonly lon_deg: number };

const EARTH_RADIUS_MI = 3958.76;

/** Great-circle distance in miles, haversine on a sphere of mean radius 3,958.76 mi; about 0.5 % off at worst. */
export function distanceMiles(a: Position, b: Position): number {
  const lat1 = radians(a.lat_deg);
  const lat2 = radians(b.lat_deg);
  const half =
    Math.sin((lat2 - lat1) / 2) ** 2 +
    Math.cos(lat1) * Math.cos(lat2) * Math.sin(radians(b.lon_deg - a.lon_deg) / 2) ** 2;
  return 2 * EARTH_RADIUS_MI * Math.asin(Math.min(1, Math.sqrt(half)));
}

function radians(degrees: number): number {
  return (degrees * Math.PI) / 180;
}
