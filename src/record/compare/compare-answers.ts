import type { Advice, RankedAssembly } from '../../advice/advice-schema.ts';
import { type Decision, decidedWall, decisionOf, isSameDecision } from '../decided-wall.ts';
import { HEADLINES } from '../headline-figures.ts';

/** One answer to be compared. */
export type Side = {
  /** The file it comes from. */
  readonly file: string;
  readonly kind: 'record' | 'scenario';
  readonly title: string;
  /** "proposed, revision 2" of a record, "answered now" of a scenario. */
  readonly state: string;
  readonly advice: Advice;
};

export type AnswerRow = {
  readonly field: string;
  readonly question: string;
  /** Null where nothing was said. */
  readonly a: string | null;
  readonly b: string | null;
};

export type FigureRow = {
  readonly what: string;
  readonly unit: string;
  readonly a: number | null;
  readonly b: number | null;
  /** b - a; null where one of them is not known. */
  readonly difference: number | null;
};

type Told = { readonly text: string; readonly rule: string | null };

/** Two answers side by side. */
export type Comparison = {
  readonly schema: 'cladwright-record-comparison/1';
  readonly a: SideHead;
  readonly b: SideHead;
  readonly is_same_decision: boolean;
  /** Fields whose answer differs, then those that were answered alike. */
  readonly answers: { readonly differ: readonly AnswerRow[]; readonly alike: readonly AnswerRow[] };
  readonly assumed: { readonly only_a: readonly string[]; readonly only_b: readonly string[] };
  /** What the walls are made of, in words; rows that are alike too. */
  readonly parts: readonly { readonly what: string; readonly a: string | null; readonly b: string | null }[];
  readonly figures: readonly FigureRow[];
  readonly cautions: {
    readonly only_a: readonly Told[];
    readonly only_b: readonly Told[];
    readonly both: number;
  };
};

type SideHead = Omit<Side, 'advice'> & {
  readonly decision: Decision;
  readonly place: string;
  readonly code_edition: string;
};

/** Compares what was answered and what came of it. Of the walls: the first choices, or the fallbacks. */
export function compareAnswers(a: Side, b: Side): Comparison {
  const [wallA, wallB] = [decidedWall(a.advice), decidedWall(b.advice)];
  const answers = answerRows(a.advice, b.advice);
  const [heardA, heardB] = [cautionsOf(a.advice), cautionsOf(b.advice)];
  return {
    schema: 'cladwright-record-comparison/1',
    a: head(a),
    b: head(b),
    is_same_decision: isSameDecision(decisionOf(a.advice), decisionOf(b.advice)),
    answers: {
      differ: answers.filter((row) => row.a !== row.b),
      alike: answers.filter((row) => row.a === row.b),
    },
    assumed: {
      only_a: onlyIn(assumedFields(a.advice), assumedFields(b.advice)),
      only_b: onlyIn(assumedFields(b.advice), assumedFields(a.advice)),
    },
    parts: PARTS.map(([what, of]) => ({ what, a: wallA ? of(wallA) : null, b: wallB ? of(wallB) : null })),
    figures: figureRows(wallA, wallB),
    cautions: {
      only_a: [...heardA].flatMap(([key, told]) => (heardB.has(key) ? [] : [told])),
      only_b: [...heardB].flatMap(([key, told]) => (heardA.has(key) ? [] : [told])),
      both: [...heardA.keys()].filter((key) => heardB.has(key)).length,
    },
  };
}

const PARTS: readonly (readonly [what: string, of: (wall: RankedAssembly) => string])[] = [
  ['Cladding', (wall) => wall.cladding],
  ['Hung by', (wall) => wall.attachment],
  ['Insulation', (wall) => `${wall.insulation.material}, ${wall.insulation.layers} layer(s)`],
  ['Interior vapour retarder', (wall) => wall.interior_vapour_retarder],
  ['Water-resistive barrier', (wall) => wall.water_resistive_barrier],
  ['Windows carried by', (wall) => wall.buck.label],
  ['Fastener', (wall) => wall.fastening.fastener],
  ['Crew', (wall) => wall.crew.needed],
];

function head({ advice, ...side }: Side): SideHead {
  return {
    ...side,
    decision: decisionOf(advice),
    place: advice.site.place,
    code_edition: advice.code_edition,
  };
}

function answerRows(a: Advice, b: Advice): AnswerRow[] {
  const [saidA, saidB] = [a, b].map((one) => new Map(one.answers.map((answer) => [answer.field, answer])));
  const fields = [...new Set([...a.answers, ...b.answers].map(({ field }) => field))];
  return fields.map((field) => {
    const [inA, inB] = [saidA?.get(field), saidB?.get(field)];
    return {
      field,
      question: inA?.question ?? inB?.question ?? field,
      a: inA?.answer ?? null,
      b: inB?.answer ?? null,
    };
  });
}

function figureRows(a: RankedAssembly | null, b: RankedAssembly | null): FigureRow[] {
  const row = (what: string, unit: string, inA: number | null, inB: number | null): FigureRow => ({
    what,
    unit,
    a: inA,
    b: inB,
    difference: inA === null || inB === null ? null : Number((inB - inA).toPrecision(6)),
  });
  const heads = HEADLINES.map(({ what, unit, of }) => row(what, unit, a ? of(a) : null, b ? of(b) : null));
  const [figuresA, figuresB] = [a, b].map(
    (wall) => new Map((wall?.figures ?? []).map((figure) => [figure.id, figure])),
  );
  const ids = [...new Set([...(figuresA?.keys() ?? []), ...(figuresB?.keys() ?? [])])];
  return [
    ...heads,
    ...ids.flatMap((id) => {
      const [inA, inB] = [figuresA?.get(id), figuresB?.get(id)];
      const either = inA ?? inB;
      return either ? [row(either.what, either.unit, inA?.value ?? null, inB?.value ?? null)] : [];
    }),
  ];
}

/** Each caution once; the rule tells two wordings of one caution together. */
function cautionsOf(advice: Advice): Map<string, Told> {
  const all = [...advice.cautions, ...(decidedWall(advice)?.cautions ?? [])];
  return new Map(all.map(({ text, rule }) => [rule ?? text, { text, rule: rule ?? null }]));
}

function assumedFields({ assumptions }: Advice): string[] {
  return assumptions.map(({ field }) => field);
}

function onlyIn(these: readonly string[], others: readonly string[]): string[] {
  const known = new Set(others);
  return these.filter((one) => !known.has(one));
}
