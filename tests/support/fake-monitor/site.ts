import { messageSchemaVersion, type SiteMessage } from '../../../shared-types/messages.ts';
import { defaultSettings } from '../../../shared-types/settings.ts';
import { siteSchema } from '../../../shared-types/site.ts';

/** Name of the only site of the fake monitor. */
export const testSite = 'test-loop';
export const testZone = 'Atlantic/Azores';

const sensor = (unit: string) => ({ topic: 'test/readings', pointer: '/value', unit });

/** A site with a sensor of every main kind; `title` may be anything that a site file allows. */
export function testSiteMessage(title = 'Test loop'): SiteMessage {
  const site = siteSchema.parse({
    schema: 1,
    name: testSite,
    title,
    timeZone: testZone,
    location: { latitudeDeg: 44, longitudeDeg: -28, elevationM: 20 },
    pan: { grossAreaM2: 12, wettedAreaM2: 11.5, waterDepthM: 0.04, linerLimitC: 80, heightAboveStoreM: 0.9 },
    plumbing: 'open-store',
    outlet: 'high-with-low-drain',
    drain: 'drain-valve',
    pump: { ratedFlowLMin: 14, ratedHeadM: 3, ratedPowerW: 45 },
    store: { volumeL: 900, headroomL: 520, heightM: 1.3 },
    sensors: {
      panOutletC: sensor('C'),
      panSheetC: sensor('C'),
      panInletC: sensor('C'),
      storeBottomC: sensor('C'),
      storeMiddleC: sensor('C'),
      storeTopC: sensor('C'),
      ambientC: sensor('C'),
      irradianceWM2: sensor('W/m2'),
      windMs: sensor('m/s'),
      humidityFraction: sensor('%'),
      flowLMin: sensor('L/min'),
      pumpPowerW: sensor('W'),
    },
    link: { kind: 'mqtt', outputsTopic: 'test/outputs' },
    broker: {},
    publish: {},
  });
  return {
    schema: messageSchemaVersion,
    site,
    siteRevision: 1,
    settings: defaultSettings,
    settingsRevision: 1,
  };
}
