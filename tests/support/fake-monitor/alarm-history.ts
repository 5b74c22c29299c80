import type { LogEvent, LogFacts } from '../../../shared-types/log.ts';
import { testNowMs } from './snapshot.ts';

const hourMs = 3_600_000;

const event = (hoursAgo: number, kind: LogEvent['kind'], text: string, values: LogEvent['values'] = {}) => ({
  atMs: testNowMs - hoursAgo * hourMs,
  kind,
  text,
  values,
});

const flowLow = { alarm: 'flow-low', priority: 'soon', flowLMin: 4.1 };
const sensor = { alarm: 'sensor-failed', priority: 'when-convenient' };

/** Made-up events of alarms and a commissioning run, the newest first. */
export const testEvents: readonly LogEvent[] = [
  event(27.5, 'alarm-returned', 'Little water flows. 4.1 of 14.0 L/min pass.', flowLow),
  event(28, 'alarm-acknowledged', 'Little water flows. 4.1 of 14.0 L/min pass.', flowLow),
  event(28.5, 'alarm-raised', 'Little water flows. 4.1 of 14.0 L/min pass.', flowLow),
  event(100, 'commissioning-done', 'The run is done.', { 'fill-time': 'passed', 'drain-time': 'by-hand' }),
  event(200, 'alarm-returned', 'A sensor failed: <b>Wind</b>.', sensor),
  event(224, 'alarm-raised', 'A sensor failed: <b>Wind</b>.', sensor),
];

export const testLogFacts: LogFacts = {
  sizeBytes: 48_234_496,
  firstMs: testNowMs - 43 * 24 * hourMs,
  lastMs: testNowMs,
  days: 42,
  steps: 725_760,
  runs: 3,
};
