import { describe, expect, it } from 'vitest';
import { feedbackMessages, readingMessages } from '../../../../sim/device/messages.ts';
import { pumping } from '../../../support/plants.ts';
import { demoContent, siteOf } from '../../../support/sites.ts';

const demo = siteOf(demoContent());
const stamp = { sequence: 4, atMs: 1_000 };
const documents = (sent: { topic: string; payload: string }[]) =>
  Object.fromEntries(sent.map(({ topic, payload }) => [topic, JSON.parse(payload)]));

describe('messages of the device', () => {
  it('carry readings where the demo site looks for them', () => {
    const sent = readingMessages({ panOutletC: 41.25, flowLMin: 24 }, demo, stamp);
    expect(documents(sent)).toEqual({
      'flatwater/quillhaven-wash-house/device/readings': {
        schema: 1,
        sequence: 4,
        atMs: 1000,
        values: { panOutletC: 41.25, flowLMin: 24 },
      },
    });
  });

  it("send a fault as the site's code for it, or as null without one", () => {
    const values = {
      panOutletC: 'open-circuit',
      storeTopC: 'short-circuit',
      flowLMin: 'open-circuit',
    } as const;
    const [message] = readingMessages(values, demo, stamp);
    expect(JSON.parse(message?.payload ?? '').values).toEqual({
      panOutletC: 999,
      storeTopC: -999,
      flowLMin: null,
    });
  });

  it('stand in for any device: topics, pointers, units, factors of the site file', () => {
    const site = siteOf(
      demoContent({
        sensors: {
          panOutletC: { topic: 'roof/a', pointer: '/t/0~1x', unit: 'F' },
          storeBottomC: { topic: 'roof/b', unit: 'C', factor: 0.1, offset: -5 },
          humidityFraction: { topic: 'roof/a', pointer: '/rh', unit: '%' },
          panLevelMm: { topic: 'roof/a', pointer: '/level', unit: 'm' },
        },
      }),
    );
    const values = { panOutletC: 50, storeBottomC: 20, humidityFraction: 0.5, panLevelMm: 40 };
    const { 'roof/a': a, 'roof/b': b } = documents(readingMessages(values, site, stamp));
    expect(a).toEqual({ t: { '0/x': 122 }, rh: 50, level: 0.04 });
    // 250 * 0.1 - 5 is 20.
    expect(b).toBe(250);
  });

  it('say what the outputs do on the own topic and where the site looks', () => {
    const feedback = { ...pumping, expired: false };
    const own = { schema: 1, sequence: 9, ...feedback, ignored: 2 };
    expect(documents(feedbackMessages(feedback, 2, demo, 9))).toEqual({
      'flatwater/quillhaven-wash-house/device/feedback': own,
    });
    const link = {
      kind: 'mqtt',
      outputsTopic: 'roof/out',
      feedback: { topic: 'roof/back', pumpPointer: '/relay', drainPointer: '/valve/open' },
    };
    const elsewhere = siteOf(demoContent({ link }));
    expect(documents(feedbackMessages(feedback, 2, elsewhere, 9))['roof/back']).toEqual({
      relay: 1,
      valve: { open: false },
    });
  });
});

describe('a topic whose values are all missing', () => {
  it('is silent, the own one too when the site listens to it', () => {
    expect(readingMessages({}, demo, stamp)).toEqual([]);
    const sensors = {
      panOutletC: { topic: 'roof/a', unit: 'C' },
      storeBottomC: { topic: 'roof/b', unit: 'C' },
    };
    const site = siteOf(demoContent({ sensors }));
    const topics = readingMessages({ storeBottomC: 20 }, site, stamp).map(({ topic }) => topic);
    expect(topics).toEqual(['flatwater/quillhaven-wash-house/device/readings', 'roof/b']);
  });
});
