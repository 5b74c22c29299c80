import type { Commissioning } from '../../../shared-types/commissioning.ts';
import { findingText, stepText } from '../explain/commission-text.ts';
import type { CommissionMemory, Finding } from './memory.ts';

function tellFinding({ check, result, values }: Finding): Commissioning['findings'][number] {
  return { check, result, text: findingText(check, result, values) };
}

/** Where a commissioning run stands, for people to read; null when there was none. */
export function tellCommission(memory: CommissionMemory | null): Commissioning | null {
  if (memory === null) return null;
  const { step, findings } = memory;
  return { step, text: stepText(step), findings: findings.map(tellFinding) };
}
