import type { Answers, AnswerValue, FieldId, Finding } from '../answers.ts';
import type { Choice, QuestionId } from '../questions.ts';
import type { WindowAspect, WindowReading } from '../windows.ts';
import type { Clause, Taken } from './line-text.ts';

/** What is being asked while a line is read; a bare "30" means nothing without it. */
export type Context = {
  readonly question: QuestionId | null;
  /** Fields of that question still to be said. */
  readonly open: readonly FieldId[];
  readonly answers: Answers;
  /** The numbered choices on the screen. */
  readonly choices: readonly Choice[];
  /** Inside the windows question: the first list, details of one kind, or "any other?". */
  readonly windowsPhase: 'kinds' | 'details' | 'more' | null;
  /** A homeowner's "first time" may be the first time that they hire. */
  readonly isHomeowner: boolean;
  /** In the details: what the kind being asked about still misses. */
  readonly windowsMissing: readonly WindowAspect[];
};

/** Something said that could not be taken, and what to do about it. */
export type Unclear = {
  readonly words: string;
  readonly hint: string;
  /** Understood, and not needed: the hint says why. */
  readonly isOfNoUse?: boolean;
};

export type Either = {
  readonly words: string;
  readonly findings: readonly Finding[];
  /** How it is put to the user, where the first finding is only an estimate of what was said. */
  readonly asks?: string;
};

/** Said of a question that is not being asked, and not enough to answer it: taken up when it is. */
export type HeardEarly = { readonly field: FieldId; readonly words: string };

/** More of them than anybody says of what is asked later. */
export const MOST_EARLY = 20;

/** A wall that does not stand on studs; some go by a name that a framed wall goes by too. */
export type UnframedWall = {
  /** With its article: "a log wall". */
  readonly name: string;
  readonly words: string;
  readonly mayHaveStuds: boolean;
};

export type BudgetTotal = { readonly usd: number; readonly words: string };

/** What one line was understood to say. */
export type Reading = {
  readonly findings: readonly Finding[];
  /** Fields that the user says they don't know. */
  readonly unknowns: readonly FieldId[];
  readonly windows: readonly WindowReading[];
  /** "No more windows" was said. */
  readonly windowsComplete: boolean;
  /** The details still open of the kind asked about are not known. */
  readonly windowDetailsUnknown: boolean;
  /** A place to look up, in the user's words. */
  readonly place: string | null;
  /** A number that may be two things: put to the user. */
  readonly either: Either | null;
  readonly unclear: readonly Unclear[];
  /** A budget for the whole wall, to be divided by its area. */
  readonly budgetTotal: BudgetTotal | null;
  /** What must be said of how a thing was taken. */
  readonly notes: readonly string[];
  readonly early: readonly HeardEarly[];
  /** What was named that may hurt somebody, and what to do about it. */
  readonly cautions: readonly string[];
  readonly unframed: UnframedWall | null;
};

/** Gathers what the readers find in one clause. */
export class Gathering {
  readonly context: Context;
  readonly findings: Finding[] = [];
  readonly unclear: Unclear[] = [];
  readonly notes: string[] = [];
  readonly early: HeardEarly[] = [];
  readonly cautions: string[] = [];
  /** What covers the wall that stands, by the words said and by its name. */
  readonly oldCladdings: { readonly words: string; readonly name: string }[] = [];
  unframed: UnframedWall | null = null;
  budgetTotal: BudgetTotal | null = null;
  either: Either | null = null;
  /** Something named without its figure: asked about unless the line says it elsewhere. */
  vague: (Unclear & { readonly isGeneral: boolean }) | null = null;
  /** The line tells of several walls. */
  isOneOfSeveral = false;
  /** The year that the house is from. */
  builtIn: number | null = null;

  constructor(context: Context) {
    this.context = context;
  }

  /** Whether this question is the one being asked. */
  isAsked(question: QuestionId): boolean {
    return this.context.question === question;
  }

  isOpen(field: FieldId): boolean {
    return this.context.open.some((open) => open === field);
  }

  /** Notes a finding; a negated one says only what it is not, so it is asked about. */
  add(field: FieldId, value: AnswerValue, taken: Taken): void {
    if (taken.isNegated) {
      this.puzzle(`not ${taken.words}`, 'That says what it is not. What is it?');
      return;
    }
    this.findings.push({ field, value, words: taken.words });
  }

  puzzle(words: string, hint: string): void {
    this.unclear.push({ words, hint });
  }
}

/** A line that says nothing. */
export const NOTHING_SAID: Reading = {
  findings: [],
  unknowns: [],
  windows: [],
  windowsComplete: false,
  windowDetailsUnknown: false,
  place: null,
  either: null,
  unclear: [],
  budgetTotal: null,
  notes: [],
  early: [],
  cautions: [],
  unframed: null,
};

/** Reads one subject out of a clause. */
export type Reader = (clause: Clause, gathering: Gathering) => void;
