/** Why nothing was taken in, in words for a person. */
export class ImportRefused extends Error {}
