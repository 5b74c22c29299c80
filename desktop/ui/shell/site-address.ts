const siteField = 'site';

/** The site that an address such as #/days?site=north-roof names; null when it names none. */
export function siteOf(hash: string): string | null {
  const name = new URLSearchParams(hash.split('?')[1] ?? '').get(siteField);
  return name === '' ? null : name;
}

/** The same place, at that site. */
export function withSite(hash: string, site: string): string {
  const [place = '', query = ''] = hash.split('?');
  const fields = new URLSearchParams(query);
  fields.set(siteField, site);
  return `${place === '' ? '#/live' : place}?${fields}`;
}
