/** The energy code of walls: what it asks, whether a wall meets it, by which route and margin. */
export {
  complianceJudge,
  type EnergyCompliance,
  energyCompliance,
  judgeCompliance,
  nearestCompliantThickness,
  type ThicknessChoice,
  type WallAsBuilt,
} from './energy-code-compliance.ts';
export { type EnergyQuery, energyInputSchema } from './energy-code-input.ts';
export {
  type EnergyRequirement,
  energyRequirement,
  optionsInWords,
  type ROption,
} from './energy-code-requirement.ts';
export { type EnergyTable, energyTableSchema } from './energy-code-table.ts';
