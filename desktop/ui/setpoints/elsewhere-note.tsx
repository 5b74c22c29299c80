import { Button } from '@mantine/core';
import { settingTitle } from '../../../shared-types/setting-title.ts';
import { en } from '../text/en.ts';
import { changedElsewhere, keepMine, takeTheirs } from './draft.ts';
import { putDraft } from './draft-store.ts';
import type { FormPart } from './form-part.ts';
import styles from './setpoints.module.css';
import { settingText } from './setting-value.ts';

const text = en.setpoints.elsewhere;

/** Says what somebody else has set since the editing began, and lets one choose. */
export function ElsewhereNote({ site, inForce, draft, temperature }: FormPart) {
  const names = changedElsewhere(draft, inForce);
  return (
    <div role="status">
      {names.length === 0 ? null : (
        <section aria-label={text.heading} className={styles['elsewhere']}>
          <h2>{text.heading}</h2>
          <p>{text.lead}</p>
          <ul>
            {names.map((name) => {
              const [from, to] = [draft.base[name], inForce[name]].map((value) =>
                settingText(name, value, temperature),
              );
              const mine = draft.edits[name]?.value ?? null;
              return (
                <li key={name}>
                  {en.setpoints.changes.line(settingTitle(name), from ?? '', to ?? '')}
                  {mine === null ? '' : ` (${text.mine(settingText(name, mine, temperature))})`}
                </li>
              );
            })}
          </ul>
          <p className={styles['soft']}>{text.tip}</p>
          <div className={styles['buttons']}>
            <Button onClick={() => putDraft(site, keepMine(draft, inForce))}>{text.keep}</Button>
            <Button variant="default" onClick={() => putDraft(site, takeTheirs(draft, inForce))}>
              {text.take}
            </Button>
          </div>
        </section>
      )}
    </div>
  );
}
