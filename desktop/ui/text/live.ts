export const liveText = {
  title: 'Live',
  untold: 'The controller has told nothing of this loop yet.',
  untoldTip: 'Its values appear here by themselves as soon as it does. Days that were logged stay readable.',
  phaseFor: (duration: string) => `for ${duration}`,
  askedFor: (what: string, remaining: string) => `You asked: ${what}. ${remaining} left, then automatic.`,
  leases: {
    'run-pump': 'run the pump',
    empty: 'empty the pan',
    rest: 'rest',
    commission: 'a commissioning run',
  },
  today: {
    heading: 'Heat home today',
    estimated: 'estimated',
    estimatedMeaning: 'Flow or outlet is not measured, so the heat is worked out from pump and sheet.',
    lost: 'Heat lost from the store',
    pumpEnergy: 'Pump energy',
    starts: 'Pump starts',
    fills: 'Fills',
    runTime: 'Pump ran',
    now: (rate: string) => `Coming home now: ${rate}`,
    leaving: (rate: string) => `Leaving the store now: ${rate}`,
    nothingNow: 'Nothing flows home now',
    rateUnknown: 'What flows home now cannot be told',
    allowed: {
      measured: (share: string, heat: string, until: string) =>
        `${share} of about ${heat} that this weather allowed until ${until}.`,
      'clear-sky': (share: string, heat: string, until: string) =>
        `${share} of about ${heat} that a clear sky would have allowed until ${until}.`,
      meaning:
        'Reckoned for a pan that is always full and as cool as the store bottom, with usual figures for a sheet.',
      hardlyAny: (until: string) => `Until ${until} this weather allowed next to nothing.`,
      'no-sun-yet': 'The sun has hardly shone yet today: too early to compare.',
      'no-air-sensor': 'What the weather allowed cannot be told: no sensor measures the air.',
      tooLittleLogged: (share: string) =>
        `What the weather allowed cannot be told: the log holds the readings of ${share} of today’s light, and 90 % are needed.`,
      failed: (why: string) => `What the weather allowed cannot be told. ${why}`,
    },
  },
  drawing: {
    heading: 'The loop',
    scale: 'Drawn to scale from the site file, the pan as if square.',
    scaleWithReservoir:
      'Drawn to scale from the site file, the pan as if square. The file does not size the reservoir.',
    differs: {
      pump: {
        true: 'The device says that its pump runs, though it is told to be off.',
        false: 'The device says that its pump is off, though it is told to run.',
      },
      drain: {
        true: 'The device says that its drain is open, though it is told to be closed.',
        false: 'The device says that its drain is closed, though it is told to be open.',
      },
    },
    stretched: (times: string) => `Heights inside the pan are drawn ${times} times as tall.`,
    pause: 'Pause the flow',
    resume: 'Show the flow moving',
    water: {
      empty: 'drained',
      part: 'partly filled',
      full: 'full',
      unknown: 'not known whether full',
    },
    pan: 'Pan',
    pump: 'Pump',
    pumpOff: 'off',
    flowUnproven: 'flow not proven',
    drain: 'Drain',
    drainIs: { true: 'open', false: 'closed' },
    drainPump: { true: 'pumping', false: 'off' },
    scaleLegend: 'Water temperature',
    describe: (parts: readonly string[]) => `Side view of the loop. ${parts.join(' ')}`,
  },
  readings: {
    heading: 'Sensors',
    failed: 'failed',
    doubtful: 'doubtful',
    old: (age: string) => `${age} old`,
    difference: 'Pan above store bottom',
    notKnown: 'not known',
  },
  chart: {
    heading: 'The last hours',
    hours: (count: number) => `${count} h`,
    span: 'Hours shown',
    describe: 'Temperatures, sun and flow of the last hours.',
    nothing: 'Nothing was logged in these hours yet.',
  },
  alarms: {
    heading: 'Alarms',
    none: 'Nothing needs you.',
    standing: (priority: string, time: string, state: string) => `${priority}, since ${time}, ${state}`,
    past: (time: string, state: string) => `Raised at ${time}, ${state}`,
    followers: (count: number) =>
      count === 1 ? 'One alarm follows from it' : `${count} alarms follow from it`,
    likelyCauses: (likely: string) => `Likely: ${likely.charAt(0).toLowerCase()}${likely.slice(1)}`,
    acknowledge: 'Mark as seen',
    announce: (titles: string) => `New alarm: ${titles}`,
  },
  cautions: {
    heading: 'Take care',
    scald: (temperature: string, limit: string) =>
      `Scald danger: the store holds water of ${temperature}. Above ${limit} it burns skin within seconds. Draw off only through a mixing valve.`,
    standing: [
      'Frost: a flat sheet under a clear sky freezes even in air above 0\u00a0°C. Empty the pan by hand when in doubt.',
      'Heat: a dry sheet in full sun can harm the liner. Do not leave the pan empty beyond what its liner stands.',
      'Roof: a full pan weighs about 1\u00a0kg for each millimetre of water on a square metre. Have the roof’s strength checked first.',
      'Mains: let a licensed electrician connect pump and valve. Switch off before you touch them.',
      'The water of pan and store is not for drinking.',
      'Software must not be the only safety device: fit an independent temperature limiter and a drain that opens without power. Local codes come first.',
    ],
  },
} as const;
