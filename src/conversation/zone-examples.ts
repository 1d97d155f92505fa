/**
 * What each climate zone is like, for somebody who does not know theirs, with a city everybody knows and its county.
 * The zones are those of the 2021 county table; the words are plain descriptions, not definitions.
 */
export const ZONE_EXAMPLES = [
  { zone: '1A', like: 'hot and humid all year', city: 'Miami', county: 'Miami-Dade', state: 'FL' },
  { zone: '2A', like: 'hot and humid', city: 'Houston', county: 'Harris', state: 'TX' },
  { zone: '2B', like: 'hot and dry', city: 'Phoenix', county: 'Maricopa', state: 'AZ' },
  { zone: '3A', like: 'warm and humid', city: 'Atlanta', county: 'Fulton', state: 'GA' },
  { zone: '3B', like: 'warm and dry', city: 'El Paso', county: 'El Paso', state: 'TX' },
  { zone: '3C', like: 'mild by the sea', city: 'San Francisco', county: 'San Francisco', state: 'CA' },
  { zone: '4A', like: 'mixed and humid', city: 'Baltimore', county: 'Baltimore', state: 'MD' },
  { zone: '4B', like: 'mixed and dry', city: 'Albuquerque', county: 'Bernalillo', state: 'NM' },
  { zone: '4C', like: 'marine', city: 'Seattle', county: 'King', state: 'WA' },
  { zone: '5A', like: 'cool and moist', city: 'Chicago', county: 'Cook', state: 'IL' },
  { zone: '5B', like: 'cool and dry', city: 'Denver', county: 'Denver', state: 'CO' },
  { zone: '6A', like: 'cold and moist', city: 'Minneapolis', county: 'Hennepin', state: 'MN' },
  { zone: '6B', like: 'cold and dry', city: 'Helena', county: 'Lewis and Clark', state: 'MT' },
  { zone: '7', like: 'very cold', city: 'Duluth', county: 'St. Louis', state: 'MN' },
  { zone: '8', like: 'subarctic', city: 'Fairbanks', county: 'Fairbanks North Star', state: 'AK' },
] as const;
