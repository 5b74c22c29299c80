import { describe, expect, it } from 'vitest';
import { isLoopbackHost, startOwnBroker } from '../../../../controller/daemon/own-broker.ts';
import { demoContent, siteOf } from '../../../support/sites.ts';

const notes = { note: () => undefined, watchLog: () => undefined };
const clientCredentials = { username: 'roof', password: 'sun on the sheet' };

describe('the embedded broker of a controller', () => {
  it.each([
    ['127.0.0.1', true],
    ['127.8.0.1', true],
    ['::1', true],
    ['localhost', true],
    ['0.0.0.0', false],
    ['::', false],
    ['', false],
    ['192.0.2.1', false],
    ['127.example.org', false],
  ])("at '%s' is of this machine alone: %s", (host, expected) => {
    expect(isLoopbackHost(host)).toBe(expected);
  });

  const saidAt = async (host: string, access: object) => {
    const said: string[] = [];
    const site = siteOf(demoContent({ broker: { host, port: 0 } }));
    const broker = await startOwnBroker({ site, say: (line) => said.push(line), ...access }, notes);
    await broker?.close();
    return said;
  };

  it('says at its start that it lets anybody in, where it does beyond this machine', async () => {
    expect(await saidAt('0.0.0.0', {})).toEqual([
      expect.stringMatching(
        /^caution: the broker at 0\.0\.0\.0 lets in anybody .* username and a passwordFile$/,
      ),
    ]);
    expect(await saidAt('0.0.0.0', { clientCredentials })).toEqual([]);
    expect(await saidAt('127.0.0.1', {})).toEqual([]);
  });
});
