import { panCells } from '../../plant/parts.ts';
import { type PlantState, panLiquidKg } from '../../plant/state.ts';
import { at } from '../../plant/water.ts';
import type { Conditions } from '../../weather/conditions.ts';
import { outsideJ } from '../harvest.ts';
import { clonePlant } from './clone-plant.ts';
import { type Label, labelOf, type Trail, type Way } from './label.ts';
import { lossFractions } from './loss.ts';
import { merge, worthiest } from './merge.ts';
import { liveInMode, type Mode } from './modes.ts';

export interface SearchTask {
  /** The loop as it stands when the run begins; not changed. */
  readonly plant: PlantState;
  readonly modes: readonly Mode[];
  readonly sky: readonly Conditions[];
  readonly stepS: number;
  /** A decision every so many steps. */
  readonly stepsADecision: number;
  /** Grant for a merged label, over the most that any label is worth at that time. */
  readonly grantFraction: number;
  readonly mostLabels: number;
}

export interface SearchResult {
  /** No schedule on this grid of decisions brings more [J]. */
  readonly boundJ: number;
  /** The best schedule that was found, a mode a step, and what it brings [J]. */
  readonly foundJ: number;
  readonly plan: readonly Mode[];
  /** The most labels at any instant. */
  readonly labels: number;
}

/** A grant is reckoned from no less than this share of the sun on the sheet, so that dawn is not searched in vain. */
const leastOfSun = 0.02;

/**
 * The best that anybody could do who knows the whole day: dynamic programming forward in time over true plants.
 *
 * Each label lives on in every mode from decision to decision; labels that are as good as another are merged into
 * it (see `merge`), which never lowers the bound.
 */
export function searchBest(task: SearchTask): SearchResult {
  const { plant, sky, stepS, stepsADecision, grantFraction, mostLabels } = task;
  const outsideAtFirstJ = outsideJ(plant);
  const originC = at(plant.store.waterC, 0);
  const coldestC = Math.min(originC, plant.parts.traits.makeUpC);
  const losses = lossFractions(plant.parts, sky, stepS, coldestC);
  const leastJ = leastOfSun * sunJ(task);
  let labels = [labelOf({ plant, homeJ: 0, grantedJ: 0, trail: null }, originC, outsideAtFirstJ)];
  let mostKept = 1;
  for (let from = 0; from < sky.length; from += stepsADecision) {
    const to = Math.min(sky.length, from + stepsADecision);
    const next = labels.flatMap((label) =>
      waysOn(label, task, from, to).map((way) => labelOf(way, originC, outsideAtFirstJ)),
    );
    const mostJ = next.reduce((most, { countedJ }) => Math.max(most, countedJ), leastJ);
    labels = merge(next, {
      lossFraction: at(losses, to - 1),
      grantAtMostJ: grantFraction * mostJ,
      most: mostLabels,
    });
    mostKept = Math.max(mostKept, labels.length);
  }
  const top = worthiest(labels);
  const found = labels.reduce((best, label) => (label.countedJ > best.countedJ ? label : best));
  return {
    boundJ: top.countedJ + top.grantedJ,
    foundJ: found.countedJ,
    plan: planOf(found.trail, stepsADecision).slice(0, sky.length),
    labels: mostKept,
  };
}

/** What may be done from a label until the next decision. */
function waysOn({ plant, homeJ, grantedJ, trail }: Label, task: SearchTask, from: number, to: number): Way[] {
  const { modes, sky, stepS } = task;
  // Nothing rests in an empty pan.
  const open = panLiquidKg(plant) > 0 ? modes : modes.filter((mode) => mode !== 'rest');
  return open.map((mode) => {
    const after = clonePlant(plant);
    const broughtJ = liveInMode(after, mode, sky, stepS, from, to);
    return { plant: after, homeJ: homeJ + broughtJ, grantedJ, trail: { mode, before: trail } };
  });
}

/** Sun on the level over the water of the pan [J]. */
function sunJ({ plant, sky, stepS }: SearchTask): number {
  const { core, edge } = plant.parts.pan;
  const waterM2 = panCells * (core.wettedM2 + edge.wettedM2);
  return sky.reduce((sum, { irradianceWM2 }) => sum + irradianceWM2 * stepS * waterM2, 0);
}

function planOf(trail: Trail | null, stepsADecision: number): Mode[] {
  const decisions: Mode[] = [];
  for (let part = trail; part !== null; part = part.before) decisions.push(part.mode);
  return decisions.reverse().flatMap((mode) => Array.from({ length: stepsADecision }, () => mode));
}
