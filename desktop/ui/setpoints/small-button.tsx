import { Button } from '@mantine/core';
import type { ReactNode } from 'react';

interface Props {
  /** Says in full what the short words beside a field leave open. */
  readonly label: string;
  readonly onClick: () => void;
  readonly children: ReactNode;
}

export function SmallButton({ label, onClick, children }: Props) {
  return (
    <Button variant="default" size="compact-sm" aria-label={label} title={label} onClick={onClick}>
      {children}
    </Button>
  );
}
