/** The truss order: one mark after the other with its profile to scale, every item a plant asks for, and what does not agree. */
import type { Vec2 } from '../../base/vec.js';
import { webLayout } from '../../structure/framing/webs.js';
import type { Buy, TrussSheet } from '../../takeoff/index.js';
import { type Block, pencil } from '../annotate/index.js';
import type { Primitive } from '../ir/index.js';
import { PAPER_STYLE, PAPER_WIDTH, type Paper } from '../papers/index.js';
import { len } from './words.js';

const N = PAPER_STYLE.note;

function profile({ order: o }: TrussSheet): Block {
  const t = o.shape;
  const tan = Math.tan(t.topPitch);
  const whole = t.span + t.overhang[0] + t.overhang[1];
  const low = Math.min(0, t.heel - Math.max(...t.overhang) * tan - t.chordDepth);
  const scale = Math.min((PAPER_WIDTH - 1.7) / whole, 1.7 / (t.height - low));
  const height = (t.height - low) * scale + 7.6 * N;
  return {
    kind: 'drawing',
    height,
    draw: (at: Vec2, width: number): Primitive[] => {
      const p = pencil('S-FRAM', 'new');
      const x0 = at.x + (width - whole * scale) / 2 + t.overhang[0] * scale;
      const y0 = at.y - 1.2 * N - t.height * scale;
      const on = (x: number, z: number): [number, number] => [x0 + x * scale, y0 + z * scale];
      const { joints, bars } = webLayout(t, o.gableEnd);
      const items: Primitive[] = bars
        .filter((b) => b.role === 'web' || b.role === 'stud')
        .map((b) => {
          const [a, c] = [joints[b.from]!, joints[b.to]!];
          return p.line(...on(a.x, a.z), ...on(c.x, c.z), 'new-fine');
        });
      const mid = t.span / 2;
      const crown = t.heel + mid * tan;
      const depth = t.chordDepth / Math.cos(t.topPitch);
      const [l, r] = t.overhang;
      const top: [number, number][] = [on(-l, t.heel - l * tan), on(mid, crown), on(t.span + r, t.heel - r * tan)];
      const under: [number, number][] = [
        on(t.span + r, t.heel - r * tan - depth),
        on(mid, crown - depth),
        on(-l, t.heel - l * tan - depth),
      ];
      items.push(p.shape([...top, ...under], 'new', 'paper'));
      const kb = Math.tan(t.bottomPitch);
      const rise = (x: number): number => Math.max(0, Math.min(x, t.span - x) - t.bearing) * kb;
      const bottom = [0, t.bearing, mid, t.span - t.bearing, t.span];
      const cd = t.chordDepth / Math.cos(t.bottomPitch);
      items.push(
        p.shape(
          [
            ...bottom.map((x) => on(x, rise(x))),
            ...[...bottom]
              .reverse()
              .map((x) => on(x, Math.min(rise(x) + cd, t.heel + Math.min(x, t.span - x) * tan - depth))),
          ],
          'new',
          'paper',
        ),
      );
      for (const x of [0, t.span - t.bearing])
        items.push(
          p.shape(
            [on(x, 0), on(x + t.bearing, 0), on(x + t.bearing, -2.2 / scale / 20), on(x, -2.2 / scale / 20)],
            'new',
            'poche',
          ),
        );
      const dim = (a: [number, number], b: [number, number], offset: number, value: number, angle = 0): Primitive => ({
        kind: 'dimension',
        layer: 'S-ANNO-DIMS',
        a: { x: a[0], y: a[1] },
        b: { x: b[0], y: b[1] },
        base: { x: 0, y: 0 },
        angle,
        offset,
        value,
        text: len(value),
        height: N,
      });
      const base = y0 + low * scale;
      items.push(dim(on(0, 0), on(t.span, 0), base - 2.4 * N, t.span));
      if (l > 0) items.push(dim(on(-l, 0), on(0, 0), base - 2.4 * N, l));
      if (r > 0) items.push(dim(on(t.span, 0), on(t.span + r, 0), base - 2.4 * N, r));
      const left = x0 - l * scale;
      items.push(dim(on(0, 0), on(0, t.heel), -(left - 1.2 * N), t.heel, Math.PI / 2));
      const right = x0 + (t.span + r) * scale;
      items.push(dim(on(t.span, 0), on(mid, t.height), -(right + 3.4 * N), t.height, Math.PI / 2));
      const word = (angle: number): string => `${Number((12 * Math.tan(angle)).toFixed(2))} in 12`;
      items.push(
        p.text(...add(on(mid * 0.45, t.heel + mid * 0.45 * tan), -0.05, 0.8 * N), word(t.topPitch), N, {
          face: 'condensed',
          align: 'right',
        }),
      );
      if (t.bottomPitch > 0)
        items.push(
          p.text(...add(on(mid, rise(mid)), 0, -1.8 * N), word(t.bottomPitch), N, {
            face: 'condensed',
            align: 'center',
          }),
        );
      return items;
    },
  };
}

const add = (p: [number, number], x: number, y: number): [number, number] => [p[0] + x, p[1] + y];

export function trussPaper(b: Buy): Paper | undefined {
  if (b.trusses.length === 0) return undefined;
  const mismatches = b.trusses.flatMap((t) => t.mismatches);
  const missing = [...new Set(b.trusses.flatMap((t) => t.missing))];
  const marks = b.trusses.map((t) => `${t.order.count} ${t.order.mark}`).join(', ');
  return {
    title: 'Truss order',
    sub: `${marks}: the plant’s engineer designs and seals them; webs are drawn for shape only`,
    blocks: [
      mismatches.length === 0
        ? {
            kind: 'para',
            text: 'Order, placed model and the sealed sheets entered agree in span, pitch, heel, spacing, overhang, bearing and count.',
          }
        : {
            kind: 'table',
            title: 'Does not agree: settle before anything is built',
            columns: [
              { head: 'Truss' },
              { head: 'What' },
              { head: 'Order and model' },
              { head: 'Found' },
              { head: 'Where', grow: true },
            ],
            rows: mismatches.map((m) => [m.mark, m.what, m.ordered, m.found, m.where]),
          },
      ...(b.strayPapers.length > 0
        ? [
            {
              kind: 'para' as const,
              text: `Sealed sheets of trusses the model does not have: ${b.strayPapers.join(', ')}.`,
            },
          ]
        : []),
      ...(missing.length > 0
        ? [{ kind: 'para' as const, text: `Still to be said or got: ${missing.join(', ')}.` }]
        : []),
      ...b.trusses.flatMap((t): Block[] => [
        { kind: 'heading', text: `Truss ${t.order.mark}` },
        profile(t),
        { kind: 'pairs', rows: t.rows.map((r) => ({ name: r.name, value: r.value })) },
      ]),
      {
        kind: 'para',
        text: 'Send this sheet with the drawings. When the sealed sheets come, enter them in the project and print this page again. Set no truss before its sealed sheet is on the site; brace as it and the bracing guide say; keep everyone from under a lifted truss.',
      },
    ],
  };
}
