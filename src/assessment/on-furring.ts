import type { Cladding } from '../assembly/catalogue-schema.ts';
import { furringDepth_in } from '../assembly/flange-seat.ts';
import { LOAD_DURATION } from '../calculators/connections/adjustment-factors.ts';
import { combinedNailUse, combinedScrewUse } from '../calculators/connections/combined.ts';
import { lateralReference } from '../calculators/connections/lateral.ts';
import { minimumPenetration_in } from '../calculators/connections/penetration.ts';
import { withdrawalReference_lb_per_in } from '../calculators/connections/withdrawal.ts';
import { fastenerData } from '../calculators/fastening/evaluate-fastening.ts';
import type { FastenerData } from '../calculators/fastening/fastening-tables.ts';
import type { AnswerContext } from './answer-context.ts';
import { remember } from './remember.ts';
import { fasteningPractice, type OnFurringWay } from './schedule/fastening-practice.ts';
import type { Shelf } from './shelf.ts';

/** Furring is bought as spruce-pine-fir unless somebody says better. */
const FURRING_GRAVITY = 0.42;

/** What one fastener into the strip carries of the wind in a zone. */
export type OnFurringZone = {
  readonly spacing_in: number;
  readonly wind_lb: number;
  /** By the wind alone; null where no method says what the strip holds. */
  readonly utilisation: number | null;
  /** By the wind and the weight of what hangs on the strips; null as above. */
  readonly combined: number | null;
};

/** What holds lath, panels or siding to the furring strips. */
export type OnFurring = {
  /** Null for a cladding that the practice figures don't know: its maker says. */
  readonly way: OnFurringWay | null;
  readonly fastener: FastenerData | null;
  /** Depth of the strip, in. */
  readonly furring_in: number;
  /** Of one fastener against being pulled out of the strip, lb. */
  readonly capacity_lb: number | null;
  readonly field: OnFurringZone | null;
  readonly corner: OnFurringZone | null;
  /** The worse of the two zones. */
  readonly wind_utilisation: number | null;
  /** The same with the weight that hangs on it. */
  readonly combined_utilisation: number | null;
  readonly holds: boolean;
};

type Asked = Pick<AnswerContext, 'brief' | 'tables' | 'outward_wind_psf' | 'field_wind_psf'>;

/**
 * The first way on the list that holds a cladding to its furring against the wind of both zones, else the least
 * overloaded: the customary nail from its widest spacing down, then the other fasteners. Corners are never wider than
 * the field. How deep the strips are is the cladding's; see {@link claddingsOnDeeperFurring}.
 *
 * Withdrawal from the strip, and the weight as shear at the same time. Withdrawal: threads or shank over its whole depth, load duration 1.6, wood of specific gravity
 * 0.42. A ring-shank nail counts as a smooth one, for the equation of ring shanks is for roof-sheathing and post-frame
 * nails only. Shear: no gap, and 3/8 in. of wood standing for what is fixed, as in the code's rule for cladding fastened
 * direct. How the head holds in the cladding has no published equation and is not in these figures.
 *
 * @returns null for a cladding that does not come on furring
 *
 * Source: NDS-2018 12.2.2 (wood screws) and 12.2.3 (nails); 12.3.1 and 12.4 (section numbers from memory) for both
 * together; least penetration 6 diameters.
 */
export function onFurring(cladding: Cladding, asked: Asked): OnFurring | null {
  if (cladding.attachment !== 'furring') return null;
  const furring_in = furringDepth_in(cladding);
  const practice = Object.values(fasteningPractice().on_furring).find((one) =>
    one.claddings.includes(cladding.id),
  );
  const ways = practice?.ways.map((way) => tried(way, furring_in, cladding, asked)) ?? [];
  return ways.find(({ holds }) => holds) ?? leastUsed(ways) ?? unknownWay(furring_in);
}

/** {@link onFurring}, worked out once for each cladding; what it reads of the context stands in the list here. */
export function onFurringWork(context: AnswerContext, shelf: Shelf) {
  const { brief, tables, outward_wind_psf, field_wind_psf, catalogue } = context;
  return shelf.hold(
    'on furring',
    [
      brief.framing.spacing_in,
      brief.code_edition,
      outward_wind_psf,
      field_wind_psf,
      tables.fastening,
      catalogue,
    ],
    () => remember((cladding: Cladding) => onFurring(cladding, context)),
  );
}

/** Ids of the claddings that no listed fastener holds to their usual furring in this wind: they are hung on deeper strips. */
export function claddingsOnDeeperFurring(context: AnswerContext): readonly string[] {
  const { catalogue } = context;
  return catalogue.claddings
    .filter(
      (usual) =>
        usual.deeper_furring !== undefined && (onFurring(usual, context)?.combined_utilisation ?? 0) > 1,
    )
    .map(({ id }) => id);
}

function tried(way: OnFurringWay, furring_in: number, cladding: Cladding, asked: Asked): OnFurring {
  const fastener = fastenerData(way.fastener, asked.tables.fastening);
  const capacity_lb = capacityOf(fastener, furring_in);
  const hold: Hold | null = capacity_lb === null ? null : { fastener, capacity_lb, furring_in, cladding };
  const widest_in = widestSpacing_in(cladding, asked);
  const spacings_in = way.spacings_in.filter((spacing_in) => spacing_in <= widest_in);
  const field = pickZone(asked.field_wind_psf, spacings_in, hold, asked);
  const corner = pickZone(
    asked.outward_wind_psf,
    spacings_in.filter((spacing_in) => spacing_in <= field.spacing_in),
    hold,
    asked,
  );
  const combined_utilisation = worse(field.combined, corner.combined);
  return {
    way,
    fastener,
    furring_in,
    capacity_lb,
    field,
    corner,
    wind_utilisation: worse(field.utilisation, corner.utilisation),
    combined_utilisation,
    holds: combined_utilisation !== null && combined_utilisation <= 1,
  };
}

function worse(a: number | null, b: number | null): number | null {
  return a === null || b === null ? null : Math.max(a, b);
}

/** A fastener in a strip that holds it, with what hangs on it. */
type Hold = {
  readonly fastener: FastenerData;
  readonly capacity_lb: number;
  readonly furring_in: number;
  readonly cladding: Cladding;
};

/** Weight as shear beside the wind as tension, both at the load duration of the wind. */
function withWeight(
  { fastener, capacity_lb, furring_in, cladding }: Hold,
  wind_lb: number,
  area_ft2: number,
  { tables }: Asked,
): number {
  const kind = fastener.kind === 'wood-screw' ? 'wood-screw' : 'nail';
  const lateral_lb =
    lateralReference({
      fastener: kind,
      diameter_in: fastener.diameter_in,
      root_diameter_in: fastener.bearing_diameter_in ?? fastener.diameter_in,
      bending_yield_psi: fastener.bending_yield_psi ?? 0,
      side: { length_in: tables.fastening.foam.rule.direct_side_in, specific_gravity: FURRING_GRAVITY },
      main: { length_in: furring_in, specific_gravity: FURRING_GRAVITY },
      gap_in: 0,
      // Weight runs along upright strips.
      load_to_grain: 'parallel',
    }).reference_lb * LOAD_DURATION.wind_or_seismic;
  const together = kind === 'nail' ? combinedNailUse : combinedScrewUse;
  return together(hung_psf(cladding) * area_ft2, wind_lb, lateral_lb, capacity_lb);
}

/** What hangs on the strips, psf: all but the strips themselves. */
function hung_psf({ layers }: Cladding): number {
  return layers.reduce((sum, { role, weight_psf }) => (role === 'furring' ? sum : sum + weight_psf.value), 0);
}

/** Null for a strip too thin for the fastener, and for kinds that have no value in wood. */
function capacityOf({ kind, diameter_in }: FastenerData, furring_in: number): number | null {
  if (kind !== 'smooth-nail' && kind !== 'wood-screw') return null;
  const least_in = minimumPenetration_in(kind === 'wood-screw' ? 'wood-screw' : 'nail', diameter_in);
  if (furring_in < least_in - 1e-9) return null;
  return (
    withdrawalReference_lb_per_in(kind, diameter_in, FURRING_GRAVITY) *
    furring_in *
    LOAD_DURATION.wind_or_seismic
  );
}

/** The code's widest for lath; otherwise what the list of ways says. */
function widestSpacing_in({ lath }: Cladding, { brief }: Asked): number {
  return lath === 'none'
    ? Number.POSITIVE_INFINITY
    : fasteningPractice().lath.max_spacing_in[brief.code_edition].value;
}

/** The widest spacing that holds in this zone, else the closest there is. */
function pickZone(
  wind_psf: number,
  spacings_in: readonly number[],
  hold: Hold | null,
  asked: Asked,
): OnFurringZone {
  const zones = [...spacings_in]
    .sort((a, b) => b - a)
    .map((spacing_in) => {
      const area_ft2 = (spacing_in * asked.brief.framing.spacing_in) / 144;
      const wind_lb = wind_psf * area_ft2;
      return {
        spacing_in,
        wind_lb,
        utilisation: hold && wind_lb / hold.capacity_lb,
        combined: hold && withWeight(hold, wind_lb, area_ft2, asked),
      };
    });
  const found = zones.find(({ combined }) => combined !== null && combined <= 1) ?? zones.at(-1);
  if (!found) throw new Error('no spacing is listed for what goes on furring');
  return found;
}

function leastUsed(ways: readonly OnFurring[]): OnFurring | undefined {
  const use = ({ combined_utilisation }: OnFurring) => combined_utilisation ?? Number.POSITIVE_INFINITY;
  return ways.reduce<OnFurring | undefined>(
    (best, one) => (!best || use(one) < use(best) ? one : best),
    undefined,
  );
}

function unknownWay(furring_in: number): OnFurring {
  return {
    way: null,
    fastener: null,
    furring_in,
    capacity_lb: null,
    field: null,
    corner: null,
    wind_utilisation: null,
    combined_utilisation: null,
    holds: false,
  };
}
