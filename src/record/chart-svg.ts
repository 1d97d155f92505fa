import { condensateChartSvg } from './condensate-chart-svg.ts';
import { profileChartSvg } from './profile-chart-svg.ts';
import type { DrawnChart } from './record-document.ts';

/** A chart as inline SVG; null when there is nothing to draw. */
export function chartSvg(chart: DrawnChart): string | null {
  return chart.kind === 'profile' ? profileChartSvg(chart) : condensateChartSvg(chart);
}
