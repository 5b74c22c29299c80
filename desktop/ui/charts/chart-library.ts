import { Chart, LinearScale, LineController, LineElement, PointElement, Tooltip } from 'chart.js';
import zoomPlugin from 'chartjs-plugin-zoom';
import type { TimeDataset } from './datasets.ts';

Chart.register(LineController, LineElement, PointElement, LinearScale, Tooltip, zoomPlugin);

export { Chart };
export type TimeChart = Chart<'line', TimeDataset['data']>;
