import type { Channel } from '../../../shared-types/channels.ts';

/** What a loop does without when a sensor is not fitted. */
export const withoutSensor: Readonly<Record<Channel, string>> = {
  panOutletC:
    'The sheet stands in for the water of the pan, so that differences and heat home are estimates.',
  panSheetC:
    'Nothing shows how hot a dry pan is in the sun, nor how well the sheet lies on the water; the outlet stands in for it.',
  panInletC:
    'The heat home is reckoned against the store bottom, and no temperature shows that the pump pushes the right way.',
  storeBottomC: 'Nothing can be measured against the store; a site file without it is refused.',
  storeMiddleC: 'The store is judged by its other sensors, and the drawing knows less of its layers.',
  storeTopC:
    'The hottest water of the store is not seen: scald caution and store limit go by what lies lower.',
  reservoirC:
    'The pump is judged against the store bottom, and the exchanger pump runs whenever water circulates.',
  ambientC:
    'Frost is judged by the pan alone; when its sensors fail, or at dusk, nothing is known of the night.',
  irradianceWM2: 'The sun is worked out from how fast the sheet warms.',
  windMs: 'A usual wind is reckoned with for losses, and still air for frost.',
  humidityFraction: 'The cold of a clear night sky is reckoned with a humidity that is usual.',
  longWaveWM2: 'The cold of the night sky is reckoned from air and humidity, as if it were clear.',
  flowLMin:
    'Flow is worked out from the pump’s speed: heat home is an estimate, and half the flow is not noticed.',
  panLevelMm:
    'Whether the pan is full or empty is known by time alone; a commissioning run has to be confirmed by eye.',
  storeLevelMm: 'The controller makes no use of it today; it would only be logged.',
  reservoirLevelMm: 'A slow leak is found late, and a reservoir short of water only by a fill that fails.',
  pumpPowerW: 'A pump that runs dry, or that runs although it is off, is found by flow or heat alone.',
};
