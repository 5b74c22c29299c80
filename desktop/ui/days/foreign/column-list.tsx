import { NativeSelect } from '@mantine/core';
import { otherChannels, temperatureChannels } from '../../../../shared-types/channels.ts';
import type { FileHead } from '../../../../shared-types/foreign-log.ts';
import { en } from '../../text/en.ts';
import { type Draft, type Role, roleTitle, unitsOf, withColumn, withRole } from './draft.ts';
import styles from './foreign.module.css';

const text = en.foreign;

interface Props {
  readonly head: FileHead;
  readonly draft: Draft;
  readonly onChange: (draft: Draft) => void;
}

const option = (role: Role) => ({ value: role as string, label: roleTitle(role) });

const roles = [
  option('none'),
  option('time'),
  { group: text.roles.measured, items: [...temperatureChannels, ...otherChannels].map(option) },
  { group: text.roles.other, items: [option('pump'), option('drain')] },
];

/** Each column of the file with its first cell: what it is, in which unit. */
export function ColumnList({ head, draft, onChange }: Props) {
  return (
    <ul className={styles['columns']}>
      {draft.columns.map(({ name, role, unit }, place) => {
        const called = name === '' ? text.unnamed(place + 1) : name;
        const units = unitsOf(role);
        return (
          // biome-ignore lint/suspicious/noArrayIndexKey: two columns may have one name, and none moves.
          <li key={place} className={styles['column']}>
            <bdi className={styles['name']}>{called}</bdi>
            <span className={styles['soft']}>{text.firstRow(head.rows[0]?.[place] ?? '')}</span>
            <div className={styles['choices']}>
              <NativeSelect
                aria-label={text.role(called)}
                value={role}
                data={roles}
                onChange={(event) => onChange(withRole(draft, place, event.currentTarget.value as Role))}
              />
              {units.length === 0 ? null : (
                <NativeSelect
                  aria-label={text.unit(called)}
                  value={unit}
                  data={units.map((value) => ({ value, label: unitLabel(role, value) }))}
                  onChange={(event) =>
                    onChange(withColumn(draft, place, { unit: event.currentTarget.value }))
                  }
                />
              )}
            </div>
          </li>
        );
      })}
    </ul>
  );
}

const pumpUnits: Readonly<Record<string, string>> = text.pumpUnits;
const unitLabel = (role: Role, unit: string) => (role === 'pump' ? (pumpUnits[unit] ?? unit) : unit);
