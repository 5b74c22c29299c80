import { mkdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { z } from 'zod';
import type { Channel } from '../../shared-types/channels.ts';
import { type LoopFit, loopFitSchema } from '../../shared-types/tuning.ts';
import { type Traits, traitDeclarations, traitNames } from '../plant/traits.ts';
import { noError, type OwnError, type PossibleLoop, usualSky } from './possible-loop.ts';

export type FitRead =
  | { readonly ok: true; readonly fit: LoopFit }
  | { readonly ok: false; readonly why: string };

/** Where the fit of a site stands: beside its log. */
export function fitPath(logPath: string, site: string): string {
  return join(dirname(logPath), `${site}.loop.json`);
}

/** Puts a fit beside the log. An interruption leaves the old file or the new one, never half of one. */
export function keepFit(logPath: string, fit: LoopFit): void {
  const path = fitPath(logPath, fit.site);
  mkdirSync(dirname(path), { recursive: true });
  writeFileSync(`${path}.new`, `${JSON.stringify(fit)}\n`);
  renameSync(`${path}.new`, path);
}

/** Reads the fit that is kept beside a log. Never throws: without a usable one it says why. */
export function readFit(logPath: string, site: string): FitRead {
  const path = fitPath(logPath, site);
  let content: unknown;
  try {
    content = JSON.parse(readFileSync(path, 'utf8'));
  } catch (thrown) {
    const absent = thrown instanceof Error && 'code' in thrown && thrown.code === 'ENOENT';
    return refused(absent ? 'no fit is kept beside the log' : `${path} cannot be read`);
  }
  const parsed = loopFitSchema.safeParse(content);
  if (!parsed.success) return refused(`${path} holds no fit: ${z.prettifyError(parsed.error)}`);
  const fit = parsed.data;
  if (fit.site !== site) return refused(`${path} is of the site ${fit.site}`);
  if (!fit.converged) return refused(`${path} holds a fit that did not converge`);
  return { ok: true, fit };
}

const refused = (why: string): FitRead => ({ ok: false, why });

/**
 * The loop that a fit found, for a plant and its world. Traits that were held are left out: they are the usual ones.
 *
 * @param shift - What is added to each fitted parameter and then to each sensor's error, in the order of the covariance;
 * nothing when absent. Beyond what a trait may be, its bound holds.
 */
export function loopOfFit(fit: LoopFit, shift: readonly number[] = []): PossibleLoop {
  const fitted = fit.parameters.filter(({ standardError }) => standardError !== null);
  const traits: { -readonly [Name in keyof Traits]?: number } = {};
  for (const [index, { name, value }] of fitted.entries()) {
    const trait = traitNames.find((known) => known === name);
    if (trait === undefined) continue;
    const { least, most } = traitDeclarations[trait];
    traits[trait] = Math.min(most, Math.max(least, value + (shift[index] ?? 0)));
  }
  const sensorErrors: Partial<Record<Channel, OwnError>> = {};
  for (const [index, { channel, kind, value }] of fit.sensorErrors.entries())
    sensorErrors[channel] = {
      ...(sensorErrors[channel] ?? noError),
      [kind]: value + (shift[fitted.length + index] ?? 0),
    };
  return { traits, sensorErrors, sky: usualSky };
}
