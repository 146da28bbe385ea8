import type { PricedLine } from '../../../src/index.js';
import type { BuyPhase } from '../core/work-api.js';
import { NoteField } from '../site/NoteField.js';
import { note } from '../site/useWork.js';
import { pick } from '../store/desk.js';

export const money = (x: number): string =>
  x.toLocaleString('en-US', { minimumFractionDigits: 2, maximumFractionDigits: 2 });
const figure = (x: number): string => x.toLocaleString('en-US', { maximumFractionDigits: 2 });

/** One delivery: what to put on the list, why so much, and what it is for. */
export function Lines({ phase, invented }: { readonly phase: BuyPhase; readonly invented: boolean }) {
  return (
    <details className="phase" open data-phase={phase.phase}>
      <summary>
        {phase.name}
        <span className="quiet"> {phase.lines.length} lines</span>
      </summary>
      <ul className="lines">
        {phase.lines.map((l) => (
          <Line key={l.line.id} row={l} invented={invented} />
        ))}
      </ul>
    </details>
  );
}

function Line({ row, invented }: { readonly row: PricedLine; readonly invented: boolean }) {
  const { line, price, total } = row;
  const first = line.serves[0];
  return (
    <li data-line={line.id}>
      <button type="button" className="item" onClick={() => pick(first)} disabled={first === undefined}>
        <b className="count">
          {figure(line.buy.quantity)} {line.buy.unit}
        </b>
        <span>{line.item}</span>
      </button>
      <div className="price">
        {invented ? (
          <span>{price === undefined ? '' : money(price)}</span>
        ) : (
          <NoteField
            quiet
            mode="decimal"
            label={`Price of one ${line.buy.unit} of ${line.item}`}
            placeholder="price"
            value={price === undefined ? '' : String(price)}
            onWrite={(typed) =>
              note(`price of ${line.item}`, { what: 'price', item: line.item, unit: line.buy.unit, typed })
            }
          />
        )}
        <span className="total">{total === undefined ? '' : money(total)}</span>
      </div>
      <details className="more">
        <summary>
          {figure(line.net)} {line.unit} net; {line.waste.rule}
        </summary>
        <p className="quiet">
          Waste: {line.waste.rule} ({line.waste.source}). Sold: {line.buy.rule}. {line.note}
        </p>
        {line.serves.length > 0 && (
          <p className="pieces">
            <span>For</span>
            {line.serves.map((m) => (
              <button type="button" key={m} className="mark-key" onClick={() => pick(m)}>
                {m}
              </button>
            ))}
          </p>
        )}
      </details>
    </li>
  );
}
