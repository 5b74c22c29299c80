export const requestText = {
  heading: 'Ask the loop',
  lead: 'The controller answers each request. Protections against frost and heat always come first.',
  minutes: 'Minutes',
  minutesUnit: 'min',
  minutesRange: (least: number, most: number) => `A whole number from ${least} to ${most}.`,
  runPump: {
    button: 'Run the pump',
    says: (minutes: number) =>
      `Runs the pump for ${minutes} min, whether that gains heat or not; a drained pan is filled first.`,
    consequence: 'It may carry heat out of the store when the pan is colder.',
  },
  empty: {
    button: 'Empty the pan',
    says: 'Stops the pump and lets the water of the pan run out through its drain.',
    consequence: 'Filling again costs time and pump energy. Without water the sheet gets hot in the sun.',
  },
  rest: {
    button: 'Rest',
    says: (minutes: number) => `Leaves the pump off for ${minutes} min and the water where it is.`,
    consequence: 'Heat that the sun offers meanwhile is not brought home.',
  },
  automatic: {
    button: 'Back to automatic',
    says: 'Ends what was asked for; the controller decides by itself again.',
  },
  confirm: (button: string) => `Yes, ${button.charAt(0).toLowerCase()}${button.slice(1)}`,
  confirmTitle: (button: string) => `${button}?`,
  cancel: 'Leave it as it is',
  asking: 'Asking the controller …',
  unanswered: 'No answer.',
  endsByItself: (duration: string) => `It ends by itself after ${duration}.`,
  lookOnly: 'You are signed in to look only; requests need the token that may ask.',
  unavailable: 'No controller is listening at the moment.',
} as const;
