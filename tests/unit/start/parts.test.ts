import { describe, expect, it, vi } from 'vitest';
import { createParts } from '../../../desktop/start/parts.ts';

describe('createParts', () => {
  it('stops parts in the order of their start, each after the one before', async () => {
    const order: string[] = [];
    const part = (name: string) => ({
      async stop() {
        order.push(`${name} asked`);
        await Promise.resolve();
        order.push(`${name} stopped`);
      },
    });
    const parts = createParts(60_000);
    parts.begin(() => part('controller'));
    parts.begin(() => part('device'));
    await parts.stop();
    expect(order).toEqual(['controller asked', 'controller stopped', 'device asked', 'device stopped']);
  });

  it('ends what does not stop in time', async () => {
    const kill = vi.fn();
    const parts = createParts(20);
    parts.begin(() => ({ stop: () => new Promise(() => undefined), kill }));
    await parts.stop();
    expect(kill).toHaveBeenCalledOnce();
  });

  it('still ends the others when one fails to stop', async () => {
    const stop = vi.fn(async () => undefined);
    const parts = createParts(60_000);
    parts.begin(() => ({ stop: () => Promise.reject(new Error('stuck')) }));
    parts.begin(() => ({ stop }));
    await parts.stop();
    expect(stop).toHaveBeenCalledOnce();
  });

  it('starts nothing more once everything is being stopped', async () => {
    const start = vi.fn();
    const parts = createParts(60_000);
    const stopped = parts.stop();
    expect(() => parts.begin(start)).toThrow('being stopped');
    expect(start).not.toHaveBeenCalled();
    await stopped;
  });
});
