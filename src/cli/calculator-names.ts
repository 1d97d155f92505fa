/** The calculators of `calc`, in the order of the help. Apart from the calculators, so that help loads none. */
export const CALCULATOR_NAMES = [
  'thermal',
  'condensation',
  'climate',
  'energy-code',
  'vapour-code',
  'wind',
  'withdrawal',
  'pull-through',
  'lateral',
  'fastening',
  'buck',
] as const;
export type CalculatorName = (typeof CALCULATOR_NAMES)[number];
