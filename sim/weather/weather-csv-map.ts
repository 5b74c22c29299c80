import { z } from 'zod';

const name = z.string().min(1).max(200).describe('name of the column in the header line');
const temperature = z.strictObject({ column: name, unit: z.enum(['C', 'K', 'F']) });
const irradiance = z.strictObject({ column: name, unit: z.enum(['W/m2', 'Wh/m2', 'kJ/m2', 'MJ/m2']) });
const fraction = z.strictObject({ column: name, unit: z.enum(['fraction', '%']) });
const speed = z.strictObject({ column: name, unit: z.enum(['m/s', 'km/h']) });
const depth = z.strictObject({ column: name, unit: z.enum(['mm', 'mm/h', 'cm']) });
const duration = z.strictObject({ column: name, unit: z.enum(['h', 'min']) });

/** Where a weather file in CSV keeps what, and in which unit. */
export const weatherCsvMapSchema = z
  .strictObject({
    time: z.strictObject({
      column: name,
      zone: z
        .string()
        .optional()
        .describe('IANA zone of local times; without it each time carries Z or an offset (RFC 3339)'),
      marks: z
        .enum(['end', 'start'])
        .default('end')
        .describe('which end of its interval a time names; radiation and rain are means or sums over it'),
    }),
    air: temperature,
    dewPoint: temperature.optional(),
    humidity: fraction.optional(),
    wind: speed,
    irradiance: irradiance.optional().describe('global, on the level'),
    directNormal: irradiance.optional(),
    diffuse: irradiance.optional().describe('on the level'),
    longWave: irradiance.optional().describe('from the sky, on the level'),
    cloud: fraction.optional(),
    sunshine: duration.optional().describe('bright sunshine in the interval, when there is no irradiance'),
    rain: depth.optional(),
    snow: depth.optional().describe('as water'),
  })
  .refine((map) => map.irradiance !== undefined || map.sunshine !== undefined, {
    message: 'a weather file needs a column of irradiance or of sunshine',
  });
export type WeatherCsvMap = z.infer<typeof weatherCsvMapSchema>;
