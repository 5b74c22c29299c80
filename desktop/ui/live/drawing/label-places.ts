import type { Elevation } from '../elevation.ts';
import type { Pipes } from '../pipes.ts';

/** Where a text begins, has its middle or ends. */
export interface Place {
  readonly x: number;
  readonly y: number;
  readonly anchor: 'start' | 'middle' | 'end';
}

export const labelNames = [
  'inlet',
  'sheet',
  'outlet',
  'storeTop',
  'storeMiddle',
  'storeBottom',
  'water',
  'drain',
  'pump',
  'flow',
  'reservoir',
] as const;
export type LabelName = (typeof labelNames)[number];

/** The labels that the drawing has room for; the others stand below it. */
export type LabelPlaces = Readonly<Partial<Record<LabelName, Place>>>;

/** Height of a label's two lines [px]. */
const labelPx = 36;

/** Where the labels stand: beside what they name, clear of pipes and of each other. */
export function labelPlaces(elevation: Elevation, pipes: Pipes): LabelPlaces {
  return {
    ...panPlaces(elevation),
    ...storePlaces(elevation),
    ...(elevation.onRoof ? indoorPlaces(elevation, pipes) : {}),
  };
}

/** Widths of the pan from which two and three labels fit above it [px]. */
const twoFitPx = 140;
const threeFitPx = 220;

function panPlaces({ pan }: Elevation): LabelPlaces {
  const y = pan.top - 38;
  const width = pan.right - pan.left;
  return {
    outlet: { x: pan.right, y, anchor: 'end' },
    ...(width < twoFitPx ? {} : { inlet: { x: pan.left, y, anchor: 'start' } }),
    ...(width < threeFitPx ? {} : { sheet: { x: (pan.left + pan.right) / 2, y, anchor: 'middle' } }),
  };
}

/** On the free side of the store, at even distances, above the pipe that leaves it. */
function storePlaces({ store, onRoof }: Elevation): LabelPlaces {
  const roomy = store.bottom - store.top >= 4 * labelPx;
  const firstY = store.top + (roomy ? 12 : 2);
  const lastY = Math.max(firstY + (roomy ? 2 : 1) * labelPx, store.bottom - labelPx - 26);
  const at = (y: number): Place =>
    onRoof ? { x: store.left - 10, y, anchor: 'end' } : { x: store.right + 10, y, anchor: 'start' };
  return {
    storeTop: at(firstY),
    ...(store.bottom - store.top < 2 * labelPx ? {} : { storeBottom: at(lastY) }),
    ...(roomy ? { storeMiddle: at((firstY + lastY) / 2) } : {}),
  };
}

/** Below a roof there is room for what pan, drain and pump do. */
function indoorPlaces(elevation: Elevation, pipes: Pipes): LabelPlaces {
  const { pan, roof, store, groundY } = elevation;
  const x = pan.left + 12;
  const roomy = store.bottom - store.top >= 4 * labelPx && store.left - x > 190;
  return {
    water: { x, y: roof.bottom + 18, anchor: 'start' },
    ...(pipes.valve === undefined
      ? {}
      : { drain: { x: pipes.valve.x - 16, y: pipes.valve.y - 6, anchor: 'end' } }),
    ...(roomy
      ? {
          flow: { x, y: groundY - 2 * labelPx - 34, anchor: 'start' },
          pump: { x, y: groundY - labelPx - 26, anchor: 'start' },
        }
      : {}),
    ...reservoirPlace(elevation),
  };
}

/** Room for the reservoir's label between the store and the return [px]. */
const reservoirLabelPx = 80;

/** Above the reservoir, left of the return that comes down into it. */
function reservoirPlace({ pan, roof, store, reservoir }: Elevation): LabelPlaces {
  const rightX = pan.right + 2;
  if (reservoir === undefined || rightX - store.right < reservoirLabelPx) return {};
  if (reservoir.top - roof.bottom < labelPx + 20) return {};
  return { reservoir: { x: rightX, y: reservoir.top - labelPx + 8, anchor: 'end' } };
}
