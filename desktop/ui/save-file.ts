import type { SavedText, SaveOutcome } from '../../shared-types/saved-text.ts';

/**
 * Hands a file to whoever reads the page. For a text a window of our own asks where to save it; everything else goes
 * where the browser puts downloads.
 */
export async function saveFile(name: string, type: string, content: string | Blob): Promise<SaveOutcome> {
  const { flatwater } = window as { flatwater?: { save?: (text: SavedText) => Promise<SaveOutcome> } };
  if (typeof content === 'string' && flatwater?.save !== undefined)
    return flatwater.save({ name, text: content });
  const address = URL.createObjectURL(new Blob([content], { type }));
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  // The browser has taken hold of the content once the click is through; a moment more does no harm.
  setTimeout(() => URL.revokeObjectURL(address), 10_000);
  return { kind: 'saved' };
}
