import { siteSchema } from '../../shared-types/site.ts';

/**
 * The name of a site, as its site file allows it. A name becomes a topic and a folder, so nothing
 * that comes over a wire is used as either before it passed here.
 */
export const siteNameSchema = siteSchema.shape.name;
