import { describe, expect, it } from 'vitest';
import { createMapping, maximumPayloadBytes } from '../../../controller/links/mapping.ts';
import { demoContent, siteOf } from '../../support/sites.ts';

const bytes = (text: string) => new TextEncoder().encode(text);

/** A site whose sensors speak in four manners: bare numbers, JSON members, array items, texts. */
const site = siteOf(
  demoContent({
    sensors: {
      panOutletC: { topic: 'roof/outlet', unit: 'C' },
      storeBottomC: { topic: 'cellar/store', pointer: '/bottom', unit: 'K' },
      storeTopC: { topic: 'cellar/store', pointer: '/layers/1', unit: 'C' },
      humidityFraction: { topic: 'roof/air', pointer: '/rh', unit: '%', unreadableCode: -1 },
    },
    link: {
      kind: 'mqtt',
      outputsTopic: 'roof/outputs',
      feedback: { topic: 'roof/relays', pumpPointer: '/pump', drainPointer: '/drain' },
    },
  }),
);
const mapping = createMapping(site);
const read = (topic: string, payload: string, retained = false) =>
  mapping.read(topic, bytes(payload), retained);

describe('mapping of messages', () => {
  it('listens to each topic once', () => {
    expect([...mapping.topics].sort()).toEqual(['cellar/store', 'roof/air', 'roof/outlet', 'roof/relays']);
  });

  it.each(['41.5', '"41.5"', ' 41.5\n'])("takes the bare payload '%s'", (payload) => {
    expect(read('roof/outlet', payload)).toEqual({
      readings: [['panOutletC', { value: 41.5 }]],
      feedback: null,
      faults: [],
    });
  });

  it('takes several channels from one message, each in its unit', () => {
    const { readings, faults } = read('cellar/store', '{"bottom": 300.15, "layers": [20, "61.5"]}');
    expect(faults).toEqual([]);
    expect(readings).toEqual([
      ['storeBottomC', { value: expect.closeTo(27, 9) }],
      ['storeTopC', { value: 61.5 }],
    ]);
  });

  it('takes what is there, and blames what is there but no number', () => {
    expect(read('cellar/store', '{"bottom": 300.15}')).toMatchObject({
      readings: [['storeBottomC', {}]],
      faults: [],
    });
    const partly = read('cellar/store', '{"bottom": null, "layers": [20, 61.5]}');
    expect(partly.readings).toEqual([['storeTopC', { value: 61.5 }]]);
    expect(partly.faults).toEqual(['cellar/store: no usable number for storeBottomC']);
  });

  it('passes a fault code on as a fault', () => {
    expect(read('roof/air', '{"rh": -1}').readings).toEqual([
      ['humidityFraction', { value: null, fault: 'unreadable' }],
    ]);
  });

  it.each([
    ['{"bottom": 1', 'neither JSON nor a number'],
    ['', 'neither JSON nor a number'],
    ['NaN', 'neither JSON nor a number'],
    ['{"other": 1}', 'nothing that the site file looks for'],
    ['5', 'nothing that the site file looks for'],
    ['[1, 2]', 'nothing that the site file looks for'],
    ['null', 'nothing that the site file looks for'],
  ])("ignores the payload '%s'", (payload, cause) => {
    expect(read('cellar/store', payload)).toEqual({
      readings: [],
      feedback: null,
      faults: [`cellar/store: ${cause}`],
    });
  });

  it('ignores bytes that are no text', () => {
    const { faults } = mapping.read('cellar/store', new Uint8Array([0xff, 0xfe, 0x31]), false);
    expect(faults).toEqual(['cellar/store: neither JSON nor a number']);
  });

  it('ignores what is too long, and takes what is just short enough', () => {
    const text = '{"bottom": 300}'.padEnd(maximumPayloadBytes, ' ');
    expect(read('cellar/store', text).readings).toHaveLength(1);
    expect(read('cellar/store', `${text} `)).toMatchObject({
      readings: [],
      faults: [expect.stringContaining('longer than 65536')],
    });
  });

  it('ignores retained messages, whatever they carry', () => {
    const retained = read('cellar/store', '{"bottom": 300}', true);
    expect(retained.readings).toEqual([]);
    expect(retained.faults[0]).toContain('retained');
    expect(read('roof/relays', '{"pump": 1}', true).feedback).toBeNull();
  });

  it.each([
    ['{"pump": true, "drain": false}', { pumpFraction: 1, drainOpen: false }],
    ['{"pump": false, "drain": true}', { pumpFraction: 0, drainOpen: true }],
    ['{"pump": 0.4}', { pumpFraction: 0.4, drainOpen: null }],
    ['{"pump": 1, "drain": 1}', { pumpFraction: 1, drainOpen: true }],
    ['{"pump": "1", "drain": "0"}', { pumpFraction: 1, drainOpen: false }],
    ['{"pump": 0, "drain": null}', { pumpFraction: 0, drainOpen: null }],
  ])('hears the feedback %s', (payload, feedback) => {
    expect(read('roof/relays', payload)).toEqual({ readings: [], feedback, faults: [] });
  });

  it.each(['{"pump": 1.5}', '{"pump": -0.1}', '{"pump": null}', '{"drain": true}', '{"pump": "on"}'])(
    'ignores the feedback %s, and blames the pump',
    (payload) => {
      expect(read('roof/relays', payload)).toEqual({
        readings: [],
        feedback: null,
        faults: ['roof/relays: no usable feedback of the pump'],
      });
    },
  );

  it.each(['"open"', '0.5', '2', '-1', '{}'])(
    'hears the pump beside the drain %s, and blames the drain',
    (drain) => {
      expect(read('roof/relays', `{"pump": 1, "drain": ${drain}}`)).toEqual({
        readings: [],
        feedback: { pumpFraction: 1, drainOpen: null },
        faults: ['roof/relays: no usable feedback of the drain'],
      });
    },
  );

  it('blames feedback beside readings, and takes readings that come without any', () => {
    const shared = createMapping(
      siteOf(
        demoContent({
          sensors: {
            panOutletC: { topic: 'roof', pointer: '/outlet', unit: 'C' },
            storeBottomC: { topic: 'cellar/store', unit: 'C' },
          },
          link: {
            kind: 'mqtt',
            outputsTopic: 'roof/outputs',
            feedback: { topic: 'roof', pumpPointer: '/pump', drainPointer: '/drain' },
          },
        }),
      ),
    );
    const faultsOf = (text: string) => shared.read('roof', bytes(text), false).faults;
    expect(faultsOf('{"outlet": 20}')).toEqual([]);
    expect(faultsOf('{"outlet": 20, "pump": "ON", "drain": true}')).toEqual([
      'roof: no usable feedback of the pump',
    ]);
  });
});
