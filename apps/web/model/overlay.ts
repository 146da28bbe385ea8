/** What is laid over the model: the flow of load, the deflected shape, or a diagram of one force. */
import {
  ArrowHelper,
  BufferAttribute,
  BufferGeometry,
  DoubleSide,
  Line,
  LineBasicMaterial,
  Mesh,
  MeshBasicMaterial,
  Vector3,
} from 'three';
import type { MemberState, SceneState } from '../../../src/index.js';
import type { Colours, Stage } from './stage.js';

export type Shown = 'none' | 'flow' | 'deflected' | 'm' | 'v' | 'n';

export interface Told {
  /** In words: scale and greatest value. */
  readonly text: string;
}

const UNITS = { m: 'lb·in', v: 'lb', n: 'lb' } as const;
const NAMES = { m: 'Bending moment', v: 'Shear', n: 'Axial force' } as const;

/** Inches on the model that the greatest value of a diagram takes. */
const TALLEST = 26;
const EXAGGERATIONS = [1, 2, 5, 10, 20, 50, 100, 200, 500, 1000];

interface Frame {
  readonly start: Vector3;
  readonly axis: Vector3;
  readonly up: Vector3;
}

function frameOf(m: MemberState): Frame {
  const start = new Vector3(...m.start);
  return { start, axis: new Vector3(...m.end).sub(start).normalize(), up: new Vector3(...m.up) };
}

const greatest = (s: SceneState, key: 'm' | 'v' | 'n' | 'sag'): { value: number; mark: string } => {
  let value = 0;
  let mark = '';
  for (const m of s.members)
    for (const x of m[key])
      if (Math.abs(x) > Math.abs(value)) {
        value = x;
        mark = m.mark;
      }
  return { value, mark };
};

export function layOver(stage: Stage, state: SceneState | undefined, shown: Shown, c: Colours): Told | undefined {
  stage.clearOver();
  if (!state || shown === 'none') return undefined;
  const told =
    shown === 'flow'
      ? flow(stage, state, c)
      : shown === 'deflected'
        ? deflected(stage, state, c)
        : diagram(stage, state, shown, c);
  stage.ask();
  return told;
}

/** Arrows at every joint and under every footing, long as the force is great. */
function flow(stage: Stage, s: SceneState, c: Colours): Told {
  const most = Math.max(1, ...s.flows.map((f) => Math.hypot(...f.force)));
  for (const f of s.flows) {
    const size = Math.hypot(...f.force);
    if (size < most * 0.004) continue;
    const length = 8 + 46 * Math.sqrt(size / most);
    const way = new Vector3(...f.force).normalize();
    const from = new Vector3(...f.at).addScaledVector(way, -length / 2);
    const arrow = new ArrowHelper(way, from, length, c.accent, Math.min(12, length / 2), Math.min(7, length / 3));
    for (const part of [arrow.line, arrow.cone]) {
      const m = part.material as { depthTest: boolean };
      m.depthTest = false;
    }
    arrow.renderOrder = 5;
    stage.over.add(arrow);
  }
  return {
    text: `Arrows show what each joint hands down (or up), longest ${Math.round(most).toLocaleString('en-US')} lb.`,
  };
}

function deflected(stage: Stage, s: SceneState, c: Colours): Told {
  const top = greatest(s, 'sag');
  const wanted = Math.abs(top.value) > 0 ? 14 / Math.abs(top.value) : 1;
  const scale = [...EXAGGERATIONS].reverse().find((x) => x <= wanted) ?? 1;
  for (const m of s.members) {
    const f = frameOf(m);
    const points: number[] = [];
    for (let i = 0; i < m.at.length; i++) {
      const p = f.start
        .clone()
        .addScaledVector(f.axis, m.at[i]!)
        .addScaledVector(f.up, -scale * m.sag[i]!);
      points.push(p.x, p.y, p.z);
    }
    stage.over.add(line(points, c.accent));
  }
  return {
    text: `Deflected shape, drawn ${scale} times as large; most ${Math.abs(top.value).toFixed(3)} in at ${top.mark}.`,
  };
}

function line(points: readonly number[], colour: string): Line {
  const g = new BufferGeometry();
  g.setAttribute('position', new BufferAttribute(Float32Array.from(points), 3));
  const l = new Line(g, new LineBasicMaterial({ color: colour, depthTest: false }));
  l.renderOrder = 4;
  return l;
}

function diagram(stage: Stage, s: SceneState, key: 'm' | 'v' | 'n', c: Colours): Told {
  const top = greatest(s, key);
  const scale = top.value === 0 ? 0 : TALLEST / Math.abs(top.value);
  for (const m of s.members) {
    const f = frameOf(m);
    const at = (i: number, k: number): Vector3 =>
      f.start
        .clone()
        .addScaledVector(f.axis, m.at[i]!)
        .addScaledVector(f.up, k * scale * m[key][i]!);
    const faces: number[] = [];
    const edge: number[] = [];
    for (let i = 0; i < m.at.length; i++) {
      const p = at(i, 1);
      edge.push(p.x, p.y, p.z);
      if (i === 0) continue;
      for (const v of [at(i - 1, 0), at(i, 0), p, at(i - 1, 0), p, at(i - 1, 1)]) faces.push(v.x, v.y, v.z);
    }
    const g = new BufferGeometry();
    g.setAttribute('position', new BufferAttribute(Float32Array.from(faces), 3));
    const fill = new Mesh(
      g,
      new MeshBasicMaterial({ color: c.accent, transparent: true, opacity: 0.3, side: DoubleSide, depthTest: false }),
    );
    fill.renderOrder = 3;
    stage.over.add(fill, line(edge, c.accent));
  }
  return {
    text: `${NAMES[key]}, greatest ${Math.round(Math.abs(top.value)).toLocaleString('en-US')} ${UNITS[key]} in ${top.mark}.`,
  };
}
