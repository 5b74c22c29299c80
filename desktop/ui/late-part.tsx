import { type ComponentType, type ReactNode, useEffect, useReducer } from 'react';
import { loadPart } from './load-part.ts';
import { en } from './text/en.ts';

/** A component whose module is fetched when it is first shown. */
export interface LatePart<Props> {
  there: ComponentType<Props> | undefined;
  readonly load: () => Promise<{ readonly default: ComponentType<Props> }>;
}

export function latePart<Props>(load: LatePart<Props>['load']): LatePart<Props> {
  return { there: undefined, load };
}

interface LateProps<Props> {
  readonly part: LatePart<Props>;
  readonly props: Props;
  /** Stands there meanwhile. */
  readonly waiting?: ReactNode;
}

/**
 * Shows a late part as soon as it is there. A `Suspense` around a lazy component would hold it back for 300 ms, so that
 * its words of waiting do not flash.
 */
export function Late<Props extends object>({
  part,
  props,
  waiting = <p>{en.shell.loading}</p>,
}: LateProps<Props>) {
  const [, lookAgain] = useReducer((looks: number) => looks + 1, 0);
  useEffect(() => {
    if (part.there !== undefined) return;
    let shown = true;
    void loadPart(part.load).then((module) => {
      part.there = module.default;
      if (shown) lookAgain();
    });
    return () => {
      shown = false;
    };
  }, [part]);
  const Part = part.there;
  return Part === undefined ? waiting : <Part {...props} />;
}
