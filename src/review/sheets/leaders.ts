/** Leaders: no two of a sheet cross, or the eye follows the wrong one. */
import type { SheetCheck } from './contract.js';
import { flatOf } from './flat.js';

interface Segment {
  readonly ax: number;
  readonly ay: number;
  readonly bx: number;
  readonly by: number;
}

const side = (s: Segment, x: number, y: number): number => (s.bx - s.ax) * (y - s.ay) - (s.by - s.ay) * (x - s.ax);

/** Ends that touch, or leaders that run on in one line, are no crossing. */
const SLACK = 1e-4;

const cross = (s: Segment, t: Segment): boolean => {
  const [p, q] = [side(s, t.ax, t.ay), side(s, t.bx, t.by)];
  const [u, v] = [side(t, s.ax, s.ay), side(t, s.bx, s.by)];
  const apart = [p, q, u, v].every((k) => Math.abs(k) > SLACK);
  return apart && p * q < 0 && u * v < 0;
};

export const leadersApart: SheetCheck = {
  title: 'No two leaders of notes or tags cross',
  run: ({ sheets }) =>
    sheets.flatMap((s) => {
      const leaders = flatOf(s).flatMap((f) => {
        // The short strokes of staggered dimension figures are no leaders of notes or tags.
        if (f.kind !== 'path' || f.pen !== 'leader' || f.layer.endsWith('-DIMS')) return [];
        const segments = f.strokes.flatMap((t) => {
          const out: Segment[] = [];
          for (let i = 0; i + 3 < t.length; i += 2)
            out.push({ ax: t[i]!, ay: t[i + 1]!, bx: t[i + 2]!, by: t[i + 3]! });
          return out;
        });
        return [{ segments, mark: f.mark ?? '' }];
      });
      return leaders.flatMap((l, i) =>
        leaders.slice(i + 1).flatMap((m) => {
          const hit = l.segments.find((a) => m.segments.some((b) => cross(a, b)));
          return hit
            ? [
                {
                  sheet: s.id,
                  what: `leaders of ${l.mark || 'a note'} and ${m.mark || 'a note'}`,
                  at: { x: hit.ax, y: hit.ay },
                },
              ]
            : [];
        }),
      );
    }),
};
