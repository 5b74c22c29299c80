import { z } from 'zod';
import { messageSchemaVersion } from '../../shared-types/messages.ts';
import { channelSchema } from '../../shared-types/readings.ts';
import { faultNames } from '../plant/faults.ts';
import { momentPattern } from './local-moment.ts';

/** A time as on the command line: HH:MM or YYYY-MM-DDTHH:MM, by the site's clocks. */
const moment = z.string().regex(momentPattern);

/** A fault switched on or off over MQTT. Never retained. */
export const faultMessageSchema = z.strictObject({
  schema: z.literal(messageSchemaVersion),
  name: z.enum(faultNames),
  channel: channelSchema.optional(),
  /** The other sensor of a swapped pair. */
  other: channelSchema.optional(),
  /** In the fault's own unit and range; its default when absent. */
  size: z.number().optional(),
  /** When it comes and when it goes; at once, and never, when absent. */
  from: moment.optional(),
  until: moment.optional(),
  active: z.boolean(),
});
