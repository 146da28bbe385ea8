/** The same frames for the program's own solver, on the same beam theory. */
import {
  type EndRelease,
  FREEDOMS,
  type FrameCase,
  type FrameElement,
  type FrameModel,
  type Support,
} from '../../../src/analysis/solver/index.js';
import { E, type FrameCaseData, G, type Member } from './frame-cases.js';

/** Shear area over area. A finite beam is one brick across its section: shear is even over it, so not a rectangle's 5/6. */
export const SHEAR = 1;

/**
 * Section constants as the finite elements have them. A section can warp there by no more than c·y·z, so the torsion
 * constant is the least of Iy(1-c)² + Iz(1+c)² over all c, 4·Iy·Iz/(Iy+Iz).
 */
function element(f: FrameCaseData, m: Member, nodes: readonly string[], shear: number): FrameElement {
  const [b, d] = m.section;
  const Iz = (b * d ** 3) / 12;
  const Iy = (d * b ** 3) / 12;
  const release = (which: 'start' | 'end'): EndRelease | undefined =>
    m.hinged?.includes(which)
      ? { mz: true, ...(f.planar ? {} : { my: true, ...(m.loose === which ? { torsion: true } : {}) }) }
      : undefined;
  const start = release('start');
  const end = release('end');
  return {
    start: nodes.indexOf(m.from),
    end: nodes.indexOf(m.to),
    up: m.up,
    E,
    G,
    A: b * d,
    Iy,
    Iz,
    J: (4 * Iy * Iz) / (Iy + Iz),
    Ay: shear * b * d,
    Az: shear * b * d,
    releases: { ...(start ? { start } : {}), ...(end ? { end } : {}) },
  };
}

export function ourFrame(f: FrameCaseData, shear = SHEAR): { readonly model: FrameModel; readonly load: FrameCase } {
  const nodes = Object.keys(f.nodes);
  const supports: Support[] = f.held.map((h) => ({
    node: nodes.indexOf(h.node),
    ...Object.fromEntries(h.freedoms.map((d) => [FREEDOMS[d - 1]!, 'fixed' as const])),
  }));
  if (f.planar)
    for (let node = 0; node < nodes.length; node++) supports.push({ node, dy: 'fixed', rx: 'fixed', rz: 'fixed' });
  return {
    model: { nodes: Object.values(f.nodes), elements: f.members.map((m) => element(f, m, nodes, shear)), supports },
    load: {
      nodal: Object.entries(f.forces).map(([name, force]) => ({ node: nodes.indexOf(name), force })),
      distributed: Object.entries(f.uniform).map(([name, startForce]) => ({
        element: f.members.findIndex((m) => m.name === name),
        startForce,
      })),
      settlements: f.held.flatMap((h) =>
        h.moved ? [{ node: nodes.indexOf(h.node), freedom: FREEDOMS[h.moved.freedom - 1]!, value: h.moved.by }] : [],
      ),
    },
  };
}
