/** The two channels between window and host: calls with their replies, and events. */
export const callChannel = 'monitor-call';
export const eventChannel = 'monitor-event';
