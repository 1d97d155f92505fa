import { decidedWall } from '../decided-wall.ts';
import { documentHtml } from '../document-html.ts';
import { documentMarkdown } from '../record-markdown.ts';
import type { DecisionRecord } from '../record-schema.ts';
import { areaOf, composeBuildSheet } from './compose-build-sheet.ts';
import { sitePractice } from './site-practice.ts';
import { takeOff } from './take-off.ts';
import { takeOffCsv } from './take-off-csv.ts';

export type BuildSheet = {
  /** One self-contained page of one or two printed sides. */
  readonly html: string;
  readonly markdown: string;
  /** The take-off for a spreadsheet. */
  readonly csv: string;
};

/** The build sheet of a record; null when no wall is decided on. */
export function buildSheet(record: DecisionRecord): BuildSheet | null {
  const wall = decidedWall(record.advice);
  if (!wall) return null;
  const practice = sitePractice();
  const lines = takeOff({ wall, wall_area_ft2: areaOf(wall), practice });
  const document = composeBuildSheet(record, wall, lines, practice);
  return {
    html: documentHtml(document, 'Build sheet', 'build-sheet'),
    markdown: documentMarkdown({ ...document, title: `Build sheet: ${document.title}` }),
    csv: takeOffCsv(lines),
  };
}
