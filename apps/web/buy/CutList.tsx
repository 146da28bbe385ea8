import { type CutGroup, formatLength } from '../../../src/index.js';
import { pick } from '../store/desk.js';
import { alikeBoards } from './boards.js';

const percent = (x: number): string => `${(100 * x).toFixed(x < 0.001 && x > 0 ? 3 : 1)} %`;

/** How good the plan is, in one line: nothing cheaper exists, or how far from the bound it may be. */
const proof = (g: CutGroup): string => {
  const by = g.priced ? 'price' : 'length';
  return g.plan.gap < 1e-9
    ? `least ${by}, proved`
    : `within ${percent(g.plan.gap)} of the least ${by} (${g.plan.method})`;
};

/** What to cut from which board, to scale, longest piece first. */
export function CutList({ groups, units }: { readonly groups: readonly CutGroup[]; readonly units: 'us' | 'metric' }) {
  const len = (v: number): string => formatLength(v, { units });
  return groups
    .filter((g) => g.cuts.length > 0)
    .map((g) => {
      const longest = Math.max(...g.lengths, ...g.plan.boards.map((b) => b.stock.length));
      return (
        <details key={g.item} className="cut-group" data-cuts={g.item}>
          <summary>
            {g.item}
            <span className="quiet">
              {' '}
              {g.plan.boards.length} {g.plan.boards.length === 1 ? 'piece' : 'pieces'} of stock, {g.cuts.length}{' '}
              {g.cuts.length === 1 ? 'cut' : 'cuts'}, {proof(g)}
            </span>
          </summary>
          {g.plan.tooLong.length > 0 && (
            <p className="caution">
              Longer than any stock, order to length:{' '}
              {g.plan.tooLong.map((c) => `${c.mark} ${len(c.length)}`).join(', ')}
            </p>
          )}
          <ul className="boards">
            {alikeBoards(g.plan.boards, len).map((b) => (
              <li key={`${b.length}${b.pieces.map((p) => len(p.length)).join()}`}>
                <b>
                  {b.count} × {len(b.length)}
                </b>
                <div className="board" style={{ width: `${(100 * b.length) / longest}%` }} aria-hidden="true">
                  {b.pieces.map((p, i) => (
                    // biome-ignore lint/suspicious/noArrayIndexKey: pieces of a board have no other name
                    <i key={i} style={{ flexGrow: p.length }} />
                  ))}
                  <s style={{ flexGrow: Math.max(b.offcut, 0) }} />
                </div>
                <p className="pieces">
                  {b.pieces.map((p, i) => (
                    // biome-ignore lint/suspicious/noArrayIndexKey: as above
                    <span key={i}>
                      {len(p.length)}
                      {p.what && <em> {p.what}</em>}{' '}
                      {p.marks.map((m) => (
                        <button type="button" key={m} className="mark-key" onClick={() => pick(m)}>
                          {m}
                        </button>
                      ))}
                    </span>
                  ))}
                  {b.offcut > 1 / 16 && <span className="quiet">left over {len(b.offcut)}</span>}
                </p>
              </li>
            ))}
          </ul>
          <p className="quiet">
            Stock lengths: {g.lengthsFrom}. Saw cut {len(g.kerf)}, {len(g.trim)} off every board.
          </p>
        </details>
      );
    });
}
