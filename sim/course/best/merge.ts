import { type Label, misplacedJ } from './label.ts';

/** What a label is worth at this instant, with what was granted to it. */
const worthJ = ({ countedJ, grantedJ }: Label) => countedJ + grantedJ;

/** @returns the label with the most, grants included. */
export function worthiest(labels: readonly Label[]): Label {
  return labels.reduce((best, label) => (worthJ(label) > worthJ(best) ? label : best));
}

interface MergeOptions {
  /** Share of a misplaced joule that can be lost for good in what is left of the run. */
  readonly lossFraction: number;
  /** The most that a kept label is granted for one that is merged into it [J]. */
  readonly grantAtMostJ: number;
  /** No more labels are kept than this, whatever has to be granted. */
  readonly most: number;
}

/**
 * Merges labels so that the best that can still come of them never falls.
 *
 * The same things done from two labels end apart by no more than what is lost of the heat that lies worse in one of
 * them: water and heat only pass on, and lose, what they are given. So a label may be left out when a kept one,
 * less that loss, is worth as much; where it falls short by a little, the little is granted to it.
 */
export function merge(labels: Label[], { lossFraction, grantAtMostJ, most }: MergeOptions): Label[] {
  labels.sort((a, b) => worthJ(b) - worthJ(a));
  const grants = labels.map(({ grantedJ }) => grantedJ);
  for (let grantJ = grantAtMostJ; ; grantJ *= 1.5) {
    const kept = mergeOnce(labels, lossFraction, grantJ);
    if (kept.length <= most) return kept;
    for (const [index, label] of labels.entries()) label.grantedJ = grants[index] ?? 0;
  }
}

function mergeOnce(labels: readonly Label[], lossFraction: number, grantAtMostJ: number): Label[] {
  const groups = new Map<number, Label[]>();
  const kept: Label[] = [];
  for (const label of labels) {
    const group = groups.get(label.group) ?? [];
    const nearest = nearestOf(label, group, lossFraction);
    if (nearest !== null && nearest.shortJ <= grantAtMostJ) {
      nearest.label.grantedJ += Math.max(0, nearest.shortJ);
      continue;
    }
    groups.set(label.group, group);
    group.push(label);
    kept.push(label);
  }
  return kept;
}

/** The kept label that has to be granted least in order to stand for another, and how much that is. */
function nearestOf(label: Label, kept: readonly Label[], lossFraction: number) {
  let nearest: { readonly label: Label; readonly shortJ: number } | null = null;
  for (const other of kept) {
    const shortJ = worthJ(label) + lossFraction * misplacedJ(other, label) - worthJ(other);
    if (nearest === null || shortJ < nearest.shortJ) nearest = { label: other, shortJ };
    if (shortJ <= 0) break;
  }
  return nearest;
}
