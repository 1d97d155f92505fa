import type { Finding } from '../answers.ts';
import { DRESSED_DEPTH_IN, STEEL_DEPTHS_IN } from './read-framing.ts';
import type { Gathering } from './reading.ts';

const MM_PER_IN = 25.4;
/** A depth told in whole centimetres is known no closer than this. */
const DEPTH_TOLERANCE_MM = 5;
/** Metric layouts (400 and 600 mm) lie closer than this to the spacings in inches (406 and 610 mm). */
const SPACING_TOLERANCE_MM = 10;
const SPACINGS_IN: readonly number[] = [16, 19.2, 24];
const WOOD_DEPTHS_IN: readonly number[] = [...new Set(DRESSED_DEPTH_IN.values())];

const METRIC = /(?:\d ?|\b)(mm|millimet(?:er|re)s?|cm|centimet(?:er|re)s?|m|met(?:er|re)s?)\b/;

type Scale = {
  readonly sizes_in: readonly number[];
  readonly tolerance_mm: number;
  readonly what: string;
};

/**
 * Sizes of studs told in metric units become the standard size that they stand for: studs are sold in few depths and
 * laid out at few spacings, and a figure in centimetres is rounded. What lies near none of them, or near two, is asked.
 */
export function settleMetricSizes(gathering: Gathering): void {
  for (const finding of [...gathering.findings]) {
    const scale = scaleFor(finding, gathering);
    const unit = METRIC.exec(finding.words)?.[1];
    if (!scale || unit === undefined || typeof finding.value !== 'number') continue;
    settle(gathering, finding, finding.value, scale, unit.startsWith('c'));
  }
}

function scaleFor({ field }: Finding, gathering: Gathering): Scale | null {
  if (field === 'framing.spacing_in') {
    return { sizes_in: SPACINGS_IN, tolerance_mm: SPACING_TOLERANCE_MM, what: 'spacing' };
  }
  if (field !== 'framing.depth_in') return null;
  const said = gathering.findings.find((finding) => finding.field === 'framing.material')?.value;
  const material = said ?? gathering.context.answers['framing.material'];
  const sizes_in = material === 'steel' ? STEEL_DEPTHS_IN : WOOD_DEPTHS_IN;
  return { sizes_in, tolerance_mm: DEPTH_TOLERANCE_MM, what: 'depth' };
}

function settle(
  gathering: Gathering,
  finding: Finding,
  said_in: number,
  { sizes_in, tolerance_mm, what }: Scale,
  isRounded: boolean,
): void {
  // Lumber named by its millimetres has been read as its size already.
  if (sizes_in.includes(said_in)) return;
  const away_mm = (size_in: number) => Math.abs(size_in - said_in) * MM_PER_IN;
  const near = sizes_in
    .filter((size_in) => away_mm(size_in) <= tolerance_mm)
    .sort((a, b) => away_mm(a) - away_mm(b));
  const [nearest] = near;
  const at = gathering.findings.indexOf(finding);
  const { field, words } = finding;
  if (nearest === undefined || (isRounded && near.length > 1)) {
    gathering.findings.splice(at, 1);
    const choices = (near.length > 1 ? near : sizes_in).join(', ');
    gathering.puzzle(
      words,
      `That is ${Number(said_in.toFixed(2))} in.; I take the standard ${what} within ${tolerance_mm} mm of what is said, and the sizes are ${choices} in. Give it in inches.`,
    );
    return;
  }
  gathering.findings[at] = { field, value: nearest, words };
  if (away_mm(nearest) >= 0.5) {
    gathering.notes.push(
      `I take "${words}" as ${nearest} in., the nearest standard ${what} (within ${tolerance_mm} mm).`,
    );
  }
}
