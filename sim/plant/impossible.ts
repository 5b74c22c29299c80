import type { Parts } from './parts.ts';
import { waterKgL } from './water.ts';

/** Why a loop cannot be, with the numbers that say so. */
export type Impossibility =
  | { readonly code: 'pump-cannot-lift'; readonly shutOffM: number; readonly liftM: number }
  | { readonly code: 'pan-below-store'; readonly belowM: number }
  | { readonly code: 'return-too-small'; readonly carriesLMin: number; readonly ratedLMin: number }
  | { readonly code: 'source-too-small'; readonly heldL: number; readonly neededL: number }
  | { readonly code: 'loss-all-down'; readonly downWM2K: number; readonly stillLossWM2K: number };

/** What no settings can mend in a loop; empty when it can be built. */
export function impossibilities(parts: Parts): readonly Impossibility[] {
  return [...lift(parts), ...fall(parts), ...back(parts), ...source(parts), ...up(parts)];
}

/** An impossibility as one sentence for a person. */
export function impossibilityText(why: Impossibility): string {
  switch (why.code) {
    case 'pump-cannot-lift':
      return (
        `The pump cannot lift the water: it holds ${why.shutOffM.toFixed(2)} m at no flow, and the last ` +
        `water of a fill has to be lifted ${why.liftM.toFixed(2)} m.`
      );
    case 'pan-below-store':
      return (
        `The pan cannot empty by gravity: it lies ${why.belowM.toFixed(2)} m below the top of the store, ` +
        'where its water is to run.'
      );
    case 'return-too-small':
      return (
        `The return pipe is too narrow: it carries ${why.carriesLMin.toFixed(1)} L/min by its fall, and the ` +
        `pump brings ${why.ratedLMin.toFixed(1)} L/min. The pan would run over.`
      );
    case 'source-too-small':
      return (
        `The water does not suffice: pan and pipes hold ${why.neededL.toFixed(0)} L, and only ` +
        `${why.heldL.toFixed(0)} L can be taken.`
      );
    case 'loss-all-down':
      return (
        `The sheet would lose nothing to the air: ${why.downWM2K.toFixed(1)} W/m2K of its ` +
        `${why.stillLossWM2K.toFixed(1)} W/m2K without wind go down through the insulation. An uncovered sheet ` +
        'at least radiates.'
      );
  }
}

/**
 * Height from the lowered water up to the pan, once pan and supply pipe are full [m].
 *
 * The whole lift counts: a return pipe that does not yet run full gives nothing back.
 */
export function fillLiftM(parts: Parts): number {
  return Math.max(0, parts.plumbing.dropM + sourceBelowTopM(parts, parts.pan.fullKg + parts.pipe.fullKg));
}

/** Height from the full store, or reservoir, up to the pan [m]. */
export function firstLiftM(parts: Parts): number {
  return Math.max(0, parts.plumbing.dropM + sourceBelowTopM(parts, 0));
}

/** How deep the source's water stands below its top [m], with so much taken. */
function sourceBelowTopM({ plumbing, store, reservoir }: Parts, takenKg: number): number {
  const { heightM, fullKg, startKg } = plumbing.reservoir
    ? { ...reservoir, fullKg: reservoir.startKg }
    : { ...store, fullKg: store.brimKg };
  return heightM * (1 - Math.max(0, startKg - takenKg) / fullKg);
}

function lift(parts: Parts): Impossibility[] {
  const { shutOffM } = parts.flows;
  const liftM = fillLiftM(parts);
  return liftM < shutOffM ? [] : [{ code: 'pump-cannot-lift', shutOffM, liftM }];
}

function fall({ plumbing: { drain, dropM } }: Parts): Impossibility[] {
  const byGravity = drain === 'pump-stop' || drain === 'drain-valve';
  return byGravity && dropM < 0 ? [{ code: 'pan-below-store', belowM: -dropM }] : [];
}

function back({ pipe, pump, plumbing }: Parts): Impossibility[] {
  if (plumbing.dropM < 0 || pipe.gravityKgS >= pump.ratedKgS) return [];
  const lMin = (kgS: number) => (kgS / waterKgL) * 60;
  return [{ code: 'return-too-small', carriesLMin: lMin(pipe.gravityKgS), ratedLMin: lMin(pump.ratedKgS) }];
}

function source(parts: Parts): Impossibility[] {
  const { plumbing, pan, pipe } = parts;
  const { startKg, leastKg } = plumbing.reservoir ? parts.reservoir : parts.store;
  const pipes = plumbing.siphons ? 2 : 1;
  const neededKg = pan.fullKg + pipes * pipe.fullKg;
  const heldKg = startKg - leastKg;
  if (heldKg >= neededKg) return [];
  return [{ code: 'source-too-small', heldL: heldKg / waterKgL, neededL: neededKg / waterKgL }];
}

/** A dry sheet has only the air to give its heat to: with no way up it would grow hotter without end. */
function up({ traits: { insulationWM2K: downWM2K, stillLossWM2K } }: Parts): Impossibility[] {
  return downWM2K < stillLossWM2K ? [] : [{ code: 'loss-all-down', downWM2K, stillLossWM2K }];
}
