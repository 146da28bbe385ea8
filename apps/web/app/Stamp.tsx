import { openPanel } from '../store/desk.js';
import { useProject } from '../store/project.js';

/** Where the set stands, in words and shape: the same verdict that is printed on every sheet. */
export function Stamp() {
  const summary = useProject((p) => p.summary);
  if (!summary) return <div className="stamp waiting">…</div>;
  const { verdict, results } = summary;
  const fails = results.filter((r) => r.status === 'fail').length;
  const outside = results.filter((r) => r.status === 'outside-scope').length;
  const open = results.filter((r) => r.status === 'not-evaluated').length;
  const errors = summary.issues.filter((i) => i.severity === 'error').length;
  const parts = [
    errors > 0 && `${errors} to put right`,
    fails > 0 && `${fails} fail`,
    outside > 0 && `${outside} need a professional`,
    open > 0 && `${open} open`,
  ].filter(Boolean);
  return (
    <button
      type="button"
      className={verdict.issuable ? 'stamp good' : 'stamp'}
      onClick={() => openPanel('findings')}
      data-testid="stamp"
    >
      <b>{verdict.issuable ? 'For permit' : 'Preliminary'}</b>
      <span>{verdict.issuable ? 'all mandatory checks pass' : parts.join(' · ') || 'see why'}</span>
    </button>
  );
}
