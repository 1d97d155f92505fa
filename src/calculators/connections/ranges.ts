export const WITHDRAWAL_FASTENERS = ['wood-screw', 'lag-screw', 'smooth-nail', 'ring-shank-nail'] as const;
export type WithdrawalFastener = (typeof WITHDRAWAL_FASTENERS)[number];

/** Specific gravities the wood equations are used for; the published tables run from 0.31 to 0.73. */
export const GRAVITY_RANGE = { min: 0.3, max: 0.75 } as const;

/** Fastener diameters the lateral equations are used for, in. */
export const DOWEL_DIAMETER_RANGE_IN = { min: 0.099, max: 1 } as const;
