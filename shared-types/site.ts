import { z } from 'zod';
import { type Channel, channelMeaning, channels } from './channels.ts';
import { sensorUnitNames, sensorUnits } from './sensor-units.ts';
import { defaultSettings, settingCouplings, settingsPatchSchema } from './settings.ts';

const sensorUnitSchema = z.enum(sensorUnitNames);

const slugSchema = z
  .string()
  .max(40)
  .regex(/^[a-z0-9]+(-[a-z0-9]+)*$/, 'lower-case letters, digits and single hyphens between them');

/** A topic to publish on or to listen at: no wildcards, no NUL. */
const topicSchema = z
  .string()
  .min(1)
  .max(200)
  .refine((topic) => !/[+#\0]/.test(topic), { message: 'a topic without + or #' });

const pointerSchema = z
  .string()
  .max(200)
  .regex(/^(\/([^~/]|~[01])*)*$/, 'a JSON pointer such as /temperatures/0, or empty for the whole payload');

/** What can stand as a key on the serial line. */
const lineKeySchema = z
  .string()
  .max(40)
  .regex(/^[A-Za-z0-9_.-]+$/, 'letters, digits and _ . - only');

/** Address of a broker. */
export const brokerUrlSchema = z
  .string()
  .regex(/^(mqtts?|wss?):\/\/[^\s/]+/, 'a broker address such as mqtt://127.0.0.1:1883');

const monthDaySchema = z
  .string()
  .regex(/^(0[1-9]|1[0-2])-(0[1-9]|[12][0-9]|3[01])$/, 'month and day such as 10-01');

const timeZoneSchema = z.string().refine(isTimeZone, { message: 'a zone of the IANA list such as Etc/UTC' });

function isTimeZone(zone: string): boolean {
  try {
    return new Intl.DateTimeFormat('en', { timeZone: zone }) !== undefined;
  } catch {
    return false;
  }
}

export const plumbingSchema = z.enum(['open-store', 'reservoir']);
export const outletSchema = z.enum(['low', 'high-with-low-drain', 'corner']);
export const drainSchema = z.enum(['pump-stop', 'drain-valve', 'drain-pump', 'none']);
export type Drain = z.infer<typeof drainSchema>;

/** One sensor: where its value comes from, in which unit, and what it can truthfully say. */
export const sensorSchema = z
  .strictObject({
    topic: topicSchema.optional().describe('MQTT topic of the value'),
    pointer: pointerSchema.optional().describe('JSON pointer into the payload; empty: the payload itself'),
    key: lineKeySchema.optional().describe('name of the value on a serial line'),
    unit: sensorUnitSchema.describe('unit that the sensor sends'),
    factor: z.number().default(1).describe('applied to the sent number before the unit'),
    offset: z.number().default(0).describe('added after the factor, in the sent unit'),
    openCode: z.number().optional().describe('sent number that means an open circuit'),
    shortCode: z.number().optional().describe('sent number that means a short circuit'),
    unreadableCode: z.number().optional().describe('sent number that means that nothing was measured'),
    least: z.number().optional().describe("lowest believable value, in the channel's unit"),
    most: z.number().optional().describe("highest believable value, in the channel's unit"),
  })
  .describe('A sensor of the loop');
export type Sensor = z.infer<typeof sensorSchema>;

const mqttLinkSchema = z.strictObject({
  kind: z.literal('mqtt'),
  url: brokerUrlSchema.optional().describe('broker of the device; without it the embedded broker'),
  username: z.string().optional(),
  passwordFile: z.string().optional().describe('file whose first line is the password'),
  outputsTopic: topicSchema.describe('where output commands go'),
  feedback: z
    .strictObject({
      topic: topicSchema,
      pumpPointer: pointerSchema.describe('running fraction of the pump, 0 to 1, or true and false'),
      drainPointer: pointerSchema
        .optional()
        .describe('true or 1 when the drain is open, false or 0 when it is not'),
    })
    .optional()
    .describe('what the device says that its outputs do'),
});

const serialLinkSchema = z.strictObject({
  kind: z.literal('serial'),
  path: z.string().min(1).describe('serial port, a device file or a port name'),
  baud: z.int().min(1200).max(921_600).default(115_200),
});

export const linkSchema = z.discriminatedUnion('kind', [mqttLinkSchema, serialLinkSchema]);

const panSchema = z.strictObject({
  grossAreaM2: z.number().min(0.2).max(500).describe('sheet area with its edges'),
  wettedAreaM2: z.number().min(0.2).max(500).describe('sheet area that lies on water'),
  waterDepthM: z.number().min(0.005).max(0.2).describe('mean depth of water under the sheet'),
  linerLimitC: z.number().min(40).max(130).describe('highest temperature that the liner stands'),
  wallHeightM: z.number().min(0).max(1).default(0.1).describe('height of the wall around the pan'),
  fallFraction: z.number().min(0).max(0.1).default(0.02).describe('fall across the pan, height over length'),
  heightAboveStoreM: z
    .number()
    .min(-5)
    .max(20)
    .default(1)
    .describe('height of the pan above the top of the store'),
});

const pumpSchema = z.strictObject({
  ratedFlowLMin: z.number().min(0.5).max(500).describe('flow through the full loop at full speed'),
  ratedHeadM: z.number().min(0.2).max(50),
  ratedPowerW: z.number().min(1).max(3000),
  speedControl: z.boolean().default(false),
});

const storeSchema = z.strictObject({
  volumeL: z.number().min(20).max(200_000).describe('water in the store when the pan is empty'),
  headroomL: z.number().min(0).max(200_000).describe('room above that water before it overflows'),
  heightM: z.number().min(0.1).max(10),
  lossWK: z.number().min(0).max(500).default(5).describe('heat lost through the insulation per kelvin'),
  maximumC: z.number().min(30).max(99).default(85).describe('highest temperature that the store stands'),
});

const heatDumpSchema = z
  .strictObject({
    conductanceWK: z
      .number()
      .min(1)
      .max(20_000)
      .describe('heat that its radiator gives to the air per kelvin when the full flow passes it'),
  })
  .describe('an output that lets the return from the pan pass a radiator before the store');

const brokerSchema = z
  .strictObject({
    host: z.string().default('127.0.0.1'),
    port: z.int().min(0).max(65_535).default(1883).describe('0: any free port'),
    username: z
      .string()
      .min(1)
      .optional()
      .describe(
        'name that device and monitors have to give; without it anybody who reaches the port gets in',
      ),
    passwordFile: z.string().optional().describe('file whose first line is the password that goes with it'),
  })
  .describe('run a broker inside the controller');

const publishSchema = z.strictObject({
  url: brokerUrlSchema.optional().describe('broker for monitors; without it the embedded broker'),
  username: z.string().optional(),
  passwordFile: z.string().optional(),
});

const siteShape = z.strictObject({
  schema: z.literal(1).describe('version of this form'),
  name: slugSchema.describe('short name, part of every topic'),
  title: z.string().min(1).max(80).describe('name that people read'),
  timeZone: timeZoneSchema.describe('IANA time zone whose local days are counted'),
  location: z.strictObject({
    latitudeDeg: z.number().min(-90).max(90),
    longitudeDeg: z.number().min(-180).max(180),
    elevationM: z.number().min(-450).max(6000),
  }),
  pan: panSchema,
  plumbing: plumbingSchema,
  outlet: outletSchema,
  drain: drainSchema.describe('how the pan empties'),
  pump: pumpSchema,
  store: storeSchema,
  heatDump: heatDumpSchema.optional(),
  frostSeason: z
    .strictObject({ from: monthDaySchema, to: monthDaySchema })
    .optional()
    .describe('when frost is possible; without it, always'),
  sensors: z.partialRecord(z.enum(channels), sensorSchema),
  link: linkSchema,
  broker: brokerSchema.optional(),
  publish: publishSchema.optional().describe('where monitors find this loop; without it, nowhere'),
  control: z
    .strictObject({
      stepS: z.number().min(1).max(10).default(5).describe('time between two steps of the controller'),
      outputExpiryS: z
        .number()
        .min(10)
        .max(300)
        .default(60)
        .describe('an output that is not renewed for this long falls to its safe state at the device'),
    })
    .default({ stepS: 5, outputExpiryS: 60 }),
  settings: settingsPatchSchema
    .optional()
    .describe('setpoints that differ from their defaults at first start'),
});

type SiteShape = z.infer<typeof siteShape>;
interface Fault {
  readonly path: (string | number)[];
  readonly message: string;
}

/** Water that the pan holds when full [L]. */
export function panVolumeL(site: Pick<SiteShape, 'pan'>): number {
  return site.pan.wettedAreaM2 * site.pan.waterDepthM * 1000;
}

function sensorFaults(site: SiteShape): Fault[] {
  const faults: Fault[] = [];
  for (const [name, sensor] of Object.entries(site.sensors)) {
    const channel = name as Channel;
    const meaning = channelMeaning[channel];
    if (sensorUnits[sensor.unit].into !== meaning.unit) {
      const allowed = sensorUnitNames.filter((unit) => sensorUnits[unit].into === meaning.unit);
      faults.push({ path: ['sensors', name, 'unit'], message: `one of ${allowed.join(', ')}` });
    }
    if (site.link.kind === 'mqtt' && sensor.topic === undefined)
      faults.push({ path: ['sensors', name], message: 'a topic, since the link is mqtt' });
    if (site.link.kind === 'serial' && sensor.key === undefined)
      faults.push({ path: ['sensors', name], message: 'a key, since the link is serial' });
    if ((sensor.least ?? meaning.least) >= (sensor.most ?? meaning.most))
      faults.push({ path: ['sensors', name, 'least'], message: 'less than most' });
  }
  if (site.sensors.storeBottomC === undefined)
    faults.push({
      path: ['sensors'],
      message: 'a storeBottomC sensor: what is harvested is measured against it',
    });
  if (site.sensors.panOutletC === undefined && site.sensors.panSheetC === undefined)
    faults.push({ path: ['sensors'], message: 'a panOutletC or a panSheetC sensor' });
  return faults;
}

const drainsOfOutlet: Readonly<Record<z.infer<typeof outletSchema>, readonly Drain[]>> = {
  low: ['pump-stop', 'drain-valve'],
  'high-with-low-drain': ['drain-valve', 'drain-pump'],
  corner: ['none'],
};

function plumbingFaults(site: SiteShape): Fault[] {
  const faults: Fault[] = [];
  if (site.pan.wettedAreaM2 > site.pan.grossAreaM2)
    faults.push({ path: ['pan', 'wettedAreaM2'], message: `at most grossAreaM2, ${site.pan.grossAreaM2}` });
  const allowed = drainsOfOutlet[site.outlet];
  if (!allowed.includes(site.drain))
    faults.push({ path: ['drain'], message: `${allowed.join(' or ')} with the outlet ${site.outlet}` });
  const emptiesIntoStore = site.plumbing === 'open-store' && site.drain !== 'none';
  const panL = panVolumeL(site);
  if (emptiesIntoStore && site.store.headroomL < panL)
    faults.push({
      path: ['store', 'headroomL'],
      message: `at least ${panL.toFixed(1)}, the water of the pan that empties into it`,
    });
  if (site.plumbing === 'open-store' && site.store.volumeL < panL)
    faults.push({
      path: ['store', 'volumeL'],
      message: `at least ${panL.toFixed(1)}, the water that fills the pan`,
    });
  return faults;
}

function linkFaults(site: SiteShape): Fault[] {
  const faults: Fault[] = [];
  if (site.link.kind === 'mqtt' && site.link.url === undefined && site.broker === undefined)
    faults.push({ path: ['link', 'url'], message: 'a broker address, or a broker section' });
  if ((site.broker?.username === undefined) !== (site.broker?.passwordFile === undefined))
    faults.push({ path: ['broker'], message: 'username and passwordFile both, or neither' });
  if (site.publish !== undefined && site.publish.url === undefined && site.broker === undefined)
    faults.push({ path: ['publish', 'url'], message: 'a broker address, or a broker section' });
  return faults;
}

/** Lost messages in a row that an output outlives. */
const outlivedMessages = 2;

function controlFaults({ control, settings = {} }: SiteShape): Fault[] {
  const faults: Fault[] = [];
  const leastExpiryS = (outlivedMessages + 1) * control.stepS;
  if (control.outputExpiryS < leastExpiryS)
    faults.push({
      path: ['control', 'outputExpiryS'],
      message: `at least ${leastExpiryS}, three times stepS, so that a lost message stops nothing`,
    });
  const given = Object.fromEntries(Object.entries(settings).filter(([, value]) => value !== undefined));
  for (const rule of settingCouplings)
    if (!rule.holds({ ...defaultSettings, ...given })) {
      const name = rule.names.find((candidate) => candidate in given);
      faults.push({ path: name === undefined ? ['settings'] : ['settings', name], message: rule.text });
    }
  return faults;
}

/** A site file: one loop, its parts, its sensors and how they are reached. */
export const siteSchema = siteShape.superRefine((site, context) => {
  const faults = [plumbingFaults, linkFaults, sensorFaults, controlFaults].flatMap((find) => find(site));
  for (const fault of faults)
    context.addIssue({ code: 'custom', path: fault.path, message: fault.message, input: site });
});

export type Site = z.infer<typeof siteSchema>;
