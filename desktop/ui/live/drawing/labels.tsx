import type { Site } from '../../../../shared-types/site.ts';
import { LoopState } from '../loop-state.tsx';
import { Label } from './label.tsx';
import { type LabelPlaces, labelNames } from './label-places.ts';

interface Props {
  readonly site: Site;
  readonly places: LabelPlaces;
}

/** Values and states at their places in the drawing. */
export function LoopLabels({ site, places }: Props) {
  return (
    <g>
      {labelNames.map((name) => {
        const at = places[name];
        if (at === undefined) return null;
        return (
          <LoopState key={name} name={name} site={site}>
            {(view) => <Label view={view} at={at} />}
          </LoopState>
        );
      })}
    </g>
  );
}
