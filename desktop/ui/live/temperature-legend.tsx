import { scaleColdC, scaleHotC, waterColour } from '../charts/temperature-scale.ts';
import { inLine } from '../format/numbers.ts';
import { useNumbers } from '../shell/use-formats.ts';
import { en } from '../text/en.ts';
import styles from './temperature-legend.module.css';

const stops = Array.from({ length: 9 }, (_, index) =>
  waterColour(scaleColdC + ((scaleHotC - scaleColdC) * index) / 8),
);

/** Which colour stands for which temperature of water. */
export function TemperatureLegend() {
  const numbers = useNumbers();
  return (
    <div className={styles['legend']}>
      <span>{en.live.drawing.scaleLegend}</span>
      <span className="number">{inLine(numbers.temperature(scaleColdC))}</span>
      <span className={styles['bar']} style={{ background: `linear-gradient(90deg, ${stops.join(', ')})` }} />
      <span className="number">{inLine(numbers.temperature(scaleHotC))}</span>
    </div>
  );
}
