import { z } from 'zod';
import { parseInput } from '../base/parse-input.ts';
import barriersJson from './catalogue/barriers.json' with { type: 'json' };
import bucksJson from './catalogue/bucks.json' with { type: 'json' };
import claddingsJson from './catalogue/claddings.json' with { type: 'json' };
import furringJson from './catalogue/furring.json' with { type: 'json' };
import insulationsJson from './catalogue/insulations.json' with { type: 'json' };
import materialsJson from './catalogue/materials.json' with { type: 'json' };
import pricesJson from './catalogue/prices.json' with { type: 'json' };
import retardersJson from './catalogue/retarders.json' with { type: 'json' };
import sheathingsJson from './catalogue/sheathings.json' with { type: 'json' };
import {
  type Barrier,
  type Buck,
  barrierSchema,
  buckSchema,
  type Cladding,
  claddingSchema,
  type DeeperFurring,
  deeperFurringSchema,
  type Insulation,
  insulationSchema,
  type Prices,
  pricesSchema,
  type Retarder,
  retarderSchema,
  type SheathingEntry,
  sheathingSchema,
} from './catalogue-schema.ts';
import { type InsulationBuild, insulationBuilds } from './insulation-builds.ts';
import { type Material, materialSchema } from './material-schema.ts';

/** Everything an assembly can be made of. */
export type Catalogue = {
  readonly insulations: readonly Insulation[];
  /** Every board build of every insulation; the same objects for every answer. */
  readonly builds: readonly InsulationBuild[];
  readonly claddings: readonly Cladding[];
  /** What a cladding on furring can be hung on where its nails don't hold the wind in the usual strips. */
  readonly deeper_furring: DeeperFurring;
  readonly retarders: readonly Retarder[];
  readonly barriers: readonly Barrier[];
  readonly bucks: readonly Buck[];
  readonly sheathings: readonly SheathingEntry[];
  /** What the layers are made of. */
  readonly materials: readonly Material[];
  readonly prices: Prices;
};

function file<K extends string, S extends z.ZodType>(schema: string, key: K, entry: S) {
  return z.strictObject({ schema: z.literal(schema), [key]: z.array(entry).min(1) } as {
    schema: z.ZodLiteral<string>;
  } & Record<K, z.ZodArray<S>>);
}

let loaded: Catalogue | undefined;

/**
 * The shipped catalogue, checked once per process.
 * @throws Refusal naming file, entry and key when an entry doesn't fit the schema
 */
export function loadCatalogue(): Catalogue {
  loaded ??= readCatalogue();
  return loaded;
}

function readCatalogue(): Catalogue {
  const insulations = parseInput(
    file('cladwright-insulations/1', 'insulations', insulationSchema),
    insulationsJson,
    'insulations.json',
  ).insulations;
  return {
    insulations,
    builds: insulations.flatMap(insulationBuilds),
    claddings: parseInput(
      file('cladwright-claddings/1', 'claddings', claddingSchema),
      claddingsJson,
      'claddings.json',
    ).claddings,
    deeper_furring: parseInput(
      z.strictObject({ schema: z.literal('cladwright-furring/1'), deeper: deeperFurringSchema }),
      furringJson,
      'furring.json',
    ).deeper,
    retarders: parseInput(
      file('cladwright-retarders/1', 'retarders', retarderSchema),
      retardersJson,
      'retarders.json',
    ).retarders,
    barriers: parseInput(
      file('cladwright-barriers/1', 'barriers', barrierSchema),
      barriersJson,
      'barriers.json',
    ).barriers,
    bucks: parseInput(file('cladwright-bucks/1', 'bucks', buckSchema), bucksJson, 'bucks.json').bucks,
    sheathings: parseInput(
      file('cladwright-sheathings/1', 'sheathings', sheathingSchema),
      sheathingsJson,
      'sheathings.json',
    ).sheathings,
    materials: parseInput(
      file('cladwright-materials/1', 'materials', materialSchema),
      materialsJson,
      'materials.json',
    ).materials,
    prices: parseInput(pricesSchema, pricesJson, 'prices.json'),
  };
}
