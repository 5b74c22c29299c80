import type { FileQuantity, Repair, UnitGuess, WeatherFault } from './weather-file.ts';

const quantityNames: Readonly<Record<FileQuantity, string>> = {
  airC: 'air temperature',
  dewPointC: 'dew point',
  humidityFraction: 'humidity',
  windMs: 'wind',
  irradianceWM2: 'irradiance',
  directNormalWM2: 'direct normal irradiance',
  diffuseWM2: 'diffuse irradiance',
  longWaveWM2: 'long-wave irradiance',
  cloudFraction: 'cloud',
  sunshineH: 'sunshine',
  rainMm: 'rain',
  snowMm: 'snow',
};

const guessTexts: Readonly<Record<UnitGuess, string>> = {
  fahrenheit: 'these look like degrees Fahrenheit',
  kelvin: 'these look like kelvin',
  kilojoules: 'more than the sun gives outside the air; these look like kJ/m2 taken for Wh/m2',
  'km/h': 'these look like km/h',
  fraction: 'no value is above 1 %; these look like fractions taken for per cent',
  percent: 'these look like per cent taken for fractions',
  'too-large': 'far more than the sun gives outside the air',
  'too-small': 'less than a closed sky lets through all the time; is the unit larger?',
};

/** Why a weather file cannot be used, in words. */
export function weatherFaultText(fault: WeatherFault): string {
  switch (fault.cause) {
    case 'empty':
      return 'the file is empty';
    case 'not-text':
      return `${placeText(fault)}: this is no text file`;
    case 'not-csv':
      return `${placeText(fault)}: ${csvDetail(fault.detail)}`;
    case 'no-location':
      return `line ${fault.line}: the file does not begin with a LOCATION line; is it an EPW file?`;
    case 'bad-location':
      return `${placeText(fault)}: "${shortened(fault.text)}" cannot stand in the LOCATION line there`;
    case 'no-rows':
      return `line ${fault.line}: no weather follows the header`;
    case 'too-few-columns':
      return `line ${fault.line}: ${fault.seen} columns, at least ${fault.needed} are needed`;
    case 'column-missing':
      return `line 1: no column "${fault.name}"; there are ${fault.known.map((name) => `"${shortened(name)}"`).join(', ')}`;
    case 'column-twice':
      return `line 1: the column "${fault.name}" stands there more than once`;
    case 'bad-number':
      return `${placeText(fault)}: "${shortened(fault.text)}" is no number`;
    case 'bad-time':
      return `${placeText(fault)}: "${shortened(fault.text)}" is no time that is known here`;
    case 'bad-zone':
      return `"${fault.zone}" is no time zone of the IANA list`;
    case 'uneven-steps':
      return `line ${fault.line}: the rows do not stand at even steps that divide a day (usual step ${fault.stepMs / 60_000} min)`;
    case 'gap-too-long':
      return `line ${fault.line}: no ${quantityNames[fault.quantity]} for ${Number(fault.hours.toFixed(1))} h; up to 6 h are filled`;
    case 'nothing-in-column':
      return `the file holds no ${quantityNames[fault.quantity]} at all`;
    case 'unit-suspect':
      return `line ${fault.line}: ${quantityNames[fault.quantity]} cannot be in its stated unit: ${guessTexts[fault.looksLike]}`;
    case 'clock-suspect':
      return `the light of the file comes ${lateText(fault.lateHours)} the sun over the place; is its time zone or the place wrong?`;
  }
}

function placeText({ line, column }: { readonly line: number; readonly column: number }): string {
  return `line ${line}, column ${column}`;
}

function csvDetail(detail: 'open-quote' | 'stray-quote' | 'other'): string {
  if (detail === 'open-quote') return 'a quotation mark is opened and not closed';
  return detail === 'stray-quote' ? 'a quotation mark stands inside a value' : 'this is no CSV';
}

function lateText(hours: number): string {
  return `${Math.abs(hours)} h ${hours > 0 ? 'after' : 'before'}`;
}

function shortened(text: string): string {
  return text.length > 40 ? `${text.slice(0, 40)}…` : text;
}

const repairTexts: Readonly<Record<Repair['what'], string>> = {
  'value-missing': 'missing values filled by a straight line between their neighbours',
  'row-missing': 'missing rows',
  'row-duplicated': 'rows of a time that is there already left out',
  'row-out-of-order': 'rows put in order',
  'leap-day-left-out': 'rows of 29 February left out',
  'clock-hour-repeated': 'times that the clocks show twice: the first, then the second',
  'clock-hour-skipped': 'times that the clocks skip read as if they had not been put forward',
  'brighter-than-space': 'irradiance above that outside the air cut down to it',
  'sun-at-night': 'irradiance with the sun down left out',
  'parts-disagree':
    'direct and diffuse light that do not add up to the whole: the whole and the diffuse light count',
  'negative-radiation': 'irradiance below 0 set to 0',
  'damper-than-saturated': 'humidity above 100 % set to 100 %',
  'out-of-range': 'impossible values taken as missing',
  'diffuse-split-by-clearness': 'hours of light split into beam and diffuse by their clearness',
  'long-wave-by-formula': 'long-wave irradiance computed from humidity, cloud and air',
  'place-differs': 'the file is of another place than the site; its own sun counts',
};

/** What was mended in a weather file, in words. */
export function repairText({ what, count, firstLine }: Repair): string {
  return `${count} x ${repairTexts[what]} (first in line ${firstLine})`;
}
