import { z } from 'zod';

/** What somebody may do at the monitor: ask the loop for something, look on only, or neither. */
export const rightSchema = z.enum(['ask', 'look', 'nothing']);
export type Right = z.infer<typeof rightSchema>;

/** How a page stands with its monitor. */
export const accessSchema = z.strictObject({
  /** True where the monitor wants a token before it shows anything. */
  wantsToken: z.boolean(),
  may: rightSchema,
});
export type Access = z.infer<typeof accessSchema>;

/** Where nobody is asked who they are: a window of our own, or a server that only this machine reaches. */
export const openAccess: Access = { wantsToken: false, may: 'ask' };

/** Addresses at the web server beside the page's own files. */
export const accessPaths = { access: '/access', signIn: '/sign-in', signOut: '/sign-out' } as const;

/** Name of the form field that carries the token. */
export const tokenField = 'token';
