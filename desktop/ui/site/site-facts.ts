import type { CautionCode } from '../../../shared-types/cautions.ts';
import { panVolumeL, type Site } from '../../../shared-types/site.ts';
import { inLine, type NumberFormats } from '../format/numbers.ts';
import { durationText, type TimeFormats } from '../format/times.ts';
import { en } from '../text/en.ts';

const text = en.site.facts;
const { rows } = text;

/** A part of the loop as the site file has it, with the cautions that belong there. */
export interface FactGroup {
  readonly name: keyof typeof text.groups;
  readonly facts: readonly (readonly [title: string, value: string])[];
  readonly cautions: readonly CautionCode[];
}

export function siteFacts(site: Site, numbers: NumberFormats, times: TimeFormats): readonly FactGroup[] {
  const measure = (value: number, digits: number, unit: string) =>
    inLine(numbers.measure(value, digits, unit));
  const temperature = (valueC: number) => inLine(numbers.temperature(valueC));
  const degrees = (value: number) => `${numbers.measure(value, 2, '').number}°`;
  const { pan, pump, store, location, control } = site;
  return [
    {
      name: 'pan',
      facts: [
        [rows.grossArea, measure(pan.grossAreaM2, 1, 'm²')],
        [rows.wettedArea, measure(pan.wettedAreaM2, 1, 'm²')],
        [rows.depth, measure(pan.waterDepthM * 1000, 0, 'mm')],
        [rows.volume, measure(panVolumeL(site), 0, 'L')],
        [rows.linerLimit, temperature(pan.linerLimitC)],
        [rows.wall, measure(pan.wallHeightM * 1000, 0, 'mm')],
        [rows.fall, measure(pan.fallFraction * 100, 1, '%')],
        [rows.height, measure(pan.heightAboveStoreM, 1, 'm')],
      ],
      cautions: ['roof-load', 'fragile-roof', 'hot-sheet'],
    },
    {
      name: 'water',
      facts: [
        [rows.plumbing, text.plumbings[site.plumbing]],
        [rows.outlet, text.outlets[site.outlet]],
        [rows.drain, text.drains[site.drain]],
        [
          rows.frost,
          site.frostSeason === undefined
            ? text.frostAlways
            : text.frostSpan(times.dayOfYear(site.frostSeason.from), times.dayOfYear(site.frostSeason.to)),
        ],
      ],
      cautions: ['frost'],
    },
    {
      name: 'pump',
      facts: [
        [rows.ratedFlow, measure(pump.ratedFlowLMin, 1, 'L/min')],
        [rows.ratedHead, measure(pump.ratedHeadM, 1, 'm')],
        [rows.ratedPower, measure(pump.ratedPowerW, 0, 'W')],
        [rows.speed, pump.speedControl ? text.yes : text.no],
      ],
      cautions: ['mains'],
    },
    {
      name: 'store',
      facts: [
        [rows.volumeStore, measure(store.volumeL, 0, 'L')],
        [rows.headroom, measure(store.headroomL, 0, 'L')],
        [rows.heightStore, measure(store.heightM, 2, 'm')],
        [rows.loss, measure(store.lossWK, 1, 'W/K')],
        [rows.maximum, temperature(store.maximumC)],
        ...(site.heatDump === undefined
          ? []
          : [[rows.heatDump, measure(site.heatDump.conductanceWK, 0, 'W/K')] as const]),
      ],
      cautions: ['scald', 'hygiene'],
    },
    {
      name: 'place',
      facts: [
        [rows.zone, site.timeZone],
        [
          rows.location,
          text.location(
            degrees(location.latitudeDeg),
            degrees(location.longitudeDeg),
            measure(location.elevationM, 0, 'm'),
          ),
        ],
      ],
      cautions: ['local-codes'],
    },
    {
      name: 'control',
      facts: [
        [rows.step, durationText(control.stepS * 1000)],
        [rows.expiry, durationText(control.outputExpiryS * 1000)],
      ],
      cautions: ['software'],
    },
  ];
}
