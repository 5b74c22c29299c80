import { createContext, useContext } from 'react';
import type { Feed } from '../store/feed.ts';

export const FeedContext = createContext<Feed | undefined>(undefined);

/** The feed, to ask for something; what comes back is read from the stores. */
export function useFeed(): Feed {
  const feed = useContext(FeedContext);
  if (feed === undefined) throw new Error('a screen stands outside its feed');
  return feed;
}
