import { barrierLabel } from '../assembly/barrier-label.ts';
import type { Candidate } from '../assembly/candidates.ts';
import { listed } from '../base/listed.ts';
import type { Brief } from '../brief/brief.ts';
import { priceBookWords } from '../brief/price-book.ts';
import type { BriefDefaults } from '../brief/resolve-brief.ts';
import { type HouseName, type HouseStandard, houseWords } from '../rulebook/house-standard.ts';
import type { Advice } from './advice-schema.ts';
import { firstChoice } from './choose-alternatives.ts';
import type { HouseEffect } from './house-schema.ts';
import { type Judged, judgeWalls, type Knowledge } from './judge-walls.ts';
import { withOwnPrices } from './own-prices.ts';
import { wallTitle } from './titles.ts';

type Change = Advice['would_change_the_answer'][number];

/** What the firm's packs take where the user says nothing. */
export function houseDefaults({ crew_skill }: HouseStandard): BriefDefaults {
  if (!crew_skill) return {};
  const { value, pack } = crew_skill;
  return { crew_skill: { value, firm: houseWords(pack), pack: pack.name } };
}

/**
 * What the firm's packs did: which limits they moved, how many walls they alone turn down, and whether another wall
 * would come first without them. All walls are judged again by the shipped rules, prices and crew.
 *
 * @param knowledge  with the shipped catalogue
 * @param asShipped  the brief as it would be without the firm's defaults
 * @returns null where no house pack is in force
 */
export async function houseEffect(
  judged: Judged,
  asShipped: Brief,
  knowledge: Knowledge,
): Promise<{ readonly effect: HouseEffect; readonly change: Change | null } | null> {
  const { house, shipped } = knowledge.rulebook;
  if (house.packs.length === 0) return null;
  const plain = { ...knowledge, rulebook: shipped };
  const before = await judgeWalls(asShipped, judged.context.site, withOwnPrices(plain, asShipped));
  const mine = firstChoice(judged);
  const other = firstChoice(before);
  const changes = mine?.candidate.id !== other?.candidate.id;
  const turned_down = countTurnedDown(judged, before);
  const names = house.packs.map(houseWords).join(' and ');
  const then = other
    ? `the first choice ${mine ? 'becomes' : 'is'} ${titleBeside(other.candidate, mine?.candidate)}`
    : 'nothing on the list passes';
  return {
    effect: {
      packs: house.packs.map((pack) => ({ ...pack })),
      tightened: house.limits.map(({ limit, meaning, from, to, pack, reason }) => ({
        limit,
        meaning,
        from,
        to,
        pack: pack.name,
        reason,
      })),
      raised: house.raised.map(({ rule, from, pack, reason }) => ({ rule, from, pack: pack.name, reason })),
      turned_down,
      changes_first_choice: changes,
      sentences: [
        `House rules of ${names} are in force; reasons that rest on them begin with "House rule".`,
        ...house.limits.map(limitSentence),
        ...house.raised.map(
          ({ rule, from, reason }) =>
            `The rule ${rule} rules a wall out, where it is shipped as "${from}". ${reason}`,
        ),
        turned_down === 0
          ? 'The house packs turn down no wall that the shipped rules admit.'
          : `The house packs turn down ${turned_down.toLocaleString('en-US')} walls that the shipped rules admit.`,
        changes
          ? `Without the house packs ${then}.`
          : 'The first choice is the same without the house packs.',
      ],
    },
    change: changes ? { if: `the house packs of ${names} are left out`, then } : null,
  };
}

/** A wall's title; where the other one has the same, with what tells them apart. */
function titleBeside(candidate: Candidate, other: Candidate | undefined): string {
  const title = wallTitle(candidate);
  if (!other || wallTitle(other) !== title) return title;
  const { barrier, sheathing, inside, buck } = candidate;
  const details = [
    ...(barrier === other.barrier ? [] : [barrierLabel(barrier, sheathing)]),
    ...(inside === other.inside ? [] : [inside.retarder?.label ?? 'the lining as it stands']),
    ...(buck === other.buck ? [] : [buck.label]),
  ];
  return details.length > 0 ? `the same wall with ${listed(details)}` : title;
}

function limitSentence({ meaning, from_text, to_text, reason }: HouseStandard['limits'][number]): string {
  return `The limit on ${meaning} is ${to_text}, where ${from_text} is shipped. ${reason}`;
}

/** Walls out by house rules and in by the shipped ones; drawn up alike both times, whatever the prices. */
function countTurnedDown(judged: Judged, before: Judged): number {
  const admitted = new Set(before.admitted.map(({ candidate }) => candidate.id));
  return judged.walls.filter(({ forbids, candidate }) => forbids > 0 && admitted.has(candidate.id)).length;
}

/**
 * The firm's prices as an assumption, with whether the shipped ones would put another wall first: found by judging again.
 */
export async function housePrices(judged: Judged, knowledge: Knowledge): Promise<Advice['assumptions']> {
  const { prices } = knowledge.rulebook.house;
  if (!prices) return [];
  const { brief, site } = judged.context;
  const other = await judgeWalls(brief, site, withOwnPrices(knowledge, brief, null));
  return [
    {
      field: 'price_book',
      value: priceBookWords(prices.book),
      why: `The prices of ${prices.packs.map((pack: HouseName) => houseWords(pack)).join(' and ')} in place of the shipped ones${brief.price_book ? ', where your own price book says nothing' : ''}.`,
      could_change_answer: firstChoice(judged)?.candidate.id !== firstChoice(other)?.candidate.id,
      house: prices.packs.at(-1)?.name ?? 'house',
    },
  ];
}
