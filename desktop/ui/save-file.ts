/** Hands a file to whoever reads the page; the browser puts it where downloads go. */
export function saveFile(name: string, type: string, content: string | Blob): void {
  const address = URL.createObjectURL(new Blob([content], { type }));
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  // The browser has taken hold of the content once the click is through; a moment more does no harm.
  setTimeout(() => URL.revokeObjectURL(address), 10_000);
}
