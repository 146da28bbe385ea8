/** What stands over the paper while working on it: the length under the hand, the way a part moves, findings at their parts. */
import { formatLength } from '../../../src/drawing.js';
import type { Live } from '../core/api.js';
import { openPanel, pick } from '../store/desk.js';
import { useProject } from '../store/project.js';
import { type Camera, type Size, toScreen } from './camera.js';
import type { Grip } from './handles.js';
import type { Thing } from './hit.js';

export interface Drag {
  readonly grip: Grip;
  readonly by: number;
}

function verdict(live: Live | undefined): string {
  if (!live) return '';
  if (live.issue !== undefined) return live.issue;
  const { failing, nearest: n } = live;
  if (failing.length > 0)
    return `Fails: ${failing.slice(0, 2).join(', ')}${failing.length > 2 ? ` and ${failing.length - 2} more` : ''}`;
  return n ? `Passes; nearest ${n.title} ${n.subject} at ${Math.round(n.ratio * 100)} %` : '';
}

export function DragNote({
  drag,
  camera,
  size,
}: {
  readonly drag: Drag;
  readonly camera: Camera;
  readonly size: Size;
}) {
  const live = useProject((p) => p.live);
  const units = useProject((p) => p.summary?.units ?? 'us');
  const { handle, at } = drag.grip;
  const p = toScreen(camera, size, at);
  return (
    <output className="drag-note" style={{ left: p.x, top: p.y }}>
      <b>{formatLength(handle.value + drag.by, { units, glyphs: true })}</b> {handle.from}
      <span>{verdict(live)}</span>
    </output>
  );
}

export function GripMark({
  grip,
  camera,
  size,
}: {
  readonly grip: Grip;
  readonly camera: Camera;
  readonly size: Size;
}) {
  const { at, to, handle } = grip;
  const middle = to ? { x: (at.x + to.x) / 2, y: (at.y + to.y) / 2 } : at;
  const p = toScreen(camera, size, middle);
  const turn = Math.round((Math.atan2(-handle.axis.y, handle.axis.x) * 180) / Math.PI);
  return (
    <div className="grip" style={{ left: p.x, top: p.y }} aria-hidden="true">
      <svg width="44" height="44" viewBox="-22 -22 44 44" style={{ transform: `rotate(${turn}deg)` }}>
        <title>moves this way</title>
        <path d="M-20 0l7-5v10zM20 0l-7-5v10z" />
      </svg>
      <span>{handle.what}</span>
    </div>
  );
}

interface BadgesProps {
  readonly things: readonly Thing[];
  readonly camera: Camera;
  readonly size: Size;
}

/** A finding stands beside the tag of the part it speaks of. */
export function Badges({ things, camera, size }: BadgesProps) {
  const results = useProject((p) => p.summary?.results);
  const failing = new Map<string, number>();
  for (const r of results ?? []) if (r.status === 'fail') failing.set(r.subject, (failing.get(r.subject) ?? 0) + 1);
  if (failing.size === 0) return null;
  const seen = new Set<string>();
  return things.map((t) => {
    const mark = t.hit.mark;
    const count = mark === undefined ? undefined : failing.get(mark);
    if (mark === undefined || count === undefined || seen.has(mark)) return null;
    seen.add(mark);
    const p = toScreen(camera, size, t.at);
    if (p.x < 0 || p.y < 0 || p.x > size.w || p.y > size.h) return null;
    return (
      <button
        type="button"
        key={mark}
        className="badge"
        style={{ left: p.x, top: p.y }}
        aria-label={`${mark}: ${count} failing`}
        onClick={() => {
          pick(mark);
          openPanel('part');
        }}
      >
        <span aria-hidden="true">✕ {count}</span>
      </button>
    );
  });
}
