import type { CautionCode } from '../../../shared-types/cautions.ts';
import { Card } from '../shell/card.tsx';
import { CautionNote } from '../site/facts-card.tsx';
import { en } from '../text/en.ts';

const text = en.panCheck.cautions;

/** What whoever looks after a pan has to know first. */
const codes: readonly CautionCode[] = ['fragile-roof', 'hot-sheet', 'mains', 'local-codes'];

/** Always there: a finding sends people to the pan. */
export function PanCautions() {
  return (
    <Card heading={text.heading}>
      <p>{text.lead}</p>
      {codes.map((code) => (
        <CautionNote key={code} code={code} />
      ))}
    </Card>
  );
}
