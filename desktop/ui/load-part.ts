import { type LoadingPage, loadPatiently } from './load-patiently.ts';

const pauseMs = 2000;

const thisPage: LoadingPage = {
  async served() {
    for (;;) {
      await new Promise((resolve) => setTimeout(resolve, pauseMs));
      const answer = await fetch(document.baseURI, { method: 'HEAD' }).catch(() => undefined);
      if (answer?.ok === true) return;
    }
  },
  reload: () => location.reload(),
};

/** Loads a part of this page that is not needed for its first words. */
export function loadPart<Part>(load: () => Promise<Part>): Promise<Part> {
  return loadPatiently(load, thisPage);
}
