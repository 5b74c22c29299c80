/** What a question says that got no proper reply. */
export const doorText = {
  lostMeanwhile: 'The connection to the monitor was lost before it replied.',
  noReply: 'The monitor did not reply in time.',
  notUnderstood: 'The monitor replied with something that this page does not understand; reload the page.',
} as const;
