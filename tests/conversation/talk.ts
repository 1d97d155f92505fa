import type { Advice } from '../../src/advice/advice-schema.ts';
import { Refusal } from '../../src/base/refusal.ts';
import type { Scenario } from '../../src/brief/scenario.ts';
import { blocksToText } from '../../src/conversation/blocks.ts';
import type { Draft } from '../../src/conversation/draft.ts';
import { promptOf } from '../../src/conversation/prompt.ts';
import {
  type ConversationEvent,
  type ConversationOptions,
  type ConversationState,
  type Effect,
  initialState,
  type Prompt,
} from '../../src/conversation/state.ts';
import { step } from '../../src/conversation/step.ts';
import { turnBlocks } from '../../src/conversation/turn-blocks.ts';
import { placesNamed, sampleImpression, sampleWhyNot } from './fake-services.ts';
import { sampleAdvice } from './sample-advice.ts';

type TalkOptions = ConversationOptions & {
  readonly draft?: Draft;
  readonly setAside?: string;
  readonly advise?: (scenario: Scenario) => Advice;
  readonly saveFails?: string;
  /** Open fields that would change the first choice. */
  readonly matters?: (scenario: Scenario) => readonly string[];
};

/** A talk with the core alone: lines in, services answered on the spot, no time passing. */
export class Talk {
  state: ConversationState;
  readonly effects: Effect[] = [];
  readonly #options: TalkOptions;

  constructor(options: TalkOptions = {}) {
    this.#options = options;
    this.state = initialState(options);
    this.event({ kind: 'begin', draft: options.draft ?? null, setAside: options.setAside ?? null });
  }

  say(...lines: readonly string[]): this {
    for (const text of lines) this.event({ kind: 'said', text });
    return this;
  }

  event(event: ConversationEvent): this {
    const next = step(this.state, event);
    this.state = next.state;
    this.effects.push(...next.effects);
    for (const effect of next.effects) {
      const result = this.#perform(effect);
      if (result) this.event(result);
    }
    return this;
  }

  get prompt(): Prompt {
    const prompt = promptOf(this.state);
    if (!prompt) throw new Error(`nothing is asked; the stage is ${this.state.stage}`);
    return prompt;
  }

  /** The scenarios that were asked for an answer. */
  get advised(): Scenario[] {
    return this.effects.flatMap((effect) => (effect.kind === 'advise' ? [effect.scenario] : []));
  }

  get drafts(): Omit<Draft, 'saved_at'>[] {
    return this.effects.flatMap((effect) => (effect.kind === 'keep-draft' ? [effect.draft] : []));
  }

  /** What was said in the last turns, as text. */
  last(turns = 1): string {
    return this.state.turns
      .slice(-turns)
      .map((turn) => blocksToText(turnBlocks(turn), 200))
      .join('\n');
  }

  #perform(effect: Effect): ConversationEvent | null {
    switch (effect.kind) {
      case 'find-places':
        return { kind: 'places-found', text: effect.text, places: placesNamed(effect.text) };
      case 'advise':
        try {
          return {
            kind: 'advice-ready',
            advice: (this.#options.advise ?? sampleAdvice)(effect.scenario),
          };
        } catch (error) {
          if (error instanceof Refusal) return { kind: 'advice-refused', issues: error.issues };
          throw error;
        }
      case 'save-record':
        return this.#options.saveFails
          ? { kind: 'record-failed', message: this.#options.saveFails, issues: [] }
          : { kind: 'record-saved', paths: ['/records/wall.md', '/records/wall.json'] };
      case 'look':
        return {
          kind: 'looked',
          outlook: {
            answers: effect.answers,
            impression: sampleImpression(effect.scenario),
            matters: null,
          },
        };
      case 'look-ahead':
        return {
          kind: 'looked-ahead',
          outlook: {
            answers: effect.answers,
            impression: sampleImpression(effect.scenario),
            matters: this.#options.matters?.(effect.scenario) ?? null,
          },
        };
      case 'try':
        return {
          kind: 'tried',
          trial: effect.trial,
          now: sampleImpression(effect.now),
          then: sampleImpression(effect.then),
        };
      case 'why-not':
        try {
          return { kind: 'why-not-found', told: sampleWhyNot(effect.words) };
        } catch (error) {
          if (error instanceof Refusal) return { kind: 'why-not-refused', issues: error.issues };
          throw error;
        }
      default:
        return null;
    }
  }
}

/** One answer for each question, in the order of asking, for a retrofit with everything said. */
export const WHOLE_TALK: readonly string[] = [
  'Boulder, CO',
  'retrofit',
  '2x6 at 16',
  'plywood',
  'R-21',
  'kraft',
  'six 3x5 ft triple casements about 130 lb, flanged',
  'no more',
  'no',
  'true stucco',
  '$30 a foot',
  'general carpenters',
  '1800 sq ft, at most 6 in.',
  '115 mph, exposure C, 22 ft to the roof',
  '12 ft to the lot line, no wildfire, termites slight to moderate',
  'cost first, then moisture safety',
];

/** What the whole talk comes to. */
export const WHOLE_SCENARIO: Scenario = {
  schema: 'cladwright-scenario/1',
  place: { state: 'CO', county: 'Boulder' },
  project: 'retrofit',
  framing: { material: 'wood', depth_in: 5.5, spacing_in: 16 },
  sheathing: 'plywood',
  cavity_insulation_r: 21,
  interior_vapour_retarder: 'class-ii',
  windows: [
    {
      count: 6,
      width_in: 36,
      height_in: 60,
      glazing: 'triple',
      mounting: 'flanged',
      operation: 'casement',
      weight_lb: 130,
    },
  ],
  rough_opening_can_change: false,
  finish: 'cement-stucco',
  budget_usd_per_ft2: 30,
  crew_skill: 'general',
  wall_area_ft2: 1800,
  basic_wind_speed_mph: 115,
  exposure: 'C',
  mean_roof_height_ft: 22,
  fire_separation_ft: 12,
  wildfire_area: false,
  termite_area: 'slight-to-moderate',
  max_added_thickness_in: 6,
  priorities: { cost: 3, moisture_safety: 2 },
};
