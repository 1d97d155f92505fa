import { inches } from '../../base/inches.ts';
import { checkBearing } from './bearing-check.ts';
import {
  type BuckContext,
  type BuckJudgement,
  type BuckOption,
  type BuckStrength,
  type BuckWindow,
  NO_UTILISATION,
} from './buck-types.ts';
import { type MemberAndScrew, percent } from './check-parts.ts';
import { checkFace, isFlatFrame } from './face-check.ts';
import { checkFlange } from './flange-check.ts';
import { isLarge, type RuleVerdict, tradeRule } from './trade-rules.ts';
import { type BuckTables, memberNamed } from './wood-table.ts';

/**
 * Whether one buck option carries one window, fast and without schema checks (the caller's data are checked).
 *
 * The trade's rules come first, then strength, then the sag estimate; where rules say no the uses are still given
 * when they can be worked out, and where they leave it to an engineer a use above 1 still says no.
 *
 * @throws Refusal for an unknown member or a screw or wood outside the connection formulas' ranges
 *
 * Source: statics of the free bodies (own derivation); NDS-2018 chapter 12 for screws, Supplement for the wood.
 */
export function judgeBuck(
  option: BuckOption,
  window: BuckWindow,
  context: BuckContext,
  tables: BuckTables,
): BuckJudgement {
  const { verdict, why, strength } = judgeBuckInFull(option, window, context, tables);
  return {
    verdict,
    utilisation: strength?.utilisation ?? NO_UTILISATION,
    screws_per_side: strength?.screws_per_side ?? null,
    min_screw_length_in: strength?.min_screw_length_in ?? null,
    why,
  };
}

/** As {@link judgeBuck}, with the strength check's own findings. */
export function judgeBuckInFull(
  option: BuckOption,
  window: BuckWindow,
  context: BuckContext,
  tables: BuckTables,
): RuleVerdict & { readonly strength: BuckStrength | null } {
  const rule = tradeRule(option, window, context, tables);
  const strength = strengthOf(option, window, context, tables);
  const [failure] = strength?.failures ?? [];
  if (rule && !(failure && isOverruled(rule, window, context))) return { ...rule, strength };
  if (!strength) return { ...withoutStrength(option), strength };
  if (failure) return { verdict: 'does-not-fit', why: strength.failures.join(' '), strength };
  const doubts = strength.doubts ?? [];
  if (doubts.length > 0) return { verdict: 'engineer', why: doubts.join(' '), strength };
  const limit = tables.wood.serviceability.sag_limit_in;
  if (strength.sag_in !== null && strength.sag_in > limit) {
    return {
      verdict: 'engineer',
      why: `The screws hold, but the window may sag by about ${strength.sag_in.toFixed(2)} in. in time, more than the ${limit} in. proposed at the glass: ask an engineer, or use more screws.`,
      strength,
    };
  }
  return { verdict: 'fits', why: fitsBecause(option, window, context, strength, tables), strength };
}

/** What the figures rule out is not left to an engineer, but for a threshold that is walked on: it gets its own support. */
function isOverruled({ verdict }: RuleVerdict, { operation }: BuckWindow, context: BuckContext): boolean {
  return verdict === 'engineer' && operation !== 'door' && context.walked_on_sill !== true;
}

function strengthOf(
  option: BuckOption,
  window: BuckWindow,
  context: BuckContext,
  tables: BuckTables,
): BuckStrength | null {
  const { framing_gravity } = context;
  if (framing_gravity === null) return null;
  if (option.support === 'flange-over-insulation') {
    return flangeStrength(option, window, { ...context, framing_gravity }, tables);
  }
  const parts = partsOf(option, tables);
  if (!parts) return null;
  // A door stands on its threshold, which is an engineer's in any case.
  const stands_on_blocks = isLarge(window, tables) && window.operation !== 'door';
  const onWood = { ...context, framing_gravity, stands_on_blocks };
  const strength =
    option.support === 'bears-on-sill'
      ? checkBearing(option, parts, window, onWood, tables.wood)
      : checkFace(option, parts, window, onWood, tables.wood);
  return { ...strength, failures: [...edgeFailures(option, parts, context, tables), ...strength.failures] };
}

/** Null where the screws are not known, or a window without a flange or too far out leaves nothing to count. */
function flangeStrength(
  option: BuckOption,
  window: BuckWindow,
  context: BuckContext & { readonly framing_gravity: number },
  tables: BuckTables,
): BuckStrength | null {
  const { screw, screw_spacing_in } = option;
  if (!screw || screw_spacing_in === null || tradeRule(option, window, context, tables)) return null;
  const spacing_in = Math.max(screw_spacing_in, minimumSpacing_in(screw.diameter_in, tables));
  return checkFlange(option, screw, spacing_in, window, context, tables.wood);
}

/** The member and screw of a wood buck; null for supports without them. */
function partsOf(option: BuckOption, tables: BuckTables): MemberAndScrew | null {
  const { member, screw, screw_spacing_in } = option;
  if (option.support !== 'bears-on-sill' && option.support !== 'face-fastened') return null;
  if (!member || !screw || screw_spacing_in === null) return null;
  const nominal = memberNamed(member.nominal, tables.wood);
  return {
    member: {
      ...nominal,
      thickness_in: member.thickness_in ?? nominal.thickness_in,
      depth_in: member.depth_in ?? nominal.depth_in,
    },
    gravity: member.specific_gravity,
    screw,
    spacing_in: Math.max(screw_spacing_in, minimumSpacing_in(screw.diameter_in, tables)),
  };
}

/** Screws closer than this split the wood: more of them count no further. */
export function minimumSpacing_in(diameter_in: number, tables: BuckTables): number {
  return tables.wood.screws.min_spacing_diameters * diameter_in;
}

/** Screws driven into the narrow edge of a member on edge need room to its sides. */
function edgeFailures(
  option: BuckOption,
  parts: MemberAndScrew,
  context: BuckContext,
  tables: BuckTables,
): string[] {
  if (option.support !== 'face-fastened' || parts.member.kind === 'panel') return [];
  const face_in = isFlatFrame(context.projection_in, tables.wood)
    ? parts.member.depth_in
    : parts.member.thickness_in;
  const edge_in = tables.wood.screws.min_edge_diameters * parts.screw.diameter_in;
  return face_in / 2 < edge_in
    ? [
        `A ${parts.screw.diameter_in} in. screw needs ${Number(edge_in.toFixed(2))} in. to the edge and the member gives ${face_in / 2} in.: use a thinner screw or a thicker member.`,
      ]
    : [];
}

function withoutStrength(option: BuckOption): RuleVerdict {
  return {
    verdict: 'engineer',
    why:
      option.support === 'flange-over-insulation'
        ? 'The screws through the flange are not known, so nothing can be worked out: name them, or ask an engineer.'
        : 'Member or screws are not known, so nothing can be worked out: name them, or ask an engineer.',
  };
}

function fitsBecause(
  option: BuckOption,
  window: BuckWindow,
  context: BuckContext,
  strength: BuckStrength,
  tables: BuckTables,
): string {
  const { gravity, wind, combined, bearing } = strength.utilisation;
  const uses = [
    ...(gravity === null ? [] : [`weight ${percent(gravity)}`]),
    ...(wind === null ? [] : [`wind ${percent(wind)}`]),
    ...(combined === null ? [] : [`both ${percent(combined)}`]),
    ...(bearing === null ? [] : [`bearing on the rough sill ${percent(bearing)}`]),
  ].join(', ');
  if (option.support === 'flange-over-insulation') {
    return `The flange screws carry ${Math.round(window.weight_lb)} lb through ${inches(context.projection_in)} in. of board, within the trade’s limit. Used: ${uses}. Window associations ask for a support element all the same: follow the window maker’s instructions.`;
  }
  const how =
    option.support === 'bears-on-sill' ? 'bearing on the rough sill' : 'screwed to the face of the framing';
  const made_of = option.member ? memberNamed(option.member.nominal, tables.wood).made_of : 'wood';
  return `The buck of ${made_of} ${how} carries ${Math.round(window.weight_lb)} lb at ${inches(context.projection_in)} in. Used: ${uses}.`;
}
