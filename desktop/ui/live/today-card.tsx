import type { Meter } from '../../../shared-types/engine.ts';
import { inLine, type NumberFormats } from '../format/numbers.ts';
import { durationText } from '../format/times.ts';
import { Card } from '../shell/card.tsx';
import { useNumbers } from '../shell/use-formats.ts';
import { selectMeter } from '../store/decision-selectors.ts';
import { useLive } from '../store/live-store.ts';
import { en } from '../text/en.ts';
import { AllowedLine } from './allowed-line.tsx';
import styles from './today-card.module.css';

const text = en.live.today;

/** What came home today, and what that cost. */
export function TodayCard() {
  const meter = useLive(selectMeter);
  const numbers = useNumbers();
  if (meter === undefined) return null;
  const { today, estimated } = meter;
  const heat = numbers.heat(today.heatHomeJ);
  return (
    <Card heading={text.heading} aside={estimated ? <Estimated /> : null}>
      <p className={`${styles['heat']} number`}>
        <span className={styles['big']}>{heat.number}</span>{' '}
        <span className={styles['unit']}>{heat.unit}</span>
      </p>
      <p className={styles['now']}>{rateSentence(meter, numbers)}</p>
      <AllowedLine />
      <dl className={styles['facts']}>
        <Fact title={text.pumpEnergy} value={inLine(numbers.heat(today.electricityJ))} />
        <Fact title={text.lost} value={inLine(numbers.heat(today.heatLostJ))} />
        <Fact title={text.runTime} value={durationText(today.pumpRunS * 1000)} />
        <Fact title={text.starts} value={numbers.count(today.starts)} />
        <Fact title={text.fills} value={numbers.count(today.fills)} />
      </dl>
    </Card>
  );
}

function rateSentence({ heatRateW }: Meter, numbers: NumberFormats): string {
  if (heatRateW === null) return text.rateUnknown;
  const rate = inLine(numbers.power(Math.abs(heatRateW)));
  if (Math.abs(heatRateW) < 0.5) return text.nothingNow;
  return heatRateW > 0 ? text.now(rate) : text.leaving(rate);
}

function Estimated() {
  return (
    <span className={styles['estimated']} title={text.estimatedMeaning}>
      {text.estimated}
      <span className="visually-hidden">. {text.estimatedMeaning}</span>
    </span>
  );
}

function Fact({ title, value }: { readonly title: string; readonly value: string }) {
  return (
    <div className={styles['fact']}>
      <dt>{title}</dt>
      <dd className="number">{value}</dd>
    </div>
  );
}
