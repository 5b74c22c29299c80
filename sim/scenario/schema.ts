import { z } from 'zod';
import { channelSchema } from '../../shared-types/readings.ts';
import { checkWish } from '../device/fault-text.ts';
import { momentPattern, parseStart } from '../device/local-moment.ts';
import { drawProfiles } from '../plant/draws.ts';
import { faultNames } from '../plant/faults.ts';
import { type TraitName, traitDeclarations, traitNames } from '../plant/traits.ts';
import { dayKinds } from '../weather/day-kinds.ts';
import { weatherCsvMapSchema } from '../weather/weather-csv.ts';

const fileSchema = z.string().min(1).max(300);
const momentSchema = z.string().regex(momentPattern, 'a time such as 13:45 or 2031-06-21T13:45');

const weatherSchema = z
  .strictObject({
    kinds: z.array(z.enum(dayKinds)).min(1).optional().describe('kinds of day one after another'),
    epw: fileSchema.optional().describe('weather file of the EPW kind, beside this file'),
    csv: fileSchema.optional().describe('weather file with a header line, beside this file'),
    map: weatherCsvMapSchema.optional().describe('where the columns of that file are'),
  })
  .superRefine((weather, context) => {
    const sources = [weather.kinds, weather.epw, weather.csv].filter((source) => source !== undefined);
    if (sources.length > 1)
      context.addIssue({ code: 'custom', path: [], message: 'one of kinds, epw and csv' });
    if ((weather.csv === undefined) !== (weather.map === undefined))
      context.addIssue({ code: 'custom', path: [], message: 'csv and map together' });
  });

const waterC = z.number().min(0).max(95);
const waterSchema = z.strictObject({
  storeC: waterC.default(22).describe('temperature of store and pipes'),
  panC: z
    .number()
    .min(-40)
    .max(95)
    .optional()
    .describe('temperature of sheet and pan; that of the air when absent'),
  panFull: z.boolean().default(false),
});

function traitOf(name: TraitName) {
  const { least, most, unit, meaning } = traitDeclarations[name];
  return z.number().min(least).max(most).optional().describe(`${meaning} [${unit}]`);
}
const traitsSchema = z.strictObject(
  Object.fromEntries(traitNames.map((name) => [name, traitOf(name)])) as Record<
    TraitName,
    ReturnType<typeof traitOf>
  >,
);

const faultSchema = z
  .strictObject({
    name: z.enum(faultNames),
    channel: channelSchema.optional(),
    other: channelSchema.optional().describe('the other sensor of a swapped pair'),
    from: momentSchema.optional().describe('when it comes, by the clocks of the site; at once when absent'),
    until: momentSchema.optional().describe('when it goes; never when absent'),
    size: z.number().optional().describe("in the fault's own unit; its default when absent"),
  })
  .superRefine((fault, context) => {
    const checked = checkWish(fault);
    if (!checked.ok) context.addIssue({ code: 'custom', path: [checked.at], message: checked.why });
  });

/** A scenario file: one loop, how it stands at first, its weather, and what goes wrong. */
export const scenarioSchema = z.strictObject({
  schema: z.literal(1).describe('version of this form'),
  title: z.string().min(1).max(100).describe('what it shows, in one line'),
  site: fileSchema.describe('site file, beside this file'),
  seed: z.int().min(0).max(999_999_999).default(1).describe('picks weather, noise and errors of sensors'),
  startsAt: z
    .string()
    .refine((text) => parseStart(text) !== undefined, {
      message: 'a local day such as 2031-06-21, or with a time 2031-06-21T08:30',
    })
    .optional()
    .describe('where its calendar begins; without it, now'),
  weather: weatherSchema.default({}),
  water: waterSchema.default({ storeC: 22, panFull: false }),
  draw: z
    .strictObject({ profile: z.enum(drawProfiles) })
    .default({ profile: 'wash-house' })
    .describe('who draws hot water'),
  traits: traitsSchema.default({}).describe('what no site file says of a loop'),
  exactSensors: z.boolean().default(false).describe('sensors without the error that each has for life'),
  faults: z.array(faultSchema).max(50).default([]),
});
export type ScenarioContent = z.infer<typeof scenarioSchema>;
