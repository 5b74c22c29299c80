import { describe, expect, it } from 'vitest';
import { createPublishRule } from '../../../controller/links/broker-rules.ts';
import { demoContent, siteOf } from '../../support/sites.ts';

const site = siteOf(demoContent({ link: { kind: 'mqtt', outputsTopic: 'shed/relays/set' } }));
const root = `flatwater/${site.name}`;
const rule = createPublishRule(site);
const from = (fromController: boolean) => (topic: string, retain: boolean) =>
  rule({ topic, retain, fromController });
const controller = from(true);
const anybody = from(false);

const ofTheController = ['snapshot', 'status', 'site', 'answer', 'device/outputs'].map(
  (name) => `${root}/${name}`,
);
const ofAnybody = ['device/readings', 'device/feedback', 'device/status', 'device/fault', 'request'].map(
  (name) => `${root}/${name}`,
);

describe('who may publish what at the embedded broker', () => {
  it.each([...ofTheController, 'shed/relays/set'])('%s: the controller alone', (topic) => {
    expect(controller(topic, false)).toBeUndefined();
    expect(anybody(topic, false)).toMatch(/only the controller/);
  });
  it.each([...ofAnybody, 'any/other/topic', `${root}/snapshot/more`, 'flatwater/elsewhere/snapshot'])(
    '%s: anybody',
    (topic) => {
      expect(controller(topic, false)).toBeUndefined();
      expect(anybody(topic, false)).toBeUndefined();
    },
  );
  it.each([`${root}/device/outputs`, 'shed/relays/set', `${root}/request`])(
    '%s: never retained, not even by the controller',
    (topic) => {
      expect(controller(topic, true)).toMatch(/retained/);
      expect(anybody(topic, true)).toBeDefined();
    },
  );
  it('what the controller says of itself may be retained', () => {
    expect(controller(`${root}/snapshot`, true)).toBeUndefined();
    expect(controller(`${root}/status`, true)).toBeUndefined();
  });
  it.each(['$SYS/broker', '$share/a/b', '$'])('%s: nobody', (topic) => {
    expect(controller(topic, false)).toBeDefined();
    expect(anybody(topic, false)).toBeDefined();
  });
});
