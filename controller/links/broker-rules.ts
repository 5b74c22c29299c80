import { siteTopics } from '../../shared-types/messages.ts';
import type { Site } from '../../shared-types/site.ts';

export interface Publication {
  readonly topic: string;
  readonly retain: boolean;
  readonly fromController: boolean;
}

/**
 * What may be published at the embedded broker of a site.
 *
 * The controller alone moves outputs and speaks for itself; nothing that moves anything is ever kept
 * for a later listener; topics of the broker itself are its own. Everything else, requests and readings too, is free
 * to whoever the broker let in, so that any device may use topics of its own.
 *
 * @returns why a publication is refused, or undefined when it may pass.
 */
export function createPublishRule(site: Site): (publication: Publication) => string | undefined {
  const own = siteTopics(site.name);
  const outputs = new Set<string>([own.deviceOutputs]);
  if (site.link.kind === 'mqtt') outputs.add(site.link.outputsTopic);
  const controllers = new Set<string>([...outputs, own.snapshot, own.status, own.site, own.answer]);
  return ({ topic, retain, fromController }) => {
    if (topic.startsWith('$')) return 'topics that begin with $ belong to the broker';
    if (controllers.has(topic) && !fromController) return `only the controller may write ${topic}`;
    if (retain && (outputs.has(topic) || topic === own.request)) return `nothing is retained on ${topic}`;
    return undefined;
  };
}
