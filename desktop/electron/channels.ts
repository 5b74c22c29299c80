/** The channels between window and host: calls with their replies, events, texts to save, screens to show. */
export const callChannel = 'monitor-call';
export const eventChannel = 'monitor-event';
export const saveChannel = 'monitor-save';
export const goChannel = 'monitor-go';
