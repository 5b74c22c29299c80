import { Component, type ReactNode } from 'react';
import { en } from '../text/en.ts';
import { ProblemNote } from './problem-note.tsx';

interface Props {
  readonly children: ReactNode;
}

/** Keeps a fault of one screen from taking the others with it. */
export class FaultBoundary extends Component<Props, { readonly fault: string | null }> {
  override state: { readonly fault: string | null } = { fault: null };

  static getDerivedStateFromError(thrown: unknown) {
    return { fault: thrown instanceof Error ? thrown.message : String(thrown) };
  }

  override render() {
    if (this.state.fault === null) return this.props.children;
    const text = `${en.shell.screenFailed} (${this.state.fault})`;
    return <ProblemNote problem={{ severity: 'error', text }} />;
  }
}
