import type { RequestedOperation } from '../../../shared-types/messages.ts';
import { selectAskedOf, useAsked } from '../store/request-store.ts';
import { goesWell, Outcome } from './outcome.tsx';
import { outcomeText } from './outcome-text.ts';
import { useSentence } from './use-formats.ts';

interface Props {
  /** Kinds of requests that are made here; what came of others is said elsewhere. */
  readonly kinds: readonly RequestedOperation['kind'][];
  /** What was asked, in words. */
  readonly nameOf: (operation: RequestedOperation) => string;
}

/** What came of the newest request, where it was made; the region is there before it. */
export function OutcomeNote({ kinds, nameOf }: Props) {
  const inUnits = useSentence();
  const asked = useAsked(selectAskedOf(kinds));
  const operation = useAsked((state) => state.operation);
  const name = asked.state === 'none' || operation === null ? '' : `${nameOf(operation)}: `;
  return (
    <Outcome good={goesWell(asked)}>
      {name}
      {inUnits(outcomeText(asked))}
    </Outcome>
  );
}
