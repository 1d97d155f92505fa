import { inches } from '../../base/inches.ts';
import { unitArea_ft2 } from '../window-weight.ts';
import type { BuckContext, BuckOption, BuckVerdict, BuckWindow } from './buck-types.ts';
import { isFlatFrame } from './face-check.ts';
import { type BuckTables, memberNamed } from './wood-table.ts';

export type RuleVerdict = { readonly verdict: BuckVerdict; readonly why: string };

/**
 * What the trade's rules say before any strength is counted; null when they leave it to the figures.
 *
 * In order: what only an engineer may decide, what the fixing can't hold at all, how far out it may reach, and
 * the rule on heavy units and on large fixed triple glazing. An unknown glazing or operation counts as the worse case.
 */
export function tradeRule(
  option: BuckOption,
  window: BuckWindow,
  context: BuckContext,
  tables: BuckTables,
): RuleVerdict | null {
  return (
    engineerOnly(option, window, context) ??
    flangeNeeded(option, window, context, tables) ??
    reach(option, context, tables) ??
    largeWindow(option, window, tables)
  );
}

function engineerOnly(option: BuckOption, window: BuckWindow, context: BuckContext): RuleVerdict | null {
  if (window.operation === 'door') {
    return engineer('A door’s sill is walked on: its support outside the framing needs an engineer.');
  }
  if (context.walked_on_sill) {
    return engineer('A sill that people step on carries more than the window: it needs an engineer.');
  }
  if (option.support === 'steel-bracket') {
    return engineer(
      'Steel angles and brackets carry by their own tests: an engineer chooses and fastens them (and they bridge the insulation).',
    );
  }
  if (context.framing_gravity === null) {
    return engineer(
      'The framing is not wood: wood-screw formulas do not hold in steel, so the fastening needs an engineer.',
    );
  }
  return null;
}

/** Fixed by its flange only: bare insulation, or a flat frame no deeper than the flange screws. */
export function holdsByFlangeOnly(option: BuckOption, context: BuckContext, tables: BuckTables): boolean {
  return (
    option.support === 'flange-over-insulation' ||
    (option.support === 'face-fastened' && isFlatFrame(context.projection_in, tables.wood))
  );
}

function flangeNeeded(
  option: BuckOption,
  window: BuckWindow,
  context: BuckContext,
  tables: BuckTables,
): RuleVerdict | null {
  if (window.mounting === 'flanged' || !holdsByFlangeOnly(option, context, tables)) return null;
  const known =
    window.mounting === null ? 'it is not known whether this window has one' : 'this window has none';
  return no(
    `This support holds a window by its flange, and ${known}: choose a buck that the frame can be screwed to, such as one that bears on the rough sill.`,
  );
}

/** How far out an option may carry a window, in. */
export function reach_in(option: BuckOption, tables: BuckTables): number {
  const { wood } = tables;
  const own = option.max_projection_in ?? Number.POSITIVE_INFINITY;
  if (option.support === 'flange-over-insulation') {
    return Math.min(own, wood.flange_over_insulation.max_projection_in);
  }
  if (!option.member) return own;
  const member = memberNamed(option.member.nominal, wood).max_projection_in;
  return option.support === 'face-fastened'
    ? Math.min(own, member, wood.face_fastened.max_projection_in)
    : Math.min(own, member);
}

function reach(option: BuckOption, context: BuckContext, tables: BuckTables): RuleVerdict | null {
  const limit = reach_in(option, tables);
  if (context.projection_in <= limit + 1e-9) return null;
  const own = option.member ? `${memberNamed(option.member.nominal, tables.wood).called} ` : '';
  const larger = tables.wood.members.rows.filter((row) => row.max_projection_in >= context.projection_in);
  const lumber = larger.find((row) => row.kind === 'lumber') ?? larger[0];
  return no(
    `The window sits ${inches(context.projection_in)} in. out; this ${own}${wording(option.support)} reaches ${inches(limit)} in. ` +
      (lumber
        ? `A ${lumber.called} bearing on the rough sill would, or a bracket designed by an engineer.`
        : 'Bring the window inward, or have an engineer design a bracket.'),
  );
}

/** At or over the trade's border in area or weight. */
export function isLarge({ width_in, height_in, weight_lb }: BuckWindow, { windows }: BuckTables): boolean {
  return unitArea_ft2(width_in, height_in) >= windows.large.area_ft2 || weight_lb >= windows.large.weight_lb;
}

function largeWindow(option: BuckOption, window: BuckWindow, tables: BuckTables): RuleVerdict | null {
  const { large } = tables.windows;
  const area_ft2 = unitArea_ft2(window.width_in, window.height_in);
  if (!isLarge(window, tables)) return null;
  const size = `${Number(area_ft2.toFixed(1))} ft² and ${Math.round(window.weight_lb)} lb`;
  if (option.support === 'flange-over-insulation') {
    return no(
      `At ${size} the window is too large to hang by its flange over insulation (limit ${large.area_ft2} ft² or ${large.weight_lb} lb): give it a buck.`,
    );
  }
  if (option.support !== 'face-fastened') return null;
  if (window.glazing === 'double' || (window.operation !== null && window.operation !== 'fixed')) {
    return window.weight_lb < large.weight_lb
      ? null
      : engineer(
          `A window of ${size} is not hung on a face-fastened buck without an engineer: ${reason(large.why)} Use a buck that bears on the rough sill.`,
        );
  }
  const known = window.glazing === 'triple' && window.operation === 'fixed';
  return engineer(
    known
      ? `A fixed triple-glazed window of ${size} is not hung on a face-fastened buck without an engineer: ${reason(large.why)} Use a buck that bears on the rough sill.`
      : `A window of ${size} whose glazing or operation is not known may be a large fixed triple-glazed one, which is not hung on a face-fastened buck without an engineer: ${reason(large.why)} Say what it is, or use a buck that bears on the rough sill.`,
  );
}

function reason(why: string): string {
  return why.charAt(0).toLowerCase() + why.slice(1);
}

function wording(support: BuckOption['support']): string {
  return support === 'bears-on-sill'
    ? 'buck on the rough sill'
    : support === 'face-fastened'
      ? 'frame on the face of the framing'
      : 'flange over insulation';
}

function engineer(why: string): RuleVerdict {
  return { verdict: 'engineer', why };
}

function no(why: string): RuleVerdict {
  return { verdict: 'does-not-fit', why };
}
