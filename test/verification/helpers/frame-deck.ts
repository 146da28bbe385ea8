/** Input deck of a frame for CalculiX: quadratic beam elements B32R, rectangles, nodal forces. */
import { cross, dot, scale, sub, unit, type Vec3 } from '../../../src/base/vec.js';
import { E, type FrameCaseData, type Member } from './frame-cases.js';

/** Short enough for the program's fields of twenty characters, and free of the last bits of a square root. */
const num = (x: number): string => String(Number(x.toFixed(9)) + 0);
const row = (v: Vec3): string => [v.x, v.y, v.z].map(num).join(', ');

export interface Axes {
  readonly length: number;
  readonly x: Vec3;
  readonly y: Vec3;
  readonly z: Vec3;
}

/** Along, depth, width. Worked out here and not taken from the solver under test. */
export function axesOf(f: FrameCaseData, m: Member): Axes {
  const along = sub(f.nodes[m.to]!, f.nodes[m.from]!);
  const x = unit(along);
  const y = unit(sub(m.up, scale(x, dot(m.up, x))));
  return { length: Math.sqrt(dot(along, along)), x, y, z: cross(x, y) };
}

export interface Deck {
  readonly text: string;
  /** Forces put on each node, lb. */
  readonly load: ReadonlyMap<number, readonly [number, number, number]>;
  /** Node number by joint name, and by member name for its middle. */
  readonly nodeNumber: ReadonlyMap<string, number>;
  /** First and last finite element of each member. */
  readonly ends: ReadonlyMap<string, readonly [number, number]>;
}

export function deckOf(f: FrameCaseData): Deck {
  const nodes: string[] = [];
  const elements: string[] = [];
  const sections: string[] = [];
  const equations: string[] = [];
  const boundary: string[] = [];
  const load = new Map<number, [number, number, number]>();
  const nodeNumber = new Map<string, number>();
  const ends = new Map<string, readonly [number, number]>();
  let count = 0;
  let element = 0;
  const node = (p: Vec3): number => {
    nodes.push(`${++count}, ${row(p)}`);
    return count;
  };
  const push = (n: number, w: Vec3, share: number): void => {
    const old = load.get(n) ?? [0, 0, 0];
    load.set(n, [old[0] + w.x * share, old[1] + w.y * share, old[2] + w.z * share]);
  };
  for (const [name, p] of Object.entries(f.nodes)) nodeNumber.set(name, node(p));
  const knots: number[] = [...nodeNumber.values()];

  for (const m of f.members) {
    const a = axesOf(f, m);
    const start = f.nodes[m.from]!;
    const at = (t: number): Vec3 => ({
      x: start.x + a.x.x * a.length * t,
      y: start.y + a.x.y * a.length * t,
      z: start.z + a.x.z * a.length * t,
    });
    // A hinged end gets a node of its own, tied to the joint in its displacements only.
    const endNode = (which: 'start' | 'end'): number => {
      const joint = nodeNumber.get(which === 'start' ? m.from : m.to)!;
      if (!m.hinged?.includes(which)) return joint;
      const own = node(at(which === 'start' ? 0 : 1));
      for (const d of f.planar ? [1, 3] : [1, 2, 3]) equations.push('2', `${own}, ${d}, 1., ${joint}, ${d}, -1.`);
      if (f.planar) knots.push(own);
      // Torsion: hinged members of space frames lie along global x.
      else if (m.loose !== which) equations.push('2', `${own}, 4, 1., ${joint}, 4, -1.`);
      return own;
    };
    const line = [endNode('start')];
    for (let i = 1; i < 2 * m.pieces; i++) line.push(node(at(i / (2 * m.pieces))));
    line.push(endNode('end'));
    nodeNumber.set(m.name, line[m.pieces]!);
    elements.push(`*ELEMENT, TYPE=B32R, ELSET=M_${m.name.toUpperCase()}_${sections.length}`);
    const first = element + 1;
    const w = f.uniform[m.name];
    for (let i = 0; i < m.pieces; i++) {
      const three = line.slice(2 * i, 2 * i + 3);
      elements.push([++element, ...three].join(', '));
      // Simpson's rule: the uniform load that belongs to quadratic shape functions.
      if (w) for (const [k, share] of [1, 4, 1].entries()) push(three[k]!, w, (share * a.length) / m.pieces / 6);
    }
    ends.set(m.name, [first, element]);
    sections.push(
      `*BEAM SECTION, ELSET=M_${m.name.toUpperCase()}_${sections.length}, MATERIAL=WOOD, SECTION=RECT\n` +
        `${m.section[1]}, ${m.section[0]}\n${row(a.y)}`,
    );
  }
  for (const h of f.held)
    for (const d of h.freedoms)
      boundary.push(`${nodeNumber.get(h.node)}, ${d}, ${d}${h.moved?.freedom === d ? `, ${h.moved.by}` : ''}`);
  // A rotation out of the plane is nothing at all in a plane frame; named, it makes the program keep the cross-section
  // there rigid. Without that a force goes into the corners of the section and dents it (0.6 % of the sway of the bent).
  if (f.planar) boundary.push('ALL, 2, 2', ...knots.map((n) => `${n}, 4, 4`));
  for (const [name, p] of Object.entries(f.forces)) push(nodeNumber.get(name)!, p, 1);

  const cload: string[] = [];
  for (const [n, force] of load)
    for (const [d, value] of force.entries()) if (value !== 0) cload.push(`${n}, ${d + 1}, ${num(value)}`);
  const printed = [...new Set([...ends.values()].flat())];
  const text = [
    '*HEADING',
    `${f.title} (in, lb)`,
    '*NODE, NSET=ALL',
    ...nodes,
    ...elements,
    '*ELSET, ELSET=ENDS',
    ...printed.map((e) => `${e},`),
    '*MATERIAL, NAME=WOOD',
    '*ELASTIC',
    `${E}., 0.`,
    ...sections,
    ...(equations.length > 0 ? ['*EQUATION', ...equations] : []),
    '*BOUNDARY',
    ...boundary.filter((b) => !/, \d, \d, /.test(b)),
    '*STEP',
    '*STATIC',
    ...(boundary.some((b) => /, \d, \d, /.test(b))
      ? ['*BOUNDARY', ...boundary.filter((b) => /, \d, \d, /.test(b))]
      : []),
    ...(cload.length > 0 ? ['*CLOAD', ...cload] : []),
    '*NODE PRINT, NSET=ALL',
    'U',
    '*NODE PRINT, NSET=ALL',
    'RF',
    '*EL PRINT, ELSET=ENDS',
    'S, COORD',
    '*END STEP',
    '',
  ].join('\n');
  return { text, load, nodeNumber, ends };
}
