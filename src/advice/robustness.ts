import type { Cladding, Insulation } from '../assembly/catalogue-schema.ts';
import { shareOfFace } from '../assessment/cost-part.ts';
import { addedThickness } from '../assessment/wall-layers.ts';
import { contenders } from './choose-alternatives.ts';
import { Contest, PRICE_RANGE } from './contest.ts';
import { CRITERION_WORDS } from './criterion-words.ts';
import { firstChange } from './first-change.ts';
import { isSameFold } from './folds.ts';
import type { Judged, JudgedWall, Knowledge } from './judge-walls.ts';
import type { Move } from './ranking-schema.ts';
import type { Reading } from './readings.ts';
import { round } from './rounded.ts';
import { CRITERIA, type Criterion, weightsOf } from './scoring.ts';
import { wallTitle } from './titles.ts';
import { WEIGHT_RANGE, weightMoves } from './weight-moves.ts';

/** Stops between now and the end of a range, evenly spaced in proportion. */
const STOPS = 8;

/**
 * How far each weight, the prices of the leading walls, the budget and the room outside must move, each alone, before
 * another wall wins. Another thickness or detail of the same wall doesn't count as another (`foldOf`). Weights exactly,
 * from the scores; prices, budget and room by judging again at stops and halving the stretch in between.
 *
 * @param ranked  first choice first, as the answer ranks them
 */
export async function robustness(
  ranked: readonly JudgedWall[],
  judged: Judged,
  knowledge: Knowledge,
): Promise<Move[]> {
  const [first, second] = ranked;
  if (!first) return [];
  const contest = new Contest(judged, knowledge);
  const moves = [
    ...byWeights(first, judged),
    ...(await byPrices(first, second ?? null, contest)),
    ...(await byBudget(first, judged, contest)),
    ...(await byRoom(first, judged, contest)),
  ];
  return [...moves].sort((a, b) => nearness(a) - nearness(b));
}

/** Other readings of the assumptions that change the first choice: tried as a whole, so the reading is the limit. */
export function readingMoves(readings: readonly Reading[]): Move[] {
  return readings.map(({ field, assumed, label, winner }) => ({
    kind: 'assumption',
    what: field,
    now: assumed,
    until: label,
    unit: '',
    winner: winner?.candidate.id ?? null,
    sentence: `${takesOver(winner)} if ${label}.`,
  }));
}

/** Stands in for a proportion where there is none: behind all that have one. */
const FAR = 100;

/** How far off a move is, as a proportion; what never changes anything last. */
function nearness({ now, until }: Move): number {
  if (typeof until !== 'number') return Number.POSITIVE_INFINITY;
  if (typeof now !== 'number' || now === 0 || until === 0) return FAR;
  return Math.abs(Math.log(until / now));
}

function byWeights(first: JudgedWall, judged: Judged): Move[] {
  const weights = weightsOf(judged.context.brief.priorities);
  const weighed = contenders(judged.admitted).map((wall) => ({
    id: wall.candidate.id,
    scores: wall.scores,
    wish: wall.wish,
    wall,
  }));
  const found = weightMoves(
    weighed.filter(({ wall }) => isSameFold(wall, first)),
    weighed.filter(({ wall }) => !isSameFold(wall, first)),
    weights,
  );
  return CRITERIA.flatMap((criterion): Move[] => {
    const now = round(weights[criterion], 3);
    const entry = { kind: 'weight' as const, what: criterion, now, unit: 'weight' };
    const moves = found.filter((move) => move.criterion === criterion);
    if (moves.length === 0)
      return [{ ...entry, until: null, winner: null, sentence: steadyWeight(criterion) }];
    return moves.map(({ until, winner, direction }) => ({
      ...entry,
      until: round(until, 3),
      winner: winner.wall.candidate.id,
      sentence: `${wallTitle(winner.wall.candidate)} takes over ${weightWords(criterion, now, until, direction)}.`,
    }));
  });
}

export function weightWords(
  criterion: Criterion,
  now: number,
  until: number,
  direction: 'more' | 'less',
): string {
  const what = CRITERION_WORDS[criterion];
  if (now === 0) return `once ${what} weighs more than ${figure(until, 2)} (now it weighs nothing)`;
  if (until === now) return `as soon as ${what} counts ${direction} than now: the two are level`;
  const times = until / now;
  if (until === 0) return `when ${what} counts for nothing`;
  return `once ${what} counts ${direction} than ${figure(times, 2)} times what it does now`;
}

function steadyWeight(criterion: Criterion): string {
  return `No weight of ${CRITERION_WORDS[criterion]} from nothing to ${WEIGHT_RANGE} times what it is now puts another kind of wall first.`;
}

async function byPrices(first: JudgedWall, second: JudgedWall | null, contest: Contest): Promise<Move[]> {
  const items = new Map<Cladding | Insulation, { wall: JudgedWall; label: string }>();
  for (const wall of second ? [first, second] : [first]) {
    const { insulation } = wall.candidate.build;
    const { cladding } = wall.candidate;
    for (const [item, label] of [
      [insulation, insulation.label],
      [cladding, cladding.label],
    ] as const)
      if (!items.has(item)) items.set(item, { wall, label });
  }
  const moves: Move[] = [];
  for (const [item, { wall, label }] of items) {
    const usd = shareOfFace(wall.candidate, item).likely;
    const winnerAt = contest.winners({ kind: 'price', item });
    const entry = { kind: 'price' as const, what: label, now: round(usd, 2), unit: '$/ft²' };
    const ends = [
      { end: PRICE_RANGE.high, word: 'more' },
      { end: PRICE_RANGE.low, word: 'less' },
    ];
    const found: Move[] = [];
    for (const { end, word } of ends) {
      const change = await firstChange(stops(1, end), winnerAt, isOf(first), 0.002);
      if (!change) continue;
      found.push({
        ...entry,
        until: round(change.at * usd, 2),
        winner: change.winner?.candidate.id ?? null,
        sentence: `${takesOver(change.winner)} once ${label} costs ${word} than about $${(change.at * usd).toFixed(2)} a square foot in place (now about $${usd.toFixed(2)}).`,
      });
    }
    moves.push(
      ...(found.length > 0
        ? found
        : [
            {
              ...entry,
              until: null,
              winner: null,
              sentence: `No price of ${label} from half to twice what it is now (about $${usd.toFixed(2)} a square foot in place) puts another kind of wall first.`,
            },
          ]),
    );
  }
  return moves;
}

async function byBudget(first: JudgedWall, judged: Judged, contest: Contest): Promise<Move[]> {
  const budget = judged.context.brief.budget_usd_per_ft2;
  if (budget === null) return [];
  const entry = { kind: 'budget' as const, what: 'budget', now: budget, unit: '$/ft²' };
  const winnerAt = contest.winners({ kind: 'budget' });
  const found: Move[] = [];
  for (const { end, word } of [
    { end: PRICE_RANGE.low * budget, word: 'below' },
    { end: PRICE_RANGE.high * budget, word: 'above' },
  ]) {
    const change = await firstChange(stops(budget, end), winnerAt, isOf(first), 0.002 * budget);
    if (!change) continue;
    found.push({
      ...entry,
      until: round(change.at, 2),
      winner: change.winner?.candidate.id ?? null,
      sentence: `${takesOver(change.winner)} with a budget ${word} about $${change.at.toFixed(2)} a square foot (now $${budget.toFixed(2)}).`,
    });
  }
  if (found.length > 0) return found;
  return [
    {
      ...entry,
      until: null,
      winner: null,
      sentence: `No budget from $${(budget * PRICE_RANGE.low).toFixed(2)} to $${(budget * PRICE_RANGE.high).toFixed(2)} a square foot puts another kind of wall first; a thickness or a detail of it may follow the budget.`,
    },
  ];
}

async function byRoom(first: JudgedWall, judged: Judged, contest: Contest): Promise<Move[]> {
  const limit = judged.context.brief.max_added_thickness_in;
  const { candidate } = first;
  const taken_in = addedThickness(candidate.face, candidate.barrier);
  const winnerAt = contest.winners({ kind: 'room' });
  const entry = { kind: 'room' as const, what: 'room outside the sheathing', now: limit, unit: 'in.' };
  // More room than the thickest wall takes changes nothing.
  const widest_in = limit ?? Math.ceil(taken_in) + ROOM_BEYOND_IN;
  const found: Move[] = [];
  for (const { end, word } of [
    { end: PRICE_RANGE.low * Math.min(widest_in, taken_in), word: 'less' },
    ...(limit === null ? [] : [{ end: PRICE_RANGE.high * limit, word: 'more' }]),
  ]) {
    const change = await firstChange(stops(widest_in, end), winnerAt, isOf(first), 0.01);
    if (!change) continue;
    const now = limit === null ? 'no limit was given' : `now ${figure(limit, 2)} in.`;
    found.push({
      ...entry,
      until: round(change.at, 2),
      winner: change.winner?.candidate.id ?? null,
      sentence: `${takesOver(change.winner)} with ${word} than about ${change.at.toFixed(1)} in. of room outside the sheathing (${now}).`,
    });
  }
  if (found.length > 0) return found;
  const least_in = figure(PRICE_RANGE.low * Math.min(widest_in, taken_in), 1);
  return [
    {
      ...entry,
      until: null,
      winner: null,
      sentence: `As long as there are at least ${least_in} in. of room outside the sheathing, a thickness of the same wall stays first.`,
    },
  ];
}

/** Above the first choice's own thickness: no limit, as good as. */
const ROOM_BEYOND_IN = 1;

function stops(now: number, end: number): number[] {
  return Array.from({ length: STOPS + 1 }, (_, i) => now * (end / now) ** (i / STOPS));
}

const isOf = (first: JudgedWall) => (winner: JudgedWall | null) =>
  winner !== null && isSameFold(winner, first);

function takesOver(winner: JudgedWall | null): string {
  return winner ? `${wallTitle(winner.candidate)} takes over` : 'Nothing on the list passes any more';
}

function figure(value: number, digits: number): string {
  return `${Number(value.toFixed(digits))}`;
}
