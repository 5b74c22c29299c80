import type { ReactNode } from 'react';
import type { Channel } from '../../../shared-types/channels.ts';
import type { Site } from '../../../shared-types/site.ts';
import { selectWater } from '../store/decision-selectors.ts';
import { useLive } from '../store/live-store.ts';
import { selectDrainOpen, selectDrainPumpOn } from '../store/output-selectors.ts';
import { en } from '../text/en.ts';
import type { LabelName } from './drawing/label-places.ts';
import type { ReadingView } from './reading-view.ts';
import { usePumpState } from './use-pump-state.ts';
import { useReadingView } from './use-reading-view.ts';

const text = en.live.drawing;

interface Props {
  readonly name: LabelName;
  readonly site: Site;
  /** Draws it where it belongs. */
  readonly children: (view: ReadingView) => ReactNode;
}

const sensors: Readonly<Partial<Record<LabelName, Channel>>> = {
  inlet: 'panInletC',
  sheet: 'panSheetC',
  outlet: 'panOutletC',
  storeTop: 'storeTopC',
  storeMiddle: 'storeMiddleC',
  storeBottom: 'storeBottomC',
  flow: 'flowLMin',
  reservoir: 'reservoirC',
};

/** One value or state of the loop by its name; nothing where the site has no such part. */
export function LoopState({ name, site, children }: Props) {
  const channel = sensors[name];
  if (channel !== undefined) return <SensorState channel={channel}>{children}</SensorState>;
  if (name === 'pump') return <PumpState>{children}</PumpState>;
  if (name === 'drain') return <DrainState site={site}>{children}</DrainState>;
  return <WaterState>{children}</WaterState>;
}

type Draw = Pick<Props, 'children'>;

const view = (title: string, value: string): ReadingView => ({
  title,
  value,
  look: 'fresh',
  note: undefined,
});

function SensorState({ channel, children }: Draw & { readonly channel: Channel }) {
  const reading = useReadingView(channel);
  return reading === undefined ? null : children(reading);
}

function PumpState({ children }: Draw) {
  return children(view(text.pump, usePumpState()));
}

function DrainState({ site, children }: Draw & { readonly site: Site }) {
  const open = useLive(selectDrainOpen);
  const pumping = useLive(selectDrainPumpOn);
  if (site.drain === 'none' || site.drain === 'pump-stop') return null;
  const state = site.drain === 'drain-pump' ? text.drainPump[`${pumping}`] : text.drainIs[`${open}`];
  return children(view(text.drain, state));
}

function WaterState({ children }: Draw) {
  return children(view(text.pan, text.water[useLive(selectWater)]));
}
