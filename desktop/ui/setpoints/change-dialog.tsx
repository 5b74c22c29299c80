import { Button, Group, Modal } from '@mantine/core';
import { en } from '../text/en.ts';
import { ChangeList } from './change-list.tsx';
import { editedNames } from './draft.ts';
import type { FormPart } from './form-part.ts';
import styles from './setpoints.module.css';

const text = en.setpoints.dialog;

interface Props extends Pick<FormPart, 'draft' | 'temperature'> {
  readonly opened: boolean;
  readonly onConfirm: () => void;
  readonly onCancel: () => void;
}

/** Names every change once more before it is sent; the harmless way out has the focus. */
export function ChangeDialog({ opened, draft, temperature, onConfirm, onCancel }: Props) {
  return (
    <Modal
      opened={opened}
      onClose={onCancel}
      centered
      classNames={{ title: styles['dialogTitle'] ?? '' }}
      title={text.title(editedNames(draft).length)}
      closeButtonProps={{ 'aria-label': text.cancel }}
      transitionProps={{ duration: 0 }}
    >
      <ChangeList draft={draft} temperature={temperature} />
      <p>{text.consequence}</p>
      <Group justify="flex-end" mt="md">
        <Button variant="default" onClick={onCancel} data-autofocus>
          {text.cancel}
        </Button>
        <Button onClick={onConfirm}>{text.confirm}</Button>
      </Group>
    </Modal>
  );
}
