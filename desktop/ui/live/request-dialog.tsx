import { Button, Group, Modal } from '@mantine/core';
import { useRef } from 'react';
import { en } from '../text/en.ts';
import styles from './request-dialog.module.css';
import type { RequestPlan } from './request-plan.ts';

interface Props {
  readonly plan: RequestPlan | null;
  readonly onConfirm: (plan: RequestPlan) => void;
  readonly onCancel: () => void;
}

/** Asks again before something that has a consequence; the harmless way out has the focus. */
export function RequestDialog({ plan, onConfirm, onCancel }: Props) {
  // The words stay while the dialog fades away.
  const last = useRef<RequestPlan | null>(null);
  if (plan !== null) last.current = plan;
  const shown = plan ?? last.current;
  return (
    <Modal
      opened={plan !== null}
      onClose={onCancel}
      centered
      classNames={{ title: styles['title'] ?? '' }}
      title={shown === null ? '' : en.requests.confirmTitle(shown.button)}
      closeButtonProps={{ 'aria-label': en.requests.cancel }}
      // The head of a dialog is no banner of the page.
      attributes={{ header: { role: 'presentation' } }}
      transitionProps={{ duration: 0 }}
    >
      <p>{shown?.says}</p>
      <p className={styles['consequence']}>{shown?.consequence}</p>
      <Group justify="flex-end" mt="md">
        <Button variant="default" onClick={onCancel} data-autofocus>
          {en.requests.cancel}
        </Button>
        <Button onClick={() => shown !== null && onConfirm(shown)}>
          {shown === null ? '' : en.requests.confirm(shown.button)}
        </Button>
      </Group>
    </Modal>
  );
}
