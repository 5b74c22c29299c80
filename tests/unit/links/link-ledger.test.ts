import { describe, expect, it } from 'vitest';
import type { LinkReport } from '../../../controller/links/link.ts';
import { createLinkLedger } from '../../../controller/links/link-ledger.ts';

function ledgerWithReports() {
  const reports: LinkReport[] = [];
  return { reports, ledger: createLinkLedger('mqtt', 'broker b', (report) => reports.push(report)) };
}

describe('link ledger', () => {
  it('counts messages and reports each cause once', () => {
    const { ledger, reports } = ledgerWithReports();
    ledger.taken();
    ledger.ignored('first');
    ledger.ignored('first', 'second');
    ledger.ignored('second');
    expect(ledger.health()).toMatchObject({ taken: 1, ignored: 3, lastIgnored: 'second' });
    expect(reports.map(({ text }) => text)).toEqual(['first', 'second']);
  });

  it('says once that it is lost, however often that is noticed, and counts the loss', () => {
    const { ledger, reports } = ledgerWithReports();
    ledger.connected();
    ledger.disconnected('pulled');
    ledger.disconnected('refused');
    ledger.connected();
    ledger.disconnected('pulled again');
    expect(ledger.health()).toMatchObject({ connected: false, losses: 2 });
    expect(reports).toEqual([
      { kind: 'link-lost', text: 'broker b is lost: pulled' },
      { kind: 'link-back', text: 'broker b is back' },
      { kind: 'link-lost', text: 'broker b is lost: pulled again' },
    ]);
  });

  it('does not call it a loss when it was never reached', () => {
    const { ledger, reports } = ledgerWithReports();
    ledger.disconnected('refused');
    ledger.disconnected('refused');
    expect(ledger.health()).toMatchObject({ connected: false, losses: 0 });
    expect(reports).toEqual([{ kind: 'link-lost', text: 'broker b is not reached: refused' }]);
  });

  it('says nothing when it is reached at once', () => {
    const { ledger, reports } = ledgerWithReports();
    ledger.connected();
    expect(reports).toEqual([]);
    expect(ledger.health().connected).toBe(true);
  });
});
