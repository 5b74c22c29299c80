import type { SavedText, SaveOutcome } from '../../shared-types/saved-text.ts';

/** A window of our own asks where to save; a browser has its own way with what is downloaded. */
export async function saveText(file: SavedText): Promise<SaveOutcome> {
  const { flatwater } = window as { flatwater?: { save?: (text: SavedText) => Promise<SaveOutcome> } };
  if (flatwater?.save !== undefined) return flatwater.save(file);
  const address = URL.createObjectURL(new Blob([file.text], { type: 'text/csv' }));
  const link = document.createElement('a');
  link.href = address;
  link.download = file.name;
  link.click();
  URL.revokeObjectURL(address);
  return { kind: 'saved' };
}
