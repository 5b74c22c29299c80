/** The scheme and host under which the window finds its page. Nothing is ever loaded from elsewhere. */
export const pageScheme = 'app';
const pageHost = 'flatwater';

export const pageAddress = `${pageScheme}://${pageHost}/index.html`;

/** Whether an address lies in the page's own origin. Compared part by part, never by its beginning. */
export function isOwnPage(address: string): boolean {
  const url = URL.parse(address);
  return url?.protocol === `${pageScheme}:` && url.host === pageHost && url.username === '';
}
