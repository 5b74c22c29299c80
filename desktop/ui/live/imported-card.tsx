import { isImportedName } from '../../../shared-types/foreign-log.ts';
import { Card } from '../shell/card.tsx';
import { useAddress } from '../shell/use-address.ts';
import { selectSite } from '../store/live-selectors.ts';
import type { LiveState } from '../store/live-store.ts';
import { en } from '../text/en.ts';

const text = en.foreign.live;

export const selectImported = (state: LiveState) => isImportedName(selectSite(state)?.name ?? '');

/** Says why there is nothing live of a site whose days came from another logger. */
export function ImportedCard() {
  const address = useAddress();
  return (
    <Card heading={text.heading}>
      <p>{text.text}</p>
      <p>
        <a href={address({ screen: 'days', day: null })}>{text.toDays}</a>
      </p>
    </Card>
  );
}
