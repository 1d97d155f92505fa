import type { Glazing, Operation } from '../window-weight.ts';

export type BuckSupport = 'bears-on-sill' | 'face-fastened' | 'flange-over-insulation' | 'steel-bracket';

export type BuckScrew = {
  readonly diameter_in: number;
  readonly root_diameter_in: number;
  readonly length_in: number;
  readonly bending_yield_psi: number;
};

/** A way to carry a window, as chosen or as the catalogue lists it. */
export type BuckOption = {
  readonly support: BuckSupport;
  /** Null where no wood member carries. */
  readonly member: {
    readonly nominal: string;
    readonly specific_gravity: number;
    /** Of the piece as it is cut or built up; the nominal size's own when left out. */
    readonly thickness_in?: number;
    readonly depth_in?: number;
  } | null;
  readonly screw: BuckScrew | null;
  readonly screw_spacing_in: number | null;
  /** Sill, jambs and head screwed to each other; true when left out. */
  readonly corners_joined?: boolean;
  /** Of the round screw head; 3/8 in. when left out. */
  readonly head_diameter_in?: number;
  /** 1-1/2 in. when left out. */
  readonly thread_length_in?: number;
  /** Depth of a drip kerf sawn along the underside of a bearing sill piece; none when left out. */
  readonly sill_kerf_in?: number;
  /** A tighter limit than the member's own. */
  readonly max_projection_in?: number;
};

/** One window; `null` is unknown and never counts as harmless. */
export type BuckWindow = {
  readonly width_in: number;
  readonly height_in: number;
  readonly weight_lb: number;
  readonly mounting: 'flanged' | 'flangeless' | null;
  readonly operation: Operation | null;
  readonly glazing: Glazing | null;
};

export type BuckContext = {
  /** From the framing (bearing) or sheathing (face-fastened) to the plane of the flange, in. */
  readonly projection_in: number;
  /** Suction at allowable-stress level, psf; the sign doesn't matter. */
  readonly outward_wind_psf: number;
  /** Of the framing; null for steel framing. */
  readonly framing_gravity: number | null;
  readonly framing_depth_in: number;
  /** Sheathing between a face-fastened buck and the framing, in.; 7/16 when left out. */
  readonly gap_in?: number;
  /** The buck gets wet in service; false when left out. */
  readonly wet_service?: boolean;
  /** People step on the sill; false when left out. */
  readonly walked_on_sill?: boolean;
};

export type BuckVerdict = 'fits' | 'does-not-fit' | 'engineer';

/** Use of each check, 1 is the limit; null where it does not apply or can't be worked out. */
export type BuckUtilisation = {
  readonly gravity: number | null;
  readonly wind: number | null;
  readonly combined: number | null;
  readonly bearing: number | null;
};

export type BuckJudgement = {
  readonly verdict: BuckVerdict;
  readonly utilisation: BuckUtilisation;
  /** In each jamb; null where no wood buck is screwed. */
  readonly screws_per_side: number | null;
  readonly min_screw_length_in: number | null;
  readonly why: string;
};

/** What a strength check found, before the trade's rules have their say. */
export type BuckStrength = {
  readonly utilisation: BuckUtilisation;
  readonly screws_per_side: number;
  readonly min_screw_length_in: number;
  /** Each a sentence with its remedy; empty when everything holds. */
  readonly failures: readonly string[];
  /** What a figure that counts too little can't settle, each a sentence with its remedy: an engineer decides. */
  readonly doubts?: readonly string[];
  /** Estimated sag at the flange with creep, in.; null when not worked out. */
  readonly sag_in: number | null;
  /** The screws all round, in words; null where they were not laid out. */
  readonly screw_count: string | null;
  readonly notes: readonly string[];
};

export const NO_UTILISATION: BuckUtilisation = { gravity: null, wind: null, combined: null, bearing: null };

export const ASSUMED = { head_diameter_in: 0.375, thread_length_in: 1.5, gap_in: 0.4375 } as const;
