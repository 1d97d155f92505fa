/** Editions of the model codes that rules and tables know. */
export const CODE_EDITIONS = ['2018', '2021', '2024'] as const;
