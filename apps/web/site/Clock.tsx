import type { SiteView } from '../core/work-api.js';
import { Cautions } from './Cautions.js';

const STATES: Readonly<Record<string, string>> = {
  needed: 'needed',
  applied: 'applied for',
  granted: 'granted',
  refused: 'refused',
  'not-listed': 'not asked yet',
};

/** Offices in the order to ask, and the days a permit has left. */
export function Clock({ view }: { readonly view: SiteView }) {
  return (
    <ol className="approvals">
      {view.approvals.map((a) => (
        <li key={a.kind} className={a.state}>
          <b>{a.title}</b>{' '}
          <span className="state">
            {a.applies === 'ask' ? 'ask whether it applies' : `${STATES[a.state]} ${a.date}`}
          </span>
          {a.clock?.daysLeft !== undefined && a.clock.state !== 'finished' && (
            <p className={a.clock.state === 'running' ? '' : 'fault'}>
              {a.clock.daysLeft < 0
                ? `Lapsed on ${a.clock.lapses}: ask the office before any more work.`
                : `${a.clock.daysLeft} days left: lapses on ${a.clock.lapses} unless an inspection is passed before.`}
            </p>
          )}
          {a.waitsFor.length > 0 && <p className="quiet">Waits for {a.waitsFor.join(', ')}.</p>}
          <p className="quiet">{a.order}</p>
        </li>
      ))}
    </ol>
  );
}

/** Working days counted from one, half days within them. */
export function daysOf(start: number, end: number): string {
  const first = Math.floor(start + 1e-9) + 1;
  const last = Math.max(first, Math.ceil(end - 1e-9));
  return first === last ? `day ${first}` : `day ${first} to ${last}`;
}

/** The order of the work as bars; the darker ones decide the end. */
export function Order({ view }: { readonly view: SiteView }) {
  const { bars, days, heavy, heavySource, cautions } = view.sequence;
  const day = (n: number): string => String(Math.round(n * 2) / 2);
  return (
    <>
      <p>
        {day(days)} days from the first hole, waits for concrete and deliveries included. A bar that may slip says so;
        the others decide the end.
      </p>
      <ol className="build-order">
        {bars.map((b) => (
          <li key={b.id} className={b.critical ? 'critical' : ''}>
            <span className="what">{b.title}</span>
            <span className="quiet">
              {daysOf(b.start, b.end)}
              {b.critical ? '' : `, may slip ${day(b.slack)}`}
            </span>
            <svg viewBox={`0 0 ${Math.max(days, 1)} 1`} preserveAspectRatio="none" aria-hidden="true">
              <rect className="track" x={0} y={0.42} width={days} height={0.16} />
              <rect className="span" x={b.start} y={0} width={Math.max(b.days, days / 150)} height={1} />
            </svg>
            {b.after
              .filter((w) => w.days > 0)
              .map((w) => (
                <span key={w.on} className="quiet wait">
                  waits {day(w.days)} {w.days === 1 ? 'day' : 'days'}: {w.why}
                </span>
              ))}
          </li>
        ))}
      </ol>
      <h4>Pieces that one person does not lift</h4>
      <ul className="plain-list">
        {heavy.map((h) => (
          <li key={h.what}>
            {h.count > 0 ? `${h.count} × ` : ''}
            {h.what}: {h.pounds} lb, {h.lift}
          </li>
        ))}
      </ul>
      <p className="quiet">{heavySource}</p>
      <Cautions all={cautions} />
    </>
  );
}
