/**
 * What the screens' page may do, the same in a window of its own and in a browser: nothing but its own
 * scripts, styles, fonts and pictures, and its own door to the host.
 *
 * Style elements alone may stand inside the page: the component library writes its theme into two of
 * them, whose text follows the theme, so that no hash can name it beforehand. A style can neither run
 * nor, with these sources, fetch anything. Style attributes in the markup stay forbidden; React sets
 * styles through the object model, which no policy touches.
 */
const contentSecurityPolicy = [
  "default-src 'none'",
  "script-src 'self'",
  "style-src 'self'",
  "style-src-elem 'self' 'unsafe-inline'",
  "img-src 'self' data:",
  "font-src 'self'",
  "connect-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
  "frame-ancestors 'none'",
].join('; ');

/** Headers of every answer. */
export const pageHeaders: Readonly<Record<string, string>> = {
  'Content-Security-Policy': contentSecurityPolicy,
  'X-Content-Type-Options': 'nosniff',
  'Referrer-Policy': 'no-referrer',
  'Cross-Origin-Opener-Policy': 'same-origin',
  'Cross-Origin-Resource-Policy': 'same-origin',
};
