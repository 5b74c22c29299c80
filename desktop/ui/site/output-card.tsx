import { durationText } from '../format/times.ts';
import { Card } from '../shell/card.tsx';
import { useNumbers } from '../shell/use-formats.ts';
import { selectDecision, selectLagMs, selectSite, selectSnapshot } from '../store/live-selectors.ts';
import { type LiveState, useLive } from '../store/live-store.ts';
import { en } from '../text/en.ts';
import styles from './output-card.module.css';
import { type OutputRow, outputRows } from './output-rows.ts';
import { StateWord } from './state-word.tsx';

const text = en.site.outputs;

const selectDevice = (state: LiveState) => selectSnapshot(state)?.device ?? null;
const selectOutputs = (state: LiveState) => selectDecision(state)?.outputs;

/** What each output is told, what the device says, and when it falls safe by itself. */
export function OutputCard() {
  const site = useLive(selectSite);
  const outputs = useLive(selectOutputs);
  const feedback = useLive(selectDevice)?.feedback ?? null;
  const numbers = useNumbers();
  if (site === undefined || outputs === undefined) return null;
  const { columns } = text;
  return (
    <Card heading={text.heading}>
      <table className={`ruled ${styles['table']}`}>
        <thead>
          <tr>
            <th scope="col">{columns.output}</th>
            <th scope="col">{columns.commanded}</th>
            <th scope="col">{columns.says}</th>
          </tr>
        </thead>
        <tbody>
          {outputRows(site, outputs, feedback, numbers).map((row) => (
            <tr key={row.name} data-output={row.name}>
              <th scope="row">{text.names[row.name]}</th>
              <td>{row.commanded}</td>
              <td>
                <Says row={row} />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <Renewal expiryS={site.control.outputExpiryS} />
    </Card>
  );
}

function Says({ row: { says, follows } }: { readonly row: OutputRow }) {
  if (follows === null) return says;
  return <StateWord good={follows}>{follows ? says : `${says}, ${text.differs}`}</StateWord>;
}

function Renewal({ expiryS }: { readonly expiryS: number }) {
  const device = useLive(selectDevice);
  const lagMs = useLive(selectLagMs);
  if (device === null) return null;
  const { renewedAgeMs, feedback } = device;
  return (
    <div className={styles['notes']}>
      <p>
        {renewedAgeMs === null
          ? text.notRenewed
          : text.renewed(durationText(renewedAgeMs + lagMs), durationText(expiryS * 1000))}
      </p>
      <p>{feedback === null ? text.noFeedback : text.feedbackAge(durationText(feedback.ageMs + lagMs))}</p>
    </div>
  );
}
