import { posix } from 'node:path';
import type { Stryker } from '@stryker-mutator/core';
import type { Equivalent } from './equivalent.ts';

type Result = Awaited<ReturnType<Stryker['runMutationTest']>>[number];

/** One change of the source that no test noticed. */
interface Survivor {
  readonly file: string;
  readonly line: number;
  readonly from: string;
  readonly to: string;
  readonly reached: boolean;
}

interface Count {
  noticed: number;
  /** Noticed, or not, but not known to be equivalent either. */
  all: number;
  equivalent: number;
}

const room = 'controller/engine/';

/**
 * The score of each folder and of the whole as lines to print, with every change that went unnoticed.
 *
 * A change that makes an endless loop counts as noticed. One that is known to be equivalent counts for nothing;
 * an entry among these that no longer fits is named.
 *
 * @param sourceOf - A file below the engine as it was when the run began: it may have changed since.
 */
export function scored(
  results: readonly Result[],
  equivalents: readonly Equivalent[],
  sourceOf: (file: string) => string,
) {
  const counts = new Map<string, Count>();
  const survivors: Survivor[] = [];
  const used = new Set<Equivalent>();
  for (const result of results) {
    if (result.status === 'Ignored' || result.status === 'CompileError') continue;
    const survivor = survivorOf(result, sourceOf(inRoom(result.fileName)));
    const folder = posix.dirname(survivor.file) === '.' ? survivor.file : posix.dirname(survivor.file);
    const count = counts.get(folder) ?? { noticed: 0, all: 0, equivalent: 0 };
    counts.set(folder, count);
    const survived = result.status === 'Survived' || result.status === 'NoCoverage';
    const known = survived ? equivalents.find((one) => isSame(one, survivor)) : undefined;
    if (known !== undefined) {
      used.add(known);
      count.equivalent++;
      continue;
    }
    count.all++;
    if (survived) survivors.push(survivor);
    else count.noticed++;
  }
  const files = new Set(results.map(({ fileName }) => inRoom(fileName)));
  const stale = equivalents.filter((one) => files.has(one.file) && !used.has(one));
  const whole = [...counts.values()].reduce(
    (sum, { noticed, all, equivalent }) => ({
      noticed: sum.noticed + noticed,
      all: sum.all + all,
      equivalent: sum.equivalent + equivalent,
    }),
    { noticed: 0, all: 0, equivalent: 0 },
  );
  const lines = [
    ...survivors.map(
      ({ file, line, from, to, reached }) =>
        `${file}:${line}${reached ? '' : ' (no test comes here)'}: ${from}  ->  ${to}`,
    ),
    ...stale.map(({ file, from }) => `no longer survives, or is no longer there: ${file}: ${from}`),
    ...[...counts].sort(([a], [b]) => (a < b ? -1 : 1)).map(([folder, count]) => lineOf(folder, count)),
    lineOf('whole', whole),
  ];
  return { lines, score: percent(whole) };
}

function lineOf(name: string, count: Count): string {
  const { noticed, all, equivalent } = count;
  return `${name}: ${percent(count).toFixed(1)} %: ${noticed} of ${all} noticed, ${equivalent} equivalent`;
}

function percent({ noticed, all }: Count): number {
  return all === 0 ? 100 : (100 * noticed) / all;
}

function inRoom(fileName: string): string {
  const path = fileName.replaceAll('\\', '/');
  return path.slice(path.indexOf(room) + room.length);
}

function isSame(one: Equivalent, { file, from, to }: Survivor): boolean {
  return one.file === file && one.from === from && one.to === to;
}

function survivorOf({ fileName, location, replacement = '', status }: Result, source: string): Survivor {
  const { start, end } = location;
  const text = source.split('\n').slice(start.line - 1, end.line);
  text[text.length - 1] = text.at(-1)?.slice(0, end.column - 1) ?? '';
  text[0] = text[0]?.slice(start.column - 1) ?? '';
  return {
    file: inRoom(fileName),
    line: start.line,
    from: withSingleBlanks(text.join('\n')),
    to: withSingleBlanks(replacement),
    reached: status !== 'NoCoverage',
  };
}

function withSingleBlanks(text: string): string {
  return text.replace(/\s+/g, ' ').trim();
}
