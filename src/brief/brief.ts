import type { CodeEdition } from '../base/code-editions.ts';
import type { PriceBook } from './price-book.ts';
import type {
  CREW_SKILLS,
  EXPOSURES,
  FINISHES,
  FLANGE_PLANES,
  FRAMING_MATERIALS,
  FRAMING_STYLES,
  GLAZINGS,
  LITES,
  MOUNTINGS,
  OPERATIONS,
  Place,
  PRIORITY_KEYS,
  PROJECT_KINDS,
  RETARDERS,
  SHEATHINGS,
  STEEL_THICKNESSES_MIL,
  TERMITE_AREAS,
  WINDOW_FRAMES,
} from './scenario.ts';

type OneOf<T extends readonly string[]> = T[number];

export type { CodeEdition };
export type CrewSkill = OneOf<typeof CREW_SKILLS>;
export type Finish = OneOf<typeof FINISHES>;
export type FramingMaterial = OneOf<typeof FRAMING_MATERIALS>;
export type Sheathing = OneOf<typeof SHEATHINGS>;
export type RetarderClass = OneOf<typeof RETARDERS>;
export type Exposure = OneOf<typeof EXPOSURES>;
export type TermiteArea = OneOf<typeof TERMITE_AREAS>;
export type Glazing = OneOf<typeof GLAZINGS>;
export type Mounting = OneOf<typeof MOUNTINGS>;
export type Operation = OneOf<typeof OPERATIONS>;
export type WindowFrame = OneOf<typeof WINDOW_FRAMES>;
export type Lite = OneOf<typeof LITES>;
export type FlangePlaneName = OneOf<typeof FLANGE_PLANES>;
export type PriorityKey = OneOf<typeof PRIORITY_KEYS>;

export type BriefWindow = {
  readonly count: number;
  readonly width_in: number;
  readonly height_in: number;
  readonly glazing: Glazing;
  readonly mounting: Mounting;
  readonly operation: Operation;
  /** Weight given by the user; null when it must be worked out from the glass and the frame. */
  readonly weight_lb: number | null;
  /** For working the weight out; null when not known. */
  readonly frame: WindowFrame | null;
  readonly lite_in: Lite | null;
  /** The opening as given; null when it must be assumed from the unit. */
  readonly rough_opening_width_in: number | null;
  readonly rough_opening_height_in: number | null;
};

/**
 * What was asked, complete: every open field of the scenario has been filled by a stated assumption.
 * Fields that nothing sensible can be assumed for stay null and make the rules that need them undecided.
 */
export type Brief = {
  readonly name: string;
  readonly place: Place;
  readonly project: OneOf<typeof PROJECT_KINDS>;
  readonly code_edition: CodeEdition;
  readonly framing: {
    readonly material: FramingMaterial;
    readonly depth_in: number;
    readonly spacing_in: number;
    readonly species_gravity: number;
    /** Of steel studs only. */
    readonly steel_thickness_mil?: (typeof STEEL_THICKNESSES_MIL)[number];
  };
  readonly sheathing: Sheathing;
  readonly cavity_insulation_r: number;
  /** For a retrofit: what is there now, null when not known. For a new wall: what the user fixed, null when free. */
  readonly interior_vapour_retarder: RetarderClass | null;
  readonly windows: readonly BriefWindow[];
  readonly rough_opening_can_change: boolean;
  /** The plane of the window flange that was asked for; null when it is chosen wall by wall. */
  readonly flange_plane: FlangePlaneName | null;
  readonly finish: Finish;
  readonly budget_usd_per_ft2: number | null;
  readonly crew_skill: CrewSkill;
  readonly wall_area_ft2: number;
  /** Whether the windows' sizes and counts and the wall area were all said, so that the open share is known. */
  readonly open_share_is_known: boolean;
  readonly basic_wind_speed_mph: number;
  readonly exposure: Exposure;
  readonly mean_roof_height_ft: number;
  /** Of the plan, for the width of the wind's corner zone; null when not known. */
  readonly building_least_width_ft: number | null;
  readonly fire_separation_ft: number | null;
  readonly wildfire_area: boolean | null;
  readonly termite_area: TermiteArea | null;
  readonly max_added_thickness_in: number | null;
  /** What the user counts heat by; null where the tables stand. */
  readonly thermal_assumptions: {
    readonly framing_style: OneOf<typeof FRAMING_STYLES> | null;
    readonly framing_fraction: number | null;
    readonly film_inside_r: number | null;
    readonly film_outside_r: number | null;
  };
  readonly priorities: Readonly<Record<PriorityKey, number>>;
  /** The user's own prices; null where the shipped or the firm's stand. */
  readonly price_book: PriceBook | null;
};

/** Something that was not said and had to be taken as given. Shown to the user, never silent. */
export type Assumption = {
  /** Path of the field in the scenario. */
  readonly field: string;
  readonly value: string | number | boolean | null;
  readonly why: string;
  readonly could_change_answer: boolean;
  /** The house pack that it was taken from. */
  readonly house?: string;
};
