import type { Advice, RankedAssembly } from '../advice/advice-schema.ts';
import { monthName } from '../base/month-names.ts';
import type { Block } from './blocks.ts';
import type { Picture } from './command.ts';
import { buckInWords, buckKey, drawBuck } from './draw-buck.ts';
import { condensateDrawing } from './draw-condensate.ts';
import { carryingStep, drawFastening, fasteningInWords, fasteningKey } from './draw-fastening.ts';
import { profileDrawing } from './draw-profile.ts';
import { drawScores, scoresInWords } from './draw-scores.ts';
import { drawSection, sectionKey } from './draw-section.ts';
import { DRAWN_WIDTH, NARROW_WIDTH } from './drawn-width.ts';
import { note, warning } from './notes.ts';

const NOT_FOR_BUILDING = 'A sketch to talk over, not a drawing to build from.';

/** One picture of a ranked wall, with what its marks mean. */
export function pictureBlocks(picture: Picture, wall: RankedAssembly): Block[] {
  switch (picture) {
    case 'section':
      return sectionBlocks(wall);
    case 'temperatures':
      return temperatureBlocks(wall);
    case 'condensate':
      return condensateBlocks(wall);
    case 'scores':
      return scoreBlocks(wall);
    case 'fastening':
      return fasteningBlocks(wall);
    case 'buck':
      return buckBlocks(wall);
  }
}

/** The wall with a rank; a remark when the answer has none such. */
export function wallOfRank(advice: Advice, rank: number | null): RankedAssembly | Block {
  const shown = advice.ranked.length > 0 ? advice.ranked : advice.fallback ? [advice.fallback.assembly] : [];
  const wall = shown[(rank ?? 1) - 1];
  if (wall) return wall;
  if (shown.length === 0) return warning('No wall passes, so there is none to show.');
  return warning(`There is no wall ${rank}: the answer ranks 1 to ${shown.length}.`);
}

/** The wall in section to scale. */
export function sectionBlocks(wall: RankedAssembly): Block[] {
  return [
    { kind: 'heading', text: `Section: ${wall.title}` },
    {
      kind: 'drawing',
      lines: drawSection(wall, DRAWN_WIDTH),
      narrow: drawSection(wall, NARROW_WIDTH),
      key: sectionKey(wall),
      instead: sectionKey(wall),
    },
    note(NOT_FOR_BUILDING),
  ];
}

function temperatureBlocks(wall: RankedAssembly): Block[] {
  const { winter, summer, notes } = wall.temperature_profile;
  const seasons = [winter, summer].filter((season) => season !== null);
  if (seasons.length === 0) {
    return [note('The months of this place are not known, so there are no temperatures to draw.')];
  }
  return [
    ...seasons.flatMap((season): Block[] => [
      { kind: 'heading', text: `Through the wall in ${monthName(season.month)}, °F` },
      profileDrawing(season),
    ]),
    note('T temperature, d dew point, X where they meet and water can form.'),
    ...notes.map(note),
  ];
}

function condensateBlocks({ condensate_by_month, condensate_note }: RankedAssembly): Block[] {
  return [
    { kind: 'heading', text: 'Condensate by month' },
    ...condensateDrawing(condensate_by_month),
    note(condensate_note),
  ];
}

/** The parts of a wall's score as bars. */
export function scoreBlocks(wall: RankedAssembly): Block[] {
  return [
    { kind: 'heading', text: `Score ${wall.score.toFixed(2)}, and its parts from 0 (worst) to 1 (best)` },
    {
      kind: 'drawing',
      lines: drawScores(wall.scores, DRAWN_WIDTH),
      narrow: drawScores(wall.scores, NARROW_WIDTH),
      instead: scoresInWords(wall.scores),
    },
  ];
}

function fasteningBlocks(wall: RankedAssembly): Block[] {
  const step = carryingStep(wall.fastening_schedule.steps);
  if (!step)
    return [note('Nothing goes through the boards into the studs here: there is no fastener to draw.')];
  return [
    { kind: 'heading', text: `Fastening: ${step.fixes}` },
    {
      kind: 'drawing',
      lines: drawFastening(step, DRAWN_WIDTH),
      narrow: drawFastening(step, NARROW_WIDTH),
      key: fasteningKey(step),
      instead: fasteningInWords(step),
    },
    ...(step.verdict === 'design-required'
      ? [warning('Caution (structural): a design professional must size this fastening.')]
      : []),
    note(NOT_FOR_BUILDING),
  ];
}

function buckBlocks(wall: RankedAssembly): Block[] {
  const lines = drawBuck(wall, DRAWN_WIDTH);
  const narrow = drawBuck(wall, NARROW_WIDTH);
  if (!lines || !narrow) return [note('There are no windows in this wall.')];
  return [
    { kind: 'heading', text: 'Foot of the window, cut through; heights not to scale' },
    { kind: 'drawing', lines, narrow, key: buckKey(wall), instead: buckInWords(wall) },
    note(NOT_FOR_BUILDING),
  ];
}
