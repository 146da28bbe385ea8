import { formatLength } from '../../../src/index.js';
import type { SiteView } from '../core/work-api.js';

/** The points seen from above, the house at the bottom, as on the sheets; a reading that cannot be right is drawn across in the colour of faults. */
export function StakePlan({ view }: { readonly view: SiteView }) {
  const { layout, readings, units } = view;
  const points = layout.points.filter((p) => p.role === 'home' || p.role === 'corner' || p.role === 'footing');
  const at = new Map(layout.points.map((p) => [p.name, p]));
  const xs = points.map((p) => p.along);
  const ys = points.map((p) => -p.out);
  const span = Math.max(Math.max(...xs) - Math.min(...xs), 60);
  const deep = Math.max(Math.max(...ys) - Math.min(...ys), 40);
  const text = span / 24;
  const pad = text * 3;
  const box = `${Math.min(...xs) - pad} ${Math.min(...ys) - pad} ${span + 2 * pad} ${deep + 2 * pad}`;
  const home = layout.points.find((p) => p.role === 'home');
  const wall = layout.points.filter((p) => p.role === 'home' || p.role === 'corner');
  const diagonals = layout.rectangles.flatMap((r) => [r.first, r.second]);
  const line = (from: string | undefined, to: string) => {
    const a = (from === undefined ? home : at.get(from)) ?? home;
    const b = at.get(to);
    return a && b ? { x1: a.along, y1: -a.out, x2: b.along, y2: -b.out } : undefined;
  };
  const bad = readings.filter((r) => r.read?.state === 'bad' && r.kind !== 'level');
  const marks = layout.points.filter((p) => p.role === 'footing').map((p) => p.name);
  return (
    <svg
      className="stake-plan"
      viewBox={box}
      role="img"
      aria-label={`Plan of the stakes: ${marks.join(', ')}; the house wall is at the bottom.`}
    >
      <line
        className="wall"
        x1={Math.min(...wall.map((p) => p.along), ...xs) - pad / 2}
        x2={Math.max(...wall.map((p) => p.along), ...xs) + pad / 2}
        y1={0}
        y2={0}
        strokeWidth={text / 5}
      />
      {diagonals.map((d) => {
        const l = line(d.from, d.to);
        return l && <line key={`${d.from}${d.to}`} className="diagonal" {...l} strokeWidth={text / 14} />;
      })}
      {bad.map((r) => {
        const l = line(r.from, r.to);
        return l && <line key={r.words} className="bad" {...l} strokeWidth={text / 4} />;
      })}
      {points.map((p) => (
        <g key={p.name} className={p.role}>
          <circle cx={p.along} cy={-p.out} r={p.role === 'footing' ? text * 0.55 : text * 0.35} />
          <text
            x={p.along + (p.role === 'footing' ? text * 0.9 : 0)}
            y={p.role === 'footing' ? -p.out + text * 0.35 : -p.out + text * 1.5}
            fontSize={text}
            textAnchor={p.role === 'footing' ? 'start' : 'middle'}
          >
            {p.name}
          </text>
        </g>
      ))}
      <title>{`Home base: ${layout.homeWords}; ${formatLength(span, { units })} along the wall`}</title>
    </svg>
  );
}
