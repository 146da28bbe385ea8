/** The six questions that say whether a cover can be had at all, and what to ask the office before spending anything. */
import { formatLength } from '../../../src/drawing.js';
import { Field } from '../fields/Field.js';
import { valueAt } from '../fields/schema.js';
import { edit, useProject } from '../store/project.js';
import { LotBox } from './LotBox.js';

const YARDS = ['rear', 'left', 'right', 'front'] as const;

export function SixQuestions() {
  const summary = useProject((p) => p.summary);
  if (!summary) return null;
  return (
    <>
      <Answer />
      <ol className="six">
        <li>
          <h4>How far is it to the lot lines?</h4>
          <LotBox />
          <details>
            <summary>How far the office wants it to be</summary>
            {YARDS.map((y) => (
              <Field
                key={y}
                path={`/basis/zoning/setbacks/${y}`}
                label={`${y[0]!.toUpperCase()}${y.slice(1)} setback`}
                help="Zoning counter or the zoning table of your district."
              />
            ))}
            <Field
              path="/basis/zoning/referenceEdge"
              label="Measured to the post or the eave"
              help="Ask: it can be a foot or two either way."
            />
          </details>
        </li>
        <li>
          <h4>What stands there now?</h4>
          <p className="quiet">
            A slab you keep or break out, meters, a septic tank, wires overhead. Never dig before the utility locating
            service has marked the ground; private lines are not marked.
          </p>
          <details>
            <summary>Slab</summary>
            <Field path="/patio/slabs" label="Slabs" />
          </details>
          <details>
            <summary>Meters, septic, wires, trees</summary>
            <Field path="/lot/items" label="Things in the way" />
          </details>
        </li>
        <li>
          <h4>How much of the lot may be covered?</h4>
          <Field
            path="/basis/zoning/coverageLimit"
            label="Coverage limit"
            help="Zoning counter. House, garage, sheds and the new roof count together."
          />
          <Field path="/basis/zoning/coverageOf" label="Share of" />
        </li>
        <li>
          <h4>How high may it be?</h4>
          <Field
            path="/basis/zoning/heightLimit"
            label="Height limit"
            help="Zoning counter; often lower for covers near a lot line."
          />
        </li>
        <li>
          <h4>Is there an association?</h4>
          <Association />
        </li>
        <li>
          <h4>Held by the house, or standing free?</h4>
          <p className="quiet">
            Held by the house: fewer posts, but someone must have seen the framing behind the siding, and the house
            takes its push in the wind. Standing free: more posts and bracing, and the house stays out of it.
          </p>
          <Field path="/cover/attachment" label="The cover is" />
          <p className="quiet">
            To change the kind of roof as well, begin again with another one: your answers are quickest kept now, at the
            start.
          </p>
        </li>
      </ol>
    </>
  );
}

/** What is known so far, in one glance. */
function Answer() {
  const summary = useProject((p) => p.summary)!;
  const { lot, questions, units } = summary;
  const len = (x: number): string => formatLength(x, { units, glyphs: true });
  const asks = (path: string): boolean => questions.some((q) => q.path.startsWith(path));
  const rows: { text: string; state: 'yes' | 'no' | 'ask' }[] = [];
  for (const d of lot?.distances ?? []) {
    const open = asks(`/basis/zoning/setbacks/${d.yard}`) || asks('/basis/zoning/referenceEdge');
    const state = d.has >= d.needs - 1e-6 ? (open ? 'ask' : 'yes') : open ? 'ask' : 'no';
    rows.push({
      state,
      text: `${len(d.has)} to the ${d.line}${open ? `; ask whether ${len(d.needs)} is what is wanted` : `, ${len(d.needs)} wanted`}`,
    });
  }
  if (lot) {
    const open = asks('/basis/zoning/coverageLimit');
    const pct = (x: number): string => `${(100 * x).toFixed(1)} %`;
    rows.push({
      state: open ? 'ask' : lot.covered <= lot.limit ? 'yes' : 'no',
      text: `${pct(lot.covered)} would be covered; ${open ? 'ask for the limit' : `${pct(lot.limit)} is allowed`}`,
    });
    const height = valueAt(summary.tree, '/basis/zoning/heightLimit');
    rows.push({
      state: asks('/basis/zoning/heightLimit')
        ? 'ask'
        : summary.results.some((r) => r.check === 'height-limit' && r.status === 'fail')
          ? 'no'
          : 'yes',
      text: `${len(lot.highest)} high above the floor; ${asks('/basis/zoning/heightLimit') ? 'ask for the limit' : `limit ${String((height as { value?: string })?.value ?? height)}`}`,
    });
  }
  if (rows.length === 0)
    return <p className="asked">Nothing can be said before the file is right: see the list beside.</p>;
  const no = rows.some((r) => r.state === 'no');
  const ask = rows.filter((r) => r.state === 'ask').length;
  const shape = { yes: '●', no: '✕', ask: '?' } as const;
  const word = { yes: 'fits', no: 'does not fit', ask: 'to ask' } as const;
  return (
    <div className={no ? 'answer no' : 'answer'} role="status" data-testid="six-answer">
      <b>
        {no
          ? 'Not as drawn: something does not fit.'
          : ask > 0
            ? `Nothing stands against it so far; ${ask} to ask.`
            : 'A cover can be had here, by what you entered.'}
      </b>
      <ul>
        {rows.map((r) => (
          <li key={r.text} className={r.state}>
            <span aria-hidden="true">{shape[r.state]}</span> <span className="sr">{word[r.state]}: </span>
            {r.text}
          </li>
        ))}
      </ul>
    </div>
  );
}

const BODY = 'Association committee';

function Association() {
  const tree = useProject((p) => p.summary?.tree);
  const rows = (valueAt(tree, '/log/approvals') ?? []) as readonly { body?: string; state?: string }[];
  const at = rows.findIndex((r) => r.body === BODY);
  const set = (yes: boolean): void => {
    if (yes && at < 0)
      void edit('association: asked', [
        {
          path: '/log/approvals/-',
          value: { body: BODY, state: 'needed', date: '', note: 'ask for its form and its rules on colour and height' },
        },
      ]);
    if (!yes && at >= 0) void edit('no association', [{ path: `/log/approvals/${at}` }]);
  };
  return (
    <fieldset className="yes-no">
      <legend>Does an owners’ association have a say?</legend>
      <label className="choice">
        <input type="radio" name="assoc" checked={at >= 0} onChange={() => set(true)} /> Yes, or I don’t know: ask
        before paying for anything
      </label>
      <label className="choice">
        <input type="radio" name="assoc" checked={at < 0} onChange={() => set(false)} /> No
      </label>
    </fieldset>
  );
}
