export const signInText = {
  title: 'Sign in',
  heading: 'Sign in to this monitor',
  lead: 'It is open to other machines, so it wants to know who you are.',
  token: 'Token',
  where: 'It stands in the token file on the monitor’s machine.',
  button: 'Sign in',
  asking: 'Signing in …',
  wrong: 'The monitor does not know this token.',
  wait: (duration: string) =>
    `Too many wrong tokens came from your address. The next is looked at in ${duration}.`,
  unreachable: 'The monitor does not answer. Try again in a moment.',
  signOut: 'Sign out',
  signedIn: {
    ask: 'Signed in: you may ask the loop for something.',
    look: 'Signed in: you may only look.',
    nothing: 'Signed out.',
  },
} as const;
