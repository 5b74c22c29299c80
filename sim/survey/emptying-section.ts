import type { Settings } from '../../shared-types/settings.ts';
import { drainTimeS } from '../physics/draining.ts';
import { leastFallFraction } from '../physics/siphon.ts';
import type { Parts } from '../plant/parts.ts';
import { waterKgL } from '../plant/water.ts';
import { wettedM2 } from './pan-body.ts';
import { type Figure, figure, type Remark, type Section, warnIf } from './report.ts';
import type { Trial } from './trial.ts';

/** Discharge coefficient of a sharp-edged hole. */
const sharpEdge = 0.62;

/** How the pan empties, and whether its water finds room. */
export function emptyingSection(parts: Parts, settings: Settings, trial: Trial): Section {
  const { plumbing } = parts;
  return {
    title: 'Emptying, store and reservoir',
    figures: [...(plumbing.drain === 'none' ? [] : drainFigures(parts, settings, trial)), ...room(parts)],
    warnings: [
      ...(plumbing.drain === 'none' ? noDrain : drainWarnings(parts, settings, trial)),
      ...(plumbing.reservoir || plumbing.drain === 'none' ? [] : roomWarnings(parts)),
    ],
  };
}

const noDrain: readonly Remark[] = [
  {
    code: 'no-drain',
    text: 'The pan cannot be emptied: in frost warm water of the store is all that keeps ice away.',
  },
];

function slopeOf({ plumbing, traits }: Parts): number {
  return traits.pipeBeyondM === 0 ? Number.POSITIVE_INFINITY : plumbing.dropM / traits.pipeBeyondM;
}

function drainFigures(
  parts: Parts,
  { drainTimeS: settingS }: Settings,
  { fillS, drainS }: Trial,
): readonly Figure[] {
  const { pan, drain, traits } = parts;
  const holeS = drainTimeS(wettedM2(parts), traits.drainInsideMm / 1000, pan.depthM, 0, sharpEdge);
  const slope = slopeOf(parts);
  return [
    ...(fillS === null
      ? []
      : [
          figure(
            'Drain time',
            drainS,
            's',
            `Setting: empty by ${settingS} s. Frost must be seen coming earlier than that.`,
          ),
        ]),
    figure(
      'Through a bare hole of that width',
      holeS,
      's',
      'By Torricelli on a level floor, with an edge as sharp; a floor that falls to it is faster.',
    ),
    figure('Flow of the full drain line', (drain.fullKgS / waterKgL) * 60, 'L/min', 'By its own fall.'),
    ...(Number.isFinite(slope)
      ? [figure('Fall of the pipes', 100 * slope, '%', 'Below 2.1 % water stays in them and freezes.')]
      : []),
  ];
}

function drainWarnings(parts: Parts, settings: Settings, { drainS }: Trial): readonly Remark[] {
  const { dropM, drain } = parts.plumbing;
  const slope = slopeOf(parts);
  return [
    ...warnIf(
      drainS !== null && drainS > settings.drainTimeS,
      'drain-time',
      `The pan takes ${drainS?.toFixed(0)} s to empty; drainTimeS expects it within ${settings.drainTimeS} s.`,
    ),
    ...warnIf(
      dropM >= 0 && slope < leastFallFraction,
      'slope',
      `The pipes fall by ${(100 * slope).toFixed(1)} %; they need 2.1 % to run empty.`,
    ),
    ...warnIf(
      drain === 'drain-pump' && dropM < 0,
      'return-uphill',
      `The pan lies ${(-dropM).toFixed(2)} m below the top of the store: what leaves its outlet needs a pump too.`,
    ),
  ];
}

/** Water that a full loop has taken out of its source. */
function awayL({ pan, pipe, plumbing }: Parts): number {
  return (pan.fullKg + (plumbing.siphons ? 2 : 1) * pipe.fullKg) / waterKgL;
}

function room(parts: Parts): readonly Figure[] {
  const { store, plumbing } = parts;
  const outL = awayL(parts);
  const stays = plumbing.drain === 'none';
  const away = figure(
    'Water in full pan and pipes',
    outL,
    'L',
    stays ? 'It stays out all season.' : 'All of it comes home when the pan empties.',
  );
  if (plumbing.reservoir) return [away];
  return [
    away,
    figure('Headroom of the store', (store.brimKg - store.startKg) / waterKgL, 'L', 'Room for that water.'),
    figure(
      'Left in the store while the pan is full',
      store.startKg / waterKgL - outL,
      'L',
      'To be drawn by day.',
    ),
  ];
}

function roomWarnings(parts: Parts): readonly Remark[] {
  const headroomL = (parts.store.brimKg - parts.store.startKg) / waterKgL;
  const outL = awayL(parts);
  return warnIf(
    headroomL < outL,
    'headroom',
    `The store has room for ${headroomL.toFixed(0)} L; pan and pipes bring ${outL.toFixed(0)} L home. A store ` +
      'that was topped up in the meantime runs over.',
  );
}
